#pragma once

// Completion scripts for shells. Each completes verbs, options, the values that are known, and
// names of files, job files before others. They are static: no run of mullion is needed to
// complete.

#include <string>

#include "cli/command_tree.h"

namespace mullion::cli {

namespace bash {
std::string completion(const Command& program);
}
namespace zsh {
std::string completion(const Command& program);
}
namespace fish {
std::string completion(const Command& program);
}

}  // namespace mullion::cli
