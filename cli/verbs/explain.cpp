#include "engine/explain/explain.h"

#include <algorithm>
#include <memory>

#include "cli/answer.h"
#include "cli/filled.h"
#include "cli/verb.h"

namespace mullion::cli {
namespace {

std::string list_of_all() {
  std::string out;
  for (const Explanation& entry : explanations()) {
    std::string line(entry.code);
    for (const auto& [column, word] :
         {std::pair(25U, word_for(entry.severity)), std::pair(34U, entry.summary)}) {
      line.resize(std::max<std::size_t>(line.size() + 1, column), ' ');
      line += word;
    }
    out += line + "\n";
  }
  return out;
}

Problem unknown(const std::string& code) {
  std::vector<std::string_view> codes;
  for (const Explanation& entry : explanations()) codes.push_back(entry.code);
  const std::string near(near_name(code, codes));
  return option_problem("CODE", "found \"" + code + "\"; expected a code" +
                                    (near.empty() ? "; `mullion explain` lists them all"
                                                  : "; did you mean " + near + "?"));
}

std::string words_of(const Explanation& entry) {
  return std::string(entry.code) + " (" + std::string(word_for(entry.severity)) +
         "): " + std::string(entry.summary) + "\n\n" + filled(entry.reason, 0) +
         "\n\nWhat to do: " + filled(entry.advice, 12) + "\n";
}

struct Options {
  std::string code;
  Answer answer{"explain"};
};

int explain(const Options& options) {
  std::string code = options.code;
  if (code.starts_with('[') && code.ends_with(']')) code = code.substr(1, code.size() - 2);
  if (code.empty()) {
    return options.answer.give(list_of_all, [] { return explanations_json(explanations()); });
  }
  const Explanation* entry = explanation_of(code);
  if (entry == nullptr) return options.answer.fail(unknown(code));
  Explanation asked = *entry;
  asked.code = code;
  return options.answer.give([&] { return words_of(asked); },
                             [&] { return explanations_json({asked}); });
}

}  // namespace

void add_explain(CommandLine& program) {
  const Verb verb =
      program.verb("explain", "Say what a code in a message means, why it matters and what to do");
  auto options = std::make_shared<Options>();
  verb.argument("CODE", Takes::word, options->code,
                "Such as check-bar-thin; without one, all are listed");
  options->answer.add_option(verb);
  verb.runs([options] { return explain(*options); });
}

}  // namespace mullion::cli
