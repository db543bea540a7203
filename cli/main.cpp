#include <algorithm>
#include <exception>
#include <string_view>

#include "cli/answer.h"
#include "cli/verb.h"

namespace {

constexpr const char* about =
    "mullion designs the window mats of a framing job and takes them from the customer's pictures "
    "to cut board.";

constexpr const char* footer =
    "Exit status: 0 done; 1 the job is wrong or cannot be satisfied; 2 the command line is wrong;\n"
    "3 a file cannot be read or written; 4 a fault of the program.\n\n"
    "Every verb has its own --help. Lengths may be written 8, 8.5, 8 1/2, 8-1/2\", 215.9 mm.";

// Names of the options and verbs that may stand where a word is not known.
std::vector<std::string> words_of(const CLI::App& verb) {
  std::vector<std::string> words;
  for (const CLI::Option* option : verb.get_options()) {
    for (const std::string& name : option->get_lnames()) words.push_back("--" + name);
  }
  for (const CLI::App* below : verb.get_subcommands({})) words.push_back(below->get_name());
  return words;
}

// What is wrong with the command line.
std::string usage_message(const CLI::App& app, const CLI::ParseError& error) {
  const CLI::App* verb = &app;
  std::string called = app.get_name();
  while (!verb->get_subcommands().empty()) {
    verb = verb->get_subcommands().front();
    called += " " + verb->get_name();
  }
  std::string message = error.what();
  if (const std::vector<std::string> unknown = app.remaining(true); !unknown.empty()) {
    const std::vector<std::string> known = words_of(*verb);
    const std::string_view near = mullion::near_name(unknown.front(), {known.begin(), known.end()});
    message = "found \"" + unknown.front() + "\", which " + called + " does not know";
    if (!near.empty()) message += "; did you mean \"" + std::string(near) + "\"?";
  }
  return message + " (see " + called + " --help)";
}

// The verb that was called, as far as it can be told.
std::string verb_of(const CLI::App& app) {
  const auto verbs = app.get_subcommands();
  return verbs.empty() ? "usage" : verbs.front()->get_name();
}

// Like every problem of a verb, on standard output where --json is among the words.
int refuse_usage(const CLI::App& app, const CLI::ParseError& error, int argc, char** argv) {
  using namespace mullion::cli;
  const std::string message = usage_message(app, error);
  const bool wants_json = std::find(argv, argv + argc, std::string_view("--json")) != argv + argc;
  if (!wants_json) return refuse(bad_usage, message);
  const mullion::Problem problem{mullion::Severity::error, "usage", message, {}, ""};
  write_output("-", mullion::outcome_json(verb_of(app), {bad_usage, {problem}}));
  return bad_usage;
}

}  // namespace

int main(int argc, char** argv) try {
  using namespace mullion::cli;
  CLI::App app{about, "mullion"};
  app.set_version_flag("--version", "mullion " MULLION_VERSION);
  app.footer(footer);
  app.require_subcommand(1);
  Action action;
  add_new(app, action);
  add_check(app, action);
  add_explain(app, action);
  add_sheets(app, action);
  add_template(app, action);
  add_printer(app, action);
  add_proof(app, action);
  add_suggest(app, action);
  add_frames(app, action);
  add_estimate(app, action);
  add_diff(app, action);
  add_cuts(app, action);
  add_cutter(app, action);
  add_watch(app, action);
  add_manual(app, action);
  add_completion(app, action);
  try {
    app.parse(argc, argv);
  } catch (const CLI::ParseError& error) {
    if (error.get_exit_code() == 0) return app.exit(error);
    return refuse_usage(app, error, argc, argv);
  }
  return action();
} catch (const std::exception& error) {
  return mullion::cli::refuse(mullion::cli::failure, error.what());
}
