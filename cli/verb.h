#pragma once

// A verb of the program is one file: it adds itself to the command line, with its options and what
// is to be done when it was given. The work returns an exit status.

#include "cli/command_line.h"
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

void add_new(CommandLine& program);
void add_check(CommandLine& program);
void add_explain(CommandLine& program);
void add_sheets(CommandLine& program);
void add_rack(CommandLine& program);
void add_template(CommandLine& program);
void add_printer(CommandLine& program);
void add_proof(CommandLine& program);
void add_suggest(CommandLine& program);
void add_frames(CommandLine& program);
void add_estimate(CommandLine& program);
void add_diff(CommandLine& program);
void add_set(CommandLine& program);
void add_cuts(CommandLine& program);
void add_cutter(CommandLine& program);
void add_manual(CommandLine& program);
void add_open(CommandLine& program);
void add_completion(CommandLine& program);

}  // namespace mullion::cli
