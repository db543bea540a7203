#pragma once

// The mat: every layer's outer edge and, per window, the face edge and the back edge.
//
// Coordinates as in Layout: ticks, from the upper left corner of the top mat seen from the front.
// The bevel makes a window wider on the face than on the back by `run` a side (45 degrees: one
// board thickness). A reveal is what the eye sees: from the upper layer's back edge to this
// layer's face edge.

#include <string>
#include <vector>

#include "engine/layout/layout.h"
#include "engine/mat/outline.h"

namespace mullion {

struct Window {
  std::vector<int> openings;  // numbers of the openings it serves; several where windows are joined
  ShapeSpec shape;            // with the corner, rise of the back edge of this very window
  Rect back;                  // bounding box of the back edge
  Rect face;                  // bounding box of the face edge
  Outline back_edge;          // closed, clockwise as seen from the front
  Outline face_edge;
};

struct MatGroove {
  std::vector<int> openings;
  Outline line;  // the middle of the groove, on the face of the top mat
  Length width;
};

struct MatLayer {
  int number = 0;  // from 1, top to bottom
  Layer board;
  Length run;  // of the bevel: thickness / tan(angle)
  Rect outer;  // of the blank; all layers equal unless trimmed by the cutting plan
  std::vector<Window> windows;
};

struct MatPicture {
  int opening = 0;  // number
  Picture picture;
  Rect rect;  // where the picture lies, edges included
};

struct Mat {
  Rect outer;
  std::vector<MatLayer> layers;  // top to bottom
  std::vector<MatGroove> grooves;
  std::vector<MatPicture> pictures;
};

// Derives the mat. Errors name the job's statement that makes a layer impossible.
Result<Mat> build_mat(const Job& job, const Layout& layout);

// The reveal of a layer (from 2) in an opening: the opening's own, else the layer's.
Sides reveal_of(const Job& job, const Opening& opening, int layer_number);

// How far a layer's cut line lies inside the line of the layer above it: reveal plus the bevel's
// run, or the reveal alone where the job reads reveals from line to line. Zero for the first layer
// and for a layer that is not cut for the opening.
Sides line_inset(const Job& job, const Opening& opening, int layer_number);

// How far the top mat's back edge lies outside the lowest layer's back edge, for one opening.
Sides reveal_stack(const Job& job, const Opening& opening);

// Run of the bevel for a board: thickness / tan(angle), to the nearest tick; exact at 45 degrees.
Length bevel_run(Length thickness, int bevel_millidegrees);

}  // namespace mullion
