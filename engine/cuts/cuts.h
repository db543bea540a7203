#pragma once

// What is cut for a mat on a cutter, told once for all who show, set or count it: the blank of
// every layer, every line with its over-cuts, and why the cutter cannot cut it.
//
// All that lies on a board is in the Mat's coordinates: exact ticks, from the upper left corner of
// the top mat as seen from the front, on the board's back. The templates, the plan, the sheets and
// the checks read it; none works out a blank, a line or an over-cut again.
//
// Blanks. The top mat has the mat's size. An under-mat that is taped behind it, and cut against the
// top mat's edges, is smaller by the trim on each side; one that is cut by itself has the mat's
// size.
//
// V-grooves. A groove is cut on the BACK of the top mat, before its openings: the panel inside it
// is cut out with the usual bevel, so that the blade comes out of the face at the outer edge of the
// V, half the groove's width outside its middle, and enters the back that far less the bevel's run.
// The panel's face edge is then shaved by the groove's width, and the panel taped back.

#include <optional>
#include <string>
#include <vector>

#include "engine/cuts/cutter/profile.h"
#include "engine/cuts/lines.h"
#include "engine/mat/mat.h"

namespace mullion {

struct CutOptions {
  bool stacked = true;         // under-mats are taped behind; else each is cut by itself
  std::optional<Length> trim;  // of a taped under-mat on each side; nothing: the usual one
};

// 1/8 in, or 3 mm where the job measures in millimetres or centimetres. Common practice, no source:
// the top mat shows by as much all around from behind.
Length usual_trim(Unit unit);

enum class StageKind { groove, layer, spacer };

// What is cut out of one board while it lies on the cutter: a layer's windows, the panels of the
// top mat's V-grooves, or a spacer's, which are cut square: no bevel, no over-cut.
struct BoardCuts {
  StageKind kind = StageKind::layer;
  const MatLayer* layer = nullptr;
  bool taped = false;          // behind the layers above, to be cut against the top mat's edges
  Rect blank;                  // the board itself
  Rect edges;                  // those that lie at the guide and the squaring arm
  Length over_cut;             // at a square corner
  int passes = 1;              // of the bevel blade
  std::vector<Window> panels;  // groove: one for each of the mat's grooves, in their order
  CutLines lines;              // of the windows

  const std::vector<Window>& windows() const {
    return kind == StageKind::groove ? panels : layer->windows;
  }
};

// Why a mat cannot be cut.
struct Refusal {
  enum class Why {
    no_layer,         // there is no board
    trim,             // the trim leaves no blank, or a line beyond its edge
    board_too_wide,   // for the cutter: `found` across its rail
    cut_too_long,     // for the cutter: `found` along its rail, over-cuts included
    beyond_rail,      // for the cutter: a cut lies `found` from its squaring arm, over-cut included
    board_too_thick,  // for the cutter: does not lie under its rail
    cut_too_deep,     // for the cutter: `found` thick, at the layer's bevel, even in two passes
    groove,           // its panel cannot be cut out: see `detail`
  };
  Why why = Why::no_layer;
  int layer = 0;              // from 1; 0: the whole mat
  std::vector<int> openings;  // trim: of the window that is cut into; none: nothing is left at all
  Length found, limit;        // trim: what is taken off, and what may be at most
  std::string detail;
  Place place;  // of the layer or groove in the job

  // Another cutter might do it; else no cutter can.
  bool is_of_the_cutter() const { return why >= Why::board_too_wide && why <= Why::cut_too_deep; }
};

// Refers to the mat.
struct Cuts {
  const Mat* mat = nullptr;
  CutterProfile cutter;
  bool stacked = true;               // some under-mat is taped behind
  std::optional<BoardCuts> grooves;  // nothing: no groove, or one that cannot be cut
  std::vector<BoardCuts> layers;     // one each, top to bottom
  std::vector<Refusal> refusals;     // empty: the cutter can cut it. Each reason at most once but
                                     // for grooves and layers
  Length farthest;  // of a cut along the rail from the squaring arm, over-cut included
};

Cuts cuts_of(const Mat& mat, const CutterProfile& cutter, const CutOptions& options = {});
// On the generic cutter of the job's unit.
Cuts cuts_of(const Mat& mat, const CutOptions& options = {});
Cuts cuts_of(Mat&&, const CutterProfile&, const CutOptions& = {}) = delete;
Cuts cuts_of(Mat&&, const CutOptions& = {}) = delete;

}  // namespace mullion
