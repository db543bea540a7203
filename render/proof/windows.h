#pragma once

// The edges of one layer: its board around all windows, and the lit bevels.

#include "render/proof/view.h"

namespace mullion::proof {

// The board's face within `outer`, all its windows left out, so that they may be drawn in any
// order.
void draw_board(paper::Drawing& page, const MatLayer& layer, const Rect& outer, const View& view);
void draw_bevel(paper::Drawing& page, const Window& window, const Colour& core, const View& view);

}  // namespace mullion::proof
