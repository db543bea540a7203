#pragma once

// Runs this very program again, with other words. What a job's files do to it, they do to the
// child.

#include <string>
#include <vector>

namespace mullion::cli::watch {

struct Ended {
  int status = 0;      // exit status; `failure` where a signal ended it
  std::string errors;  // what it said on standard error; no more than 64 kB of it
};

// Standard output goes to nowhere. Waits until the child has ended.
Ended run_again(const std::vector<std::string>& words);

}  // namespace mullion::cli::watch
