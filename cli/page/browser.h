#pragma once

#include <string>

namespace mullion::cli::page {

// Asks the desktop to show an address (xdg-open of xdg-utils), without waiting for it. False where
// there is no such program.
bool show_in_browser(const std::string& address);

}  // namespace mullion::cli::page
