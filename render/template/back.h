#pragma once

// A board's back as the template shows it, as an SVG element for a page that shows it among its
// own: the user unit is 1 mm, the origin the mat's upper left corner as seen from behind, and every
// id begins with "m-".

#include <string>

#include "render/template/board_drawing.h"

namespace mullion {

std::string back_svg(const Job& job, const Cuts& cuts, int layer, const Locale& locale);

}  // namespace mullion
