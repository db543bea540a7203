#pragma once

// The cutting plan: what to set on the cutter, how to lay the board, and in what order to cut, from
// the blank to the last layer of a mat, for one mat or many alike.
//
// Lengths are exact ticks; places and directions are those of engine/cuts/board.h. All
// distances are true ones, from the edges of the top mat's blank; what a scale shows is worked out
// where a plan is printed. Refused: a mat that the cutter cannot hold or cut.

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "engine/cuts/cuts.h"
#include "engine/cuts/plan/settings.h"
#include "engine/xml/problem.h"

namespace mullion {

// The three usual ways of working.
enum class Way {
  pencilled,  // every line drawn on the back; cuts begin and end by eye
  one_stop,   // cuts end at a stop and begin by eye, at a pencil line or the cut made before
  two_stops,  // cuts begin and end at stops
};

const char* name_of(Way way);

struct PlanOptions : CutOptions {
  int quantity = 1;
  std::optional<Way> way;  // nothing: the quickest
};

// On the back of the board, across it, parallel to an edge.
struct PencilLine {
  int number = 0;  // within the stage
  BoardEdge edge = BoardEdge::top;
  Length distance;
  std::vector<int> openings;
};

enum class EndBy { stop, pencil, cut };

// Where the head's mark must stand at one end of a cut: at a line, or past it.
struct CutEnd {
  Length line;      // from the near edge to the window's line
  Length over_cut;  // of the blade, past the line
  Length past;      // of the mark: over-cut less mark lead; below zero: short of the line
  EndBy by = EndBy::stop;
  int reference = 0;  // number of the pencil line or of the cut whose line shows the place
};

struct BevelCut {
  int number = 0;  // in the whole plan, from 1
  int window = 0;  // index in the layer
  std::vector<int> openings;
  BoardEdge kept = BoardEdge::top;
  Length distance;  // from the edge at the guide to the line on the back
  int pencil = 0;   // freehand: the line to bring under the rail; 0: the guide is used
  std::optional<GuideSetting> instead;  // freehand: a block outside the guide's bar would do
  CutEnd start, end;
};

// The board as it lies: one edge at the guide.
struct Placement {
  BoardEdge edge = BoardEdge::top;
  int turns = 0;  // clockwise quarter turns from the placement before
  std::vector<BevelCut> cuts;
};

struct SetUp {
  int number = 0;  // in the whole plan, from 1
  Settings settings;
  std::vector<Placement> placements;
};

// Freehand against the rail, with the board askew: cut from `from` toward `to`, so that the kept
// board lies on the side to which the blade's tip points.
struct SkewCut {
  int number = 0;
  std::vector<int> openings;
  Point from, to;
  Length over_cut, past;  // at both ends
};

struct CurveCut {
  CurveKind kind = CurveKind::oval;
  std::vector<int> openings;
  Rect back, face;               // bounding boxes
  std::vector<CurveLine> lines;  // template_cut
  // oval: how far its ellipse lies from the drawn edge at most, on the back. The edges above the
  // lowest are parallels of an ellipse, which are no ellipses themselves.
  Length off;
};

// The panel inside a V-groove, after it was cut out: its face edge is shaved, and it is taped back.
struct GrooveTrim {
  std::vector<int> openings;
  bool rectangle = true;  // false: some of its edges are curved or slanting
  Length width;           // of the groove on the face: how far from the panel's edge to shave
  std::optional<GuideSetting> guide;  // nothing: freehand
};

// From every cut of the layer above to the same cut of this one.
struct LayerShift {
  Length guide;  // opened by so much
  Length stops;  // near stop moved away from the squaring arm, far stop toward it
};

struct Stage {
  StageKind kind = StageKind::layer;
  int layer = 1;
  std::string name, board;
  Length thickness, run;
  bool taped = false;  // behind the layers above, to be cut against the top mat's edges
  Rect blank;
  std::optional<LayerShift> shift;  // where one amount holds for every cut
  bool same_order = false;          // as the layer above
  std::vector<PencilLine> pencil_lines;
  std::vector<SetUp> set_ups;
  std::vector<SkewCut> skew_cuts;
  std::vector<CurveCut> curves;
  std::vector<GrooveTrim> trims;
  std::int64_t seconds = 0, bound = 0;  // for all mats; no order is quicker than the bound
};

// One side of a blank, cut from sheet with the straight blade.
struct StraightCut {
  Length size;          // from the squaring arm's stop to the blade
  Length length;        // of the cut
  bool by_stop = true;  // false: longer than the arm, by a pencil line
  std::vector<int> layers;
};

struct WayTime {
  Way way = Way::pencilled;
  std::int64_t seconds = 0;
};

// What is to be known before a plan is cut. Values: a page or a terminal words them
// (engine/cuts/sheet/cautions.h).
struct UnevenShift {  // the layer is not set off by one amount from the layer above it
  int layer = 0;
};
struct BeyondGuide {  // so many lines lie further in than the guide reaches
  int lines = 0;
  Length reach;
};
struct LongBlank {  // a side of the blank is longer than the cutter's longest cut
  Length side;
};
using PlanNote = std::variant<UnevenShift, BeyondGuide, LongBlank>;

// "cutting-uneven-shift" and the like.
std::string_view code_of(const PlanNote& note);

struct CuttingPlan {
  CutterProfile cutter;
  std::string reference, title;
  int quantity = 1;
  Rect outer;
  Way way = Way::two_stops;
  bool stacked = true;
  std::vector<StraightCut> blanks;
  std::vector<Stage> stages;
  std::vector<WayTime> ways;            // what each possible way would take
  std::int64_t seconds = 0, bound = 0;  // all mats, blanks included
  std::vector<PlanNote> notes;
};

Result<CuttingPlan> plan_cutting(const Mat& mat, const CutterProfile& cutter,
                                 const PlanOptions& options = {});

// Whole minutes of work at the cutter, rounded up, for an estimate.
std::int64_t minutes(const CuttingPlan& plan);

}  // namespace mullion
