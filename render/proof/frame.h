#pragma once

// The moulding: four mitred lengths with the shade of their profile.

#include "render/proof/view.h"

namespace mullion::proof {

void draw_frame(paper::Drawing& page, const Rect& sight, const Rect& outer, const Colour& colour,
                const View& view);

}  // namespace mullion::proof
