#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace mullion::cli {

// Words filled into lines of 80 characters. The first is continued at column `indent`, the others
// begin with as many blanks.
std::string filled(std::string_view text, std::size_t indent);

}  // namespace mullion::cli
