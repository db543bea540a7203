#pragma once

// The edge of the one window that a layer has for a whole group.
//
// Behind the bars of the layers above it follows the openings: beside each it lies where it would
// lie if that opening had a window of its own, so that reveals stay as stated around openings of
// unequal size, and it steps from one to the next in the middle of the bar between them, out of
// sight, at a step of the rule where the bar has one. Openings that are seen through one window
// above have a rectangle around them instead, since nothing would hide its steps. Exact in ticks.

#include <optional>
#include <vector>

#include "engine/mat/outline.h"

namespace mullion {

// What one opening contributes.
struct JoinedPart {
  Rect edge;                          // of a window of its own
  std::optional<std::size_t> shared;  // the group that is seen with it through one window; if any
};

struct JoinedEdges {
  Outline back, face;  // clockwise as seen, from the leftmost of the uppermost corners
};

// `first` is the number of the group's first opening, `parts` are those of its openings in order,
// `step` is what is read off the rule, `run` how far the face edge lies outside the back edge.
// Nothing where neighbours do not lie beside each other, so that no single window serves them.
std::optional<JoinedEdges> joined_edges(const Group& group, const Layout& layout, int first,
                                        const std::vector<JoinedPart>& parts, Length step,
                                        Length run);

}  // namespace mullion
