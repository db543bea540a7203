#pragma once

// A browser without a window, and without a network.

#include <string>

namespace browser {

// Saves what the page looks like in a window of that size.
void screenshot(const std::string& page, int width, int height, const std::string& png);

// The page's markup after its scripts have run.
std::string dom_after_scripts(const std::string& page);

}  // namespace browser
