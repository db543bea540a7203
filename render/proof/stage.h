#pragma once

// One choice as an <svg> element for the HTML page: every part of the drawing is a group of its own
// that can be hidden, and every opening an element that can be focused and tells its size.

#include "render/proof/sheet.h"

namespace mullion::proof {

// The key of a part in the page's markup: "layer-2", "frame".
std::string part_key(const PiecePart& part);

// "Picture of Boat, two sails, choice B", in the locale's words
std::string stage_label(const Sheet& sheet, std::size_t choice);

Result<std::string> stage_markup(const Sheet& sheet, std::size_t choice);

}  // namespace mullion::proof
