#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <filesystem>

#include "cli/report.h"
#include "cli/run.h"

// The program that is typed. Nearly all of a short run is the dynamic linker's work, and nearly all
// of that is for libraries that draw: verbs that reckon alone are here, and the rest is handed over
// to the whole program, which has all of them.

namespace mullion::cli {
namespace {

int hand_over(char** argv) {
  const auto here = std::filesystem::read_symlink("/proc/self/exe").parent_path();
  const std::string whole = (here / MULLION_WHOLE).lexically_normal();
  ::execv(whole.c_str(), argv);
  return refuse(failure, "cannot start " + whole + ": " + std::strerror(errno));
}

}  // namespace
}  // namespace mullion::cli

int main(int argc, char** argv) {
  using namespace mullion::cli;
  return run(argc, argv,
             {add_new, add_check, add_explain, add_frames, add_estimate, add_diff, add_set},
             hand_over);
}
