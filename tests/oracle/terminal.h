#pragma once

// Runs a program on a terminal of its own, as a person would.

#include <string>
#include <vector>

#include "tests/oracle/program.h"

namespace oracle {

// Input, output and errors are one pseudo-terminal (`out` holds all that it showed, the echo of
// the input included, with CR LF as line ends). `typed` is sent at once; end of input is byte 4.
Run run_on_terminal(const std::vector<std::string>& words, const std::string& typed = {});

}  // namespace oracle
