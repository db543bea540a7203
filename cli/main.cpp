#include <cstdio>
#include <exception>

#include "cli/verb.h"

namespace {

constexpr const char* about =
    "mullion designs the window mats of a framing job and takes them from the customer's pictures "
    "to cut board.";

constexpr const char* footer =
    "Exit status: 0 done; 1 the job is wrong or cannot be satisfied; 2 the command line is wrong;\n"
    "3 a file cannot be read or written; 4 a fault of the program.\n\n"
    "Every verb has its own --help. Lengths may be written 8, 8.5, 8 1/2, 8-1/2\", 215.9 mm.";

}  // namespace

int main(int argc, char** argv) try {
  using namespace mullion::cli;
  CLI::App app{about, "mullion"};
  app.set_version_flag("--version", "mullion " MULLION_VERSION);
  app.footer(footer);
  app.require_subcommand(1);
  Action action;
  add_check(app, action);
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
  try {
    app.parse(argc, argv);
  } catch (const CLI::ParseError& error) {
    return app.exit(error) == 0 ? success : bad_usage;
  }
  return action();
} catch (const std::exception& error) {
  std::fprintf(stderr, "error: %s\n", error.what());
  return mullion::cli::failure;
}
