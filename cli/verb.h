#pragma once

// A verb of the program is one file: it adds a subcommand to the app, with its options, and sets
// what is to be done when that subcommand was given. The work returns an exit status.

#include <CLI/CLI.hpp>
#include <functional>
#include <string>

#include "engine/xml/problem.h"

namespace mullion::cli {

// Exit statuses, as `mullion --help` lists them.
enum Exit : int {
  success = 0,
  bad_job = 1,    // the input was read and is wrong, or cannot be satisfied
  bad_usage = 2,  // the command line is wrong
  bad_file = 3,   // a file cannot be read or written
  failure = 4,    // a fault of the program itself
};

using Action = std::function<int()>;

void add_new(CLI::App& app, Action& action);
void add_check(CLI::App& app, Action& action);
void add_explain(CLI::App& app, Action& action);
void add_sheets(CLI::App& app, Action& action);
void add_template(CLI::App& app, Action& action);
void add_printer(CLI::App& app, Action& action);
void add_proof(CLI::App& app, Action& action);
void add_suggest(CLI::App& app, Action& action);
void add_frames(CLI::App& app, Action& action);
void add_estimate(CLI::App& app, Action& action);
void add_diff(CLI::App& app, Action& action);
void add_cuts(CLI::App& app, Action& action);
void add_cutter(CLI::App& app, Action& action);
void add_manual(CLI::App& app, Action& action);
void add_watch(CLI::App& app, Action& action);
void add_completion(CLI::App& app, Action& action);

}  // namespace mullion::cli
