#pragma once

// Soft shadows drawn as vectors: a stack of faint strokes, so that PDF, SVG and PNG look alike.

#include "render/proof/view.h"

namespace mullion::proof {

// The shadow that an edge throws into the area it encloses, `reach` points deep at most.
void shadow_inside(paper::Drawing& page, const Outline& edge, const View& view, double reach,
                   double strength);

// The shadow of a board on the wall behind it.
void shadow_below(paper::Drawing& page, const paper::Box& box, double reach, double strength);

}  // namespace mullion::proof
