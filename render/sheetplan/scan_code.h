#pragma once

// A code that a scanner reads: QR Code (ISO/IEC 18004), made by the zint library.

#include <string>
#include <vector>

namespace mullion {

// Rows of modules, true where one is dark; without the quiet zone, which is four modules wide.
// Throws std::runtime_error where the text cannot be encoded (it is too long).
std::vector<std::vector<bool>> scan_code(const std::string& text);

}  // namespace mullion
