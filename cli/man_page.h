#pragma once

// The manual page mullion(1) in mdoc: every verb and option as the command line knows them, exit
// statuses as --help lists them, files, examples.

#include <string>

#include "cli/command_tree.h"

namespace mullion::cli {

// `footer` is what --help ends with; its sentence "Exit status: 0 done; 1 ..." becomes a list.
std::string man_page(const Command& program, const std::string& footer);

}  // namespace mullion::cli
