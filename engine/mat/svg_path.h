#pragma once

// The outline in an SVG path's data (the `d` attribute): one closed subpath of the commands M L H V
// C S Q T A Z, absolute or relative (SVG 1.1, chapter 8). In the drawing's own units.
//
// Refuses an open path, a second subpath, numbers that are not finite or above a thousand million,
// and more than `most_path_parts` segments.

#include <string>
#include <string_view>
#include <tl/expected.hpp>

#include "engine/mat/outline.h"

namespace mullion {

inline constexpr std::size_t most_path_parts = 4'000;

// Closed: each curve starts where the one before it ends, the first where the last one ends.
// A straight part has its controls on the thirds of the line, as line_curve puts them.
struct PathCurve {
  bool curved = false;
  Cubic curve;
};
using FreePath = std::vector<PathCurve>;

struct PathError {
  std::string message;     // a sentence
  std::size_t offset = 0;  // of the byte in the data at which it was seen
};

tl::expected<FreePath, PathError> parse_path(std::string_view data);

// The path stretched or shrunk to fill a rectangle, clockwise as seen. The error is a sentence:
// the path has no width, no height or no area.
tl::expected<Outline, std::string> fill(const FreePath& path, const Rect& rect);

}  // namespace mullion
