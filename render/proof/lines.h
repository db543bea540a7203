#pragma once

// Text in a column: broken between words where it is too long, within a word where there is no
// other way.

#include <string>
#include <vector>

#include "render/paper/canvas.h"

namespace mullion::proof {

std::vector<std::string> lines_of(paper::Canvas& canvas, const std::string& text, double width,
                                  const paper::TextStyle& style);

// The spot is on the first baseline. Returns the number of lines.
std::size_t draw_lines(paper::Canvas& canvas, const std::string& text, paper::Spot spot,
                       double width, const paper::TextStyle& style, double leading);

}  // namespace mullion::proof
