#pragma once

// The papers that --paper knows; a size may be given too.

#include <string>
#include <vector>

namespace mullion::cli {

std::vector<std::string> paper_names();

}  // namespace mullion::cli
