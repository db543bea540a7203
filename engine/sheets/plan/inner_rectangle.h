#pragma once

// The largest upright rectangle inside an outline: what a fallout of any shape is good for.
//
// Exact ticks. The rectangle never sticks out of the outline. Where the outline is straight and
// square it is the largest there is; elsewhere its sides are searched for on a grid that is made
// finer about the best find, so that a larger one may be missed, but only in an outline with many
// hollows.

#include <optional>

#include "engine/mat/outline.h"

namespace mullion {

// Nothing where the outline has no room for a rectangle of one tick.
std::optional<Rect> inner_rectangle(const Outline& outline);

}  // namespace mullion
