#pragma once

// Runs this very program again, with other words. What a job's files do to it, they do to the
// child.

#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "cli/page/halt.h"

namespace mullion::cli::page {

struct Ended {
  int status = 0;      // exit status; `failure` where a signal ended it
  std::string output;  // what it wrote to standard output; no more than 16 MB of it
  std::string errors;  // what it said on standard error; no more than 64 kB of it
};

// Waits until the child has ended; the halt kills it. `hears` is told each line of standard error
// as it comes, without its end. Throws std::runtime_error where no child can be started.
Ended run_again(const std::vector<std::string>& words, Halt& halt,
                const std::function<void(std::string_view)>& hears = {});

}  // namespace mullion::cli::page
