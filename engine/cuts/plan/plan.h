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

struct PlanOptions : CutOptions {
  int quantity = 1;
  std::optional<Way> way;  // nothing: what the cutter's user prefers, else what costs least
};

// On the back of the board, across it, parallel to an edge: one stroke, whatever openings it
// serves.
struct PencilLine {
  int number = 0;  // within the stage
  BoardEdge edge = BoardEdge::top;
  Length distance;  // from that edge; where the stage is taped, from that of the top mat
  std::vector<int> openings;
  bool by_guide = false;  // drawn along the rail, at a set-up for marking; else with a rule
};

enum class EndBy { stop, pencil, cut };

// Where the head's mark must stand at one end of a cut: at a line, or past it.
struct CutEnd {
  Length line;      // from the near edge to the window's line
  Length over_cut;  // of the blade, past the line
  Length past;      // of the mark: over-cut less the lead there; below zero: short of the line
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
  CutEnd start, end;                    // in the order of the cut: see Stroke
};

// The board as it lies: one edge at the guide.
struct Placement {
  BoardEdge edge = BoardEdge::top;
  bool laid = false;  // taken up and laid anew, its `edge_away` away from the operator; else turned
  int turns = 0;      // clockwise quarter turns from the placement before; none where it is laid
  std::vector<BevelCut> cuts;
};

// Lines drawn along the rail with the board at the guide.
struct MarkPlacement {
  BoardEdge edge = BoardEdge::top;
  bool laid = false;
  int turns = 0;
  int line = 0;  // number of the pencil line
};
struct MarkSetUp {
  GuideSetting setting;
  std::vector<MarkPlacement> placements;
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
  Length from_over_cut, to_over_cut;
  Length from_past, to_past;  // of the mark, as in CutEnd
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

// A spacer is not seen: four strips around one window, else square cuts by hand at lines.
struct SpacerStrip {
  BoardEdge edge = BoardEdge::top;  // along which it lies
  Length width, length;
};
struct SpacerWindow {
  std::vector<int> openings;
  Rect back;
};

// What a rule must show: after a cut, or where `after_cut` is 0, before the stage's first cut, or
// at the stage's end.
struct Check {
  enum class Kind {
    line,     // on the back, from `edge` to the cut made last: `distance`
    fallout,  // of `openings`: `width` and `height` of its back; its face is larger by twice the
              // run
    opening,  // of `openings`: `width` and `height` as seen from the front, on the back edge
    reveal,   // on a trial corner cut into scrap: `distance` is seen along `edge`
  };
  Kind kind = Kind::line;
  int after_cut = 0;
  std::vector<int> openings;
  bool joined = false;  // opening: one window serves them all; else each has its own
  BoardEdge edge = BoardEdge::top;
  Length distance, width, height;
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
  int passes = 1;                   // of the bevel blade; 2: the first at half the depth
  std::vector<PencilLine> pencil_lines;
  std::vector<MarkSetUp> marking;  // before the first set-up
  std::vector<SetUp> set_ups;
  std::vector<SkewCut> skew_cuts;
  std::vector<CurveCut> curves;
  std::vector<GrooveTrim> trims;
  std::vector<SpacerStrip> strips;
  std::vector<SpacerWindow> squares;
  std::vector<Check> checks;            // in the order of the work
  std::int64_t seconds = 0, bound = 0;  // for all mats; no order is quicker than the bound
  Length error;                         // likely, on lines and ends of one mat together
};

// One side of a blank, cut from sheet with the straight blade.
struct StraightCut {
  bool strip = false;   // off the sheet, across it; else off such a strip
  Length size;          // from the squaring arm's stop to the blade
  Length length;        // of the cut: of a strip's, at least
  bool by_stop = true;  // false: longer than the arm, by a pencil line
  std::vector<int> layers;
};

// What a way of working would take. `error` is the likely one on a line or an end, on average.
struct WayTime {
  Way way = Way::pencilled;
  std::int64_t seconds = 0;
  Length error;
  std::int64_t cost = 0;  // seconds, and the price of the errors
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
struct RoundedSettings {  // to what can be read off a rule, by at most so much
  Unit job;
  Length step, most;
};
struct ReachUnknown {  // a cut lies so far from the squaring arm, farther than the longest cut
  Length farthest;
};
struct DepthUnknown {  // the layer is thicker than any board that the profile has an over-cut for
  int layer = 0;
  Length thickness;
};
struct RailLineUnknown {  // so many lines are brought under the blade's point
  int lines = 0;
};
struct TwoPasses {
  int layer = 0;
};
using PlanNote = std::variant<UnevenShift, BeyondGuide, LongBlank, RoundedSettings, ReachUnknown,
                              DepthUnknown, RailLineUnknown, TwoPasses>;

// "cutting-uneven-shift" and the like.
std::string_view code_of(const PlanNote& note);

struct CuttingPlan {
  CutterProfile cutter;
  Unit job_unit = Unit::inch;
  std::string reference, title;
  int quantity = 1;
  Rect outer;
  Way way = Way::two_stops;
  bool stacked = true;
  std::vector<StraightCut> blanks;
  std::vector<Stage> stages;
  std::vector<WayTime> ways;            // what each possible way would take, the least cost first
  std::int64_t seconds = 0, bound = 0;  // all mats, blanks included
  std::vector<Length> gauges;           // widths of the spacers to cut from scrap, by falling width
  std::vector<PlanNote> notes;
};

// A stage's cuts against the rail, in their order.
std::vector<const BevelCut*> cuts_of(const Stage& stage);

Result<CuttingPlan> plan_cutting(const Mat& mat, const CutterProfile& cutter,
                                 const PlanOptions& options = {});

// Whole minutes of work at the cutter, rounded up, for an estimate.
std::int64_t minutes(const CuttingPlan& plan);

}  // namespace mullion
