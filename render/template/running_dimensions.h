#pragma once

// Running dimensions: marks along an edge of the board, each labelled with its distance from the
// edge that rests against the guide. Labels that would touch are moved apart and joined to their
// marks by leaders.

#include <string>
#include <vector>

#include "engine/length/format.h"
#include "render/paper/drawing.h"

namespace mullion {

struct DimensionMark {
  Length distance;  // from the measured edge
  double place;     // along the axis, in points on the page
};

enum class DimensionSide { above, below, left, right };

// `edge` is where the board's edge runs, in points across the axis; the marks' labels stand away
// from the board on the given side. `from`, `to` bound the labels along the axis.
void draw_running_dimensions(paper::Drawing& drawing, std::vector<DimensionMark> marks,
                             DimensionSide side, double edge, double from, double to,
                             const Scale& scale);

// The places of labels at least `spacing` apart, as near to the wished ones as an even push to both
// sides brings them; in rising order like `wished`. Within [from, to] where there is room.
std::vector<double> spread_labels(const std::vector<double>& wished, double spacing, double from,
                                  double to);

}  // namespace mullion
