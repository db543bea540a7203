#include "cli/run.h"

// The whole program: every verb. It stands behind cli/light, which hands over to it what draws.
int main(int argc, char** argv) {
  using namespace mullion::cli;
  return run(argc, argv,
             {add_new, add_check, add_explain, add_sheets, add_rack, add_template, add_printer, add_proof,
              add_suggest, add_frames, add_estimate, add_diff, add_set, add_cuts, add_cutter,
              add_open, add_manual, add_completion});
}
