#include "cli/run.h"

#include <algorithm>
#include <exception>
#include <string_view>

#include "cli/answer.h"

namespace mullion::cli {
namespace {

constexpr const char* about =
    "mullion designs the window mats of a framing job and takes them from the customer's pictures "
    "to cut board.";

constexpr const char* end_of_help =
    "Exit status: 0 done; 1 the job is wrong or cannot be satisfied; 2 the command line is wrong;\n"
    "3 a file cannot be read or written; 4 a fault of the program.\n\n"
    "Every verb has its own --help. Lengths may be written 8, 8.5, 8 1/2, 8-1/2\", 215.9 mm.";

// Like every problem of a verb, on standard output where --json is among the words.
int refuse_usage(const WrongUse& wrong, int argc, char** argv) {
  const bool wants_json = std::find(argv, argv + argc, std::string_view("--json")) != argv + argc;
  if (!wants_json) return refuse(bad_usage, wrong.message);
  const Problem problem{Severity::error, "usage", wrong.message, {}, ""};
  write_output("-", outcome_json(wrong.verb, {bad_usage, {problem}}));
  return bad_usage;
}

}  // namespace

int run(int argc, char** argv, std::initializer_list<AddVerb> verbs, HandOver hand_over) try {
  CommandLine program("mullion", {about, "mullion " MULLION_VERSION, end_of_help});
  for (const AddVerb add : verbs) add(program);
  if (hand_over != nullptr) {
    const std::string first = argc > 1 ? argv[1] : "";
    if (first != "--version" && !program.has_verb(first)) return hand_over(argv);
  }
  const auto action = program.parse(argc, argv);
  return action ? (*action)() : refuse_usage(action.error(), argc, argv);
} catch (const std::exception& error) {
  return refuse(failure, error.what());
}

}  // namespace mullion::cli
