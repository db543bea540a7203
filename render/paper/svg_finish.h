#pragma once

// What Cairo leaves to chance in an SVG.

#include <string>

namespace mullion::paper {

// Cairo numbers surfaces and images by how many the process has made before; here they are
// numbered anew from 1 in the order in which the file names them.
std::string finish_svg(const std::string& svg);

}  // namespace mullion::paper
