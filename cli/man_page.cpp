#include "cli/man_page.h"

#include <sstream>
#include <stdexcept>

namespace mullion::cli {
namespace {

// The day on which the words that stand in this file were last changed.
constexpr const char* head = R"(.\" Written by `mullion manual man`.
.Dd November 25, 2026
.Dt MULLION 1
.Os
.Sh NAME
.Nm mullion
.Nd design window mats and take them to cut board
.Sh SYNOPSIS
.Nm
.Ar verb
.Op Ar option ...
.Op Ar
.Sh DESCRIPTION
)";

constexpr const char* surroundings = R"(.Pp
A job is described by an XML file, whose every word
.Nm mullion
.Cm manual job-file
explains.
Lengths may be written 8, 8.5, 8 1/2, 8-1/2\(dq, 215.9 mm or 21.59 cm; one without a unit is in the unit
of the job.
The board lies face down to be cut, so templates and cutting plans show its back, mirrored.
Where an output file is named
.Sq - ,
it is standard output.
No file is damaged by a run that fails.
)";

constexpr const char* environment = R"(.Sh ENVIRONMENT
.Bl -tag -width Ds
.It Ev NO_COLOR
Messages are not coloured.
.El
)";

constexpr const char* files = R"(.Sh FILES
.Bl -tag -width Ds
.It Pa job.xml
A job: pictures, boards, borders, arrangement, rules.
.It Pa cutter.xml
A cutter and how far it is off, as
.Nm
.Cm cutter show
prints one.
.It Pa printer.xml
A printer and how far it is off, as
.Nm
.Cm printer
writes one.
.El
)";

constexpr const char* examples = R"(.Sh EXAMPLES
See what a job comes to, and what is unwise about it:
.Pp
.Dl mullion check job.xml
.Pp
Draw the template on A4 sheets to be joined, and the proof:
.Pp
.Dl mullion template job.xml --paper a4 -o template.pdf
.Dl mullion proof job.xml -o proof.pdf
.Pp
Put the cutting plan on a tablet beside the cutter, one cut at a time in large type:
.Pp
.Dl mullion cuts job.xml -o cuts.html
.Pp
Plan the cuts of two jobs as one run, forty mats of the second:
.Pp
.Dl mullion cuts a.xml 'b.xml*40' -o cuts.pdf
.Pp
Get the blanks of all jobs in this folder out of as few sheets as possible:
.Pp
.Dl mullion sheets *.xml -o sheets.pdf
)";

constexpr const char* caveats = R"(.Sh CAVEATS
Cut a test piece from scrap first.
Use a fresh blade and a backing sheet under bevel cuts, and cut away from your hands.
Handle glass with cut-resistant gloves.
Use conservation-grade board, put no tape on a picture, and leave valuable works to a conservator.
The cutter maker's instructions and local rules come before anything printed here.
)";

// A line of text: one sentence each, and none that looks like a request.
std::string text(const std::string& words) {
  std::string out;
  for (std::size_t i = 0; i < words.size(); ++i) {
    const bool begins = out.empty() || out.back() == '\n';
    if (begins && (words[i] == '.' || words[i] == '\'')) out += "\\&";
    out += words[i] == '\\' ? "\\e" : std::string(1, words[i]);
    if (words[i] == '.' && i + 1 < words.size() && words[i + 1] == ' ') {
      out += '\n';
      ++i;
    }
  }
  return out + "\n";
}

std::string heading(const Command& command) {
  std::string out = ".Ss " + joined(command.path, " ");
  for (const Parameter& argument : command.arguments) {
    const std::string shown = value_of(argument) + (argument.repeated ? " ..." : "");
    out += argument.required ? " " + shown : " [" + shown + "]";
  }
  return out + "\n";
}

std::string item(const Parameter& parameter) {
  std::string out = ".It";
  for (const std::string& name : parameter.names) {
    if (out != ".It") out += " ,";
    out += name.front() == '-' ? " Fl " + name.substr(1) : " Ar " + name;
  }
  if (parameter.takes != Takes::nothing && parameter.names.front().front() == '-') {
    out += " Ar " + value_of(parameter);
  }
  out += "\n" + text(parameter.text);
  if (parameter.words.size() > 1) out += "Known: " + joined(parameter.words, ", ") + ".\n";
  if (parameter.required && parameter.names.front().front() == '-') out += "Must be given.\n";
  return out;
}

std::string list(const std::vector<Parameter>& arguments, const std::vector<Parameter>& options) {
  std::string items;
  for (const Parameter& argument : arguments) items += item(argument);
  for (const Parameter& option : options) {
    if (option.names.back() != "--help") items += item(option);
  }
  return items.empty() ? "" : ".Bl -tag -width Ds\n" + items + ".El\n";
}

std::string exit_statuses(const std::string& footer) {
  static constexpr std::string_view start = "Exit status: ";
  const std::size_t from = footer.find(start), end = footer.find('.', from);
  if (from != 0 || end == std::string::npos) throw std::logic_error("--help has no exit statuses");
  std::string out = ".Sh EXIT STATUS\n.Bl -tag -width Ds\n";
  std::istringstream statuses(footer.substr(start.size(), end - start.size()));
  for (std::string status; std::getline(statuses >> std::ws, status, ';');) {
    const std::size_t blank = status.find(' ');
    out += ".It " + status.substr(0, blank) + "\n" + text(status.substr(blank + 1) + ".");
  }
  return out + ".El\n";
}

}  // namespace

std::string man_page(const Command& program, const std::string& footer) {
  std::string out = head + text(program.text) + surroundings;
  out += ".Pp\nThe program itself and every verb have the option\n.Fl -help .\n";
  out += list({}, program.options) + ".Sh VERBS\n";
  for (const Command* command : all_commands(program)) {
    if (command->path.empty() || !command->verbs.empty()) continue;
    out +=
        heading(*command) + text(command->text + ".") + list(command->arguments, command->options);
  }
  return out + environment + files + exit_statuses(footer) + examples + caveats;
}

}  // namespace mullion::cli
