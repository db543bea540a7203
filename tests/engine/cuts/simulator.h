#pragma once

// An ideal cutter that is worked by a printed plan.
//
// Knows nothing of the planner: it reads the plan's JSON, sets what the scales are to show, turns
// boards, puts their edges against guide and arm, pulls a leaning blade through them, and looks at
// what falls out. Table coordinates as an operator sees them: X to the right, Y away; the blade
// enters at X = 0.

#include <compare>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "engine/length/length.h"

namespace simulator {

// What the cutter really is, whatever the plan believes.
struct Cutter {
  bool guide_on_left = true;
  bool tip_to_guide = true;
  bool pulled = true;
  mullion::Length guide_zero, near_zero, far_zero, arm_zero, mark_lead, start_lead, kerf;
  mullion::Length line_from_rail;  // of the blade's line from the rail's edge, away from the guide
  std::optional<mullion::Length> reach;  // of the blade from the squaring arm
};

struct Point {
  mullion::Length x, y;
  friend auto operator<=>(const Point&, const Point&) = default;
};

// Corner points, sorted; of the board as seen from the front, from its upper left corner.
using Polygon = std::vector<Point>;

struct Spot {
  double x = 0, y = 0;  // ticks
};

// The way of a blade in short straight steps: through the back, and where its tip came out.
struct Track {
  std::vector<Spot> back, face;
};

// A cut along an edge of the board, with the openings and the side that its instruction names.
struct NamedCut {
  int number = 0;
  std::vector<int> openings;
  std::string side;      // "top" and the like as seen from the front; empty where it is not said
  Point a, b;            // on the back
  Point face_a, face_b;  // where it comes out
};

struct CutLayer {
  std::string kind;
  int layer = 0;
  std::vector<NamedCut> straight;
  // Of the openings with cuts along the edges alone, sorted.
  std::vector<Polygon> back, face;
  // Of the others, by the openings that their instructions name: every cut.
  std::map<std::vector<int>, std::vector<Track>> tracks;
  mullion::Length longest_overrun;  // of a cut past a corner, on the face
  mullion::Length blank_width, blank_height;
};

struct Outcome {
  std::vector<CutLayer> layers;
  std::vector<std::string> faults;  // what could not be done as the plan says it
  int set_ups = 0, stop_moves = 0, guide_moves = 0;
};

// The boards lie anyhow before each stage: `lie` says how, two bits a stage. Where lengths are
// rounded, what two instructions say of one place may differ by `slack`, and the polygons of the
// openings, which would not close, are not sought.
Outcome play(const std::string& plan_json, const Cutter& cutter, unsigned lie = 0,
             mullion::Length slack = {});

}  // namespace simulator
