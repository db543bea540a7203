#include "cli/completion.h"

namespace mullion::cli::fish {
namespace {

std::string quoted(const std::string& text) {
  std::string out = "'";
  for (const char c : text) {
    if (c == '\'' || c == '\\') out += '\\';
    out += c;
  }
  return out + "'";
}

std::string line(const Command& command, const std::string& rest) {
  const std::string place = joined(command.path, " ");
  return "complete -c mullion -n " + quoted("__mullion_at " + quoted(place)) + " " + rest + "\n";
}

std::string values(const Parameter& parameter) {
  if (parameter.takes == Takes::nothing) return "";
  std::string out = parameter.takes == Takes::file ? " -r -F" : " -x";
  if (parameter.takes == Takes::job_file) return " -x -a '(__fish_complete_suffix .xml)'";
  if (!parameter.words.empty()) out += " -a " + quoted(joined(parameter.words, " "));
  return out;
}

std::string option_line(const Command& command, const Parameter& option) {
  std::string out;
  for (const std::string& name : option.names) {
    out += name.rfind("--", 0) == 0 ? "-l " + name.substr(2) + " " : "-s " + name.substr(1) + " ";
  }
  return line(command, out + "-d " + quoted(option.text) + values(option));
}

// Switches on the option's own flag: -s and -l come first, so an argument has neither.
std::string argument_line(const Command& command, const Parameter& argument) {
  if (argument.takes == Takes::job_file) {
    return line(command, "-k -a '(__fish_complete_suffix .xml)'");
  }
  std::string out = argument.takes == Takes::file ? "-F" : "-f";
  if (!argument.words.empty()) out += " -a " + quoted(joined(argument.words, " "));
  return line(command, out);
}

constexpr const char* place_function = R"(
function __mullion_at -d 'Whether the words so far are of this verb'
    set -l at
    for word in (commandline -opc)[2..-1]
        set -l next (string trim -- "$at $word")
        contains -- $next $__mullion_verbs; and set at $next
    end
    test "$at" = "$argv[1]"
end

complete -c mullion -f
)";

}  // namespace

std::string completion(const Command& program) {
  const std::vector<const Command*> commands = all_commands(program);
  std::string out = "# Written by `mullion completion fish`.\nset -g __mullion_verbs";
  for (const Command* command : commands) {
    if (!command->path.empty()) out += " " + quoted(joined(command->path, " "));
  }
  out += std::string("\n") + place_function;
  for (const Command* command : commands) {
    for (const Command& verb : command->verbs) {
      out += line(*command, "-a " + verb.path.back() + " -d " + quoted(verb.text));
    }
    for (const Parameter& option : command->options) out += option_line(*command, option);
    if (!command->arguments.empty()) out += argument_line(*command, command->arguments.front());
  }
  return out;
}

}  // namespace mullion::cli::fish
