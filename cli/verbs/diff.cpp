#include "engine/diff/diff.h"

#include <memory>

#include "cli/answer.h"
#include "cli/language.h"
#include "cli/verb.h"

namespace mullion::cli {
namespace {

int tell_differences(const std::string& before, const std::string& after, const Locale& wanted,
                     const Answer& answer) {
  const Result<Loaded> a = load(before);
  if (!a) return answer.fail(a.error());
  const Result<Loaded> b = load(after);
  if (!b) return answer.fail(b.error());
  const Locale locale = answer.is_json() ? Locale() : wanted;
  const std::vector<std::string> changes =
      differences({a->job, a->layout}, {b->job, b->layout}, locale);
  const auto words = [&] {
    std::string out;
    for (const std::string& sentence : changes) out += sentence + "\n";
    return out.empty() ? locale.say("nothing changed") + "\n" : out;
  };
  return answer.give(words, [&] { return changes_json(changes); });
}

}  // namespace

void add_diff(CommandLine& program) {
  const Verb verb =
      program.verb("diff", "Say in words what changed from one version of a job to another");
  auto before = std::make_shared<std::string>(), after = std::make_shared<std::string>();
  verb.argument("BEFORE", Takes::job_file, *before, "The earlier job file").required();
  verb.argument("AFTER", Takes::job_file, *after, "The later job file").required();
  auto locale = std::make_shared<Locale>();
  add_language_option(verb, *locale);
  auto answer = std::make_shared<Answer>("diff");
  answer->add_option(verb);
  verb.runs([before, after, locale, answer] {
    return tell_differences(*before, *after, *locale, *answer);
  });
}

}  // namespace mullion::cli
