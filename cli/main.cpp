#include <algorithm>
#include <exception>
#include <string_view>

#include "cli/answer.h"
#include "cli/verb.h"

namespace {

constexpr const char* about =
    "mullion designs the window mats of a framing job and takes them from the customer's pictures "
    "to cut board.";

constexpr const char* end_of_help =
    "Exit status: 0 done; 1 the job is wrong or cannot be satisfied; 2 the command line is wrong;\n"
    "3 a file cannot be read or written; 4 a fault of the program.\n\n"
    "Every verb has its own --help. Lengths may be written 8, 8.5, 8 1/2, 8-1/2\", 215.9 mm.";

// Like every problem of a verb, on standard output where --json is among the words.
int refuse_usage(const mullion::cli::WrongUse& wrong, int argc, char** argv) {
  using namespace mullion::cli;
  const bool wants_json = std::find(argv, argv + argc, std::string_view("--json")) != argv + argc;
  if (!wants_json) return refuse(bad_usage, wrong.message);
  const mullion::Problem problem{mullion::Severity::error, "usage", wrong.message, {}, ""};
  write_output("-", mullion::outcome_json(wrong.verb, {bad_usage, {problem}}));
  return bad_usage;
}

}  // namespace

int main(int argc, char** argv) try {
  using namespace mullion::cli;
  CommandLine program("mullion", {about, "mullion " MULLION_VERSION, end_of_help});
  for (const auto add : {add_new, add_check, add_explain, add_sheets, add_template, add_printer,
                         add_proof, add_suggest, add_frames, add_estimate, add_diff, add_cuts,
                         add_cutter, add_watch, add_manual, add_completion}) {
    add(program);
  }
  const auto action = program.parse(argc, argv);
  return action ? (*action)() : refuse_usage(action.error(), argc, argv);
} catch (const std::exception& error) {
  return mullion::cli::refuse(mullion::cli::failure, error.what());
}
