#pragma once

// The mat: its outer edge and, per window of each layer, the face edge and the back edge.
//
// Coordinates as in Layout: ticks, from the upper left corner of the top mat seen from the front.
// The bevel makes a window wider on the face than on the back by `run` a side (45 degrees: one
// board thickness). A reveal is what the eye sees: from the upper layer's back edge to this
// layer's face edge.
//
// Every layer is one board with a window wherever something is to be seen through it. A layer that
// is not cut for an opening (Layer::only), and every spacer, has a window there all the same, set
// back behind the edge above it by 1/4 in or 6 mm (or a quarter of the bar or border beside it, if
// that is less), so that it stays out of sight; seen through a window that several openings share,
// it has one such window for all of them. Where a group has one window in a layer
// (Group::joined_layer) the layer has no edge between the group's openings, and reveals are counted
// from the uppermost edge that is there. Such a window is a rectangle, or steps behind the bars
// above it where the openings are of unequal size (engine/mat/joined.h).
//
// Refuses: reveals that leave no window; reveals that differ from side to side on a shape that has
// curves or slanting edges, but for the foot of an arch; a top layer that skips an opening; a layer
// that is cut for one opening but not for another seen through the same window above; a joined
// window below openings that are not rectangles, or that do not lie beside each other; a groove
// around an opening that lies in a joined window of the top mat; a free outline whose file cannot
// be used.

#include <string>
#include <vector>

#include "engine/job/reveal.h"
#include "engine/layout/layout.h"
#include "engine/mat/outline.h"

namespace mullion {

struct Window {
  std::vector<int> openings;  // numbers of the openings it serves; several where windows are joined
  bool seen = true;           // false: set back out of sight (spacer, layer not cut here)
  ShapeSpec shape;            // with the corner, rise of the back edge of this very window; a
                              // joined one that steps is stepped, with no corner of one size
  Rect back;                  // bounding box of the back edge
  Rect face;                  // bounding box of the face edge
  Outline back_edge;          // closed, clockwise as seen from the front
  Outline face_edge;
};

struct MatGroove {
  std::vector<int> openings;
  Outline line;  // the middle of the groove, on the face of the top mat; clockwise as seen
  Length width;
  Place place;
  ShapeKind shape = ShapeKind::rectangle;
};

struct MatLayer {
  int number = 0;  // from 1, top to bottom
  Layer board;
  Length run;  // of the bevel: thickness / tan(angle)
  std::vector<Window> windows;
};

struct MatPicture {
  int opening = 0;  // number
  Picture picture;
  Rect rect;   // where the picture lies, edges included: centred in the sight window
  Rect sight;  // what is seen of it: within every layer's back edge
};

struct Mat {
  Unit unit = Unit::inch;        // of the job: what is usual where it says nothing
  Rect outer;                    // of the whole; each layer's blank is told by engine/cuts/cuts.h
  std::vector<MatLayer> layers;  // top to bottom
  std::vector<MatGroove> grooves;
  std::vector<MatPicture> pictures;
  std::vector<Rect> sights;  // what is seen through each opening, in the order of their numbers
};

bool serves(const Window& window, int opening);

// Derives the mat. Errors name the job's statement that makes a layer impossible.
Result<Mat> build_mat(const Job& job, const Layout& layout, const Locale& locale = {});

}  // namespace mullion
