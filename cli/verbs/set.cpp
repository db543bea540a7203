#include <memory>

#include "cli/answer.h"
#include "cli/verb.h"
#include "engine/edit/assignment.h"
#include "engine/edit/edited_file.h"

namespace mullion::cli {
namespace {

struct Options {
  std::string job;
  std::vector<std::string> assignments;
  Answer answer{"set"};
};

std::string words(const std::string& job, const std::vector<edit::ChangedLines>& changes) {
  if (changes.empty()) return job + ": as it was\n";
  std::string out;
  for (const edit::ChangedLines& change : changes) {
    out += job + ":" + std::to_string(change.line) + "\n";
    for (const std::string& line : change.before) out += "- " + line + "\n";
    for (const std::string& line : change.after) out += "+ " + line + "\n";
  }
  return out;
}

int set(const Options& options) {
  const Answer& answer = options.answer;
  const Result<edit::Edit> edit = edit::edit_of(options.assignments);
  if (!edit) return answer.fail(edit.error());
  auto file = edit::EditedFile::open(options.job);
  if (!file) return answer.fail(file.error());
  const std::string before = file->text();
  const auto saved = file->edit(*edit, edit::fingerprint(before));
  if (!saved) return answer.fail(saved.error());
  if (!saved->notes.empty()) return answer.fail(saved->notes);
  const auto changes = edit::changed_lines(before, saved->edited);
  return answer.give([&] { return words(options.job, changes); },
                     [&] { return changed_lines_json(changes); });
}

}  // namespace

void add_set(CommandLine& program) {
  const Verb verb = program.verb(
      "set", "State, change or free values of a job file, and leave all else in it as it is");
  auto options = std::make_shared<Options>();
  verb.argument("JOB", Takes::job_file, options->job, "The job file").required();
  verb.argument("NAME=VALUE", Takes::word, options->assignments,
                "A value by its name in the job file: border.left=3, outer.width=free, "
                "layer.2.colour=#335577; nothing after = takes it out of the file")
      .required();
  verb.ends_with(
      "Names\n"
      "  border.left, outer.width, frame.lip, layers.bevel, arrange.least-bar\n"
      "  reference, date, quantity, unit, increment, title, note, customer, wall\n"
      "  picture.ID.width, layer.2.reveal, rule.1.length\n"
      "  opening.ID.shape, row.ID.gap, gap.ID, or ID alone, as in ID.width\n"
      "  arrange.1.2.gap       of the second part of the outermost one\n"
      "  arrange.1.gap.2       between its second and its third part\n"
      "  ID.reveal.2.left      of layer 2 at one opening\n"
      "  ID.groove.1.width\n"
      "Several are one edit: all are made, or none. The page (mullion open) undoes it.");
  options->answer.add_option(verb);
  verb.runs([options] { return set(*options); });
}

}  // namespace mullion::cli
