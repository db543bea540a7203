#pragma once

// Running dimensions: marks along an edge of the board, each labelled with its distance from the
// edge that rests against the guide. Labels that would touch are moved apart and joined to their
// marks by leaders; marks whose labels would say the same share one.

#include <string>
#include <vector>

#include "engine/length/format.h"
#include "engine/locale/locale.h"
#include "render/paper/drawing.h"

namespace mullion {

struct DimensionMark {
  Length distance;          // from the measured edge
  double place;             // along the axis, in points on the page
  std::string before = {};  // of the label: whose line it is
};

enum class DimensionSide { above, below, left, right };

// `edge` is where the board's edge runs, in points across the axis; the marks' labels stand away
// from the board on the given side. `from`, `to` bound the labels along the axis; `size` is the
// labels' font size in points. False, and nothing is drawn, where the edge has no room for so many.
bool draw_running_dimensions(paper::Drawing& drawing, std::vector<DimensionMark> marks,
                             DimensionSide side, double edge, double from, double to, double size,
                             const Scale& scale, const Locale& locale = {});

// The length in the scale's unit and increment, or as finely as it takes down to 1/64 in or 0.1 mm;
// with a sign for "about" where that does not say it exactly.
std::string dimension_text(Length length, const Scale& scale, const Locale& locale);

// The places of labels at least `spacing` apart, as near to the wished ones as an even push to both
// sides brings them; in rising order like `wished`. Within [from, to] where there is room.
std::vector<double> spread_labels(const std::vector<double>& wished, double spacing, double from,
                                  double to);

}  // namespace mullion
