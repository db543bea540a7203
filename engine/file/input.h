#pragma once

// Input files that a person names.

#include <cstddef>
#include <string>

#include "engine/xml/problem.h"

namespace mullion {

// As read_file; a failure is one problem with the code "file-read", whose message names the path.
Result<std::string> read_input(const std::string& path, std::size_t limit);

}  // namespace mullion
