#pragma once

// The way of a machine's tool: straight lines and arcs of circles, in millimetres.
//
// Arcs follow the outline's curves within 0.005 mm.

#include <optional>
#include <tl/expected.hpp>

#include "render/paper/path.h"

namespace mullion {

struct ToolPath {
  struct Corner {
    paper::Spot at;
    double bulge = 0;  // of the part that follows: the tangent of a quarter of its arc's angle,
                       // above zero where it turns from x to y; zero is straight
  };
  std::vector<Corner> corners;
  bool closed = true;
};

// Closed, with x to the right and y down as the outline has them.
ToolPath tool_path(const Outline& outline);

struct Circle {
  paper::Spot centre;
  double radius = 0;
};

// The circle that a closed path is, if it is one.
std::optional<Circle> circle_of(const ToolPath& path);

struct Leads {
  Length in;        // from the waste to the line, at a right angle to it
  Length over_cut;  // beyond the place where the line closes
};

enum class WasteSide { inside, outside };

// The closed path cut open, in the middle of its longest straight part (else of its first part): it
// comes from the waste, runs around and over its own start. The error is one sentence: there is no
// room for the lead-in, or the over-cut is longer than the line.
tl::expected<ToolPath, std::string> with_leads(const ToolPath& path, const Leads& leads,
                                               WasteSide waste);

// The same way on paper.
paper::Path traced(const ToolPath& path);

}  // namespace mullion
