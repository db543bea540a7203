#include "engine/cutting/sheet/words.h"

#include "engine/cutting/sheet/scale_text.h"

namespace mullion {
namespace {

std::string length(const CuttingPlan& plan, Length value) {
  return scale_text(value, Length(), plan.cutter.scale).all();
}

std::string end_text(const CuttingPlan& plan, const CutEnd& end, const char* stop) {
  if (end.by == EndBy::stop) return std::string("at the ") + stop + " stop";
  std::string out = end.by == EndBy::cut ? "by eye at cut " : "by eye at pencil line ";
  out += std::to_string(end.reference);
  if (end.past == Length()) return out;
  return out + " (mark " + amount_text(end.past, plan.cutter.scale) +
         (end.past > Length() ? " past it)" : " short of it)");
}

std::string point_text(const CuttingPlan& plan, const Point& p) {
  return length(plan, p.y) + " from edge A and " + length(plan, p.x) + " from edge B";
}

}  // namespace

std::string edge_text(BoardEdge edge) {
  return std::string(1, letter(edge)) + " (" + front_name(edge) + " as seen from the front)";
}

std::string turn_text(int quarter_turns) {
  constexpr const char* turns[] = {"as it lies", "quarter turn to the right", "half turn",
                                   "quarter turn to the left"};
  return turns[quarter_turns % 4];
}

std::string block_text(const CuttingPlan& plan, const Block& block) {
  return "block " + length(plan, block.width) + " wide " +
         (block.outside ? "outside the guide" : "between guide and board");
}

std::string guide_text(const CuttingPlan& plan, const Settings& settings) {
  if (!settings.guide) return "freehand";
  return scale_text(*settings.guide, plan.cutter.guide->zero, plan.cutter.scale).all();
}

std::string near_stop_text(const CuttingPlan& plan, const Settings& settings) {
  if (!settings.near_stop) return "by eye";
  return scale_text(*settings.near_stop, plan.cutter.near_stop->zero, plan.cutter.scale).all();
}

std::string far_stop_text(const CuttingPlan& plan, const Settings& settings) {
  if (!settings.far_stop) return "by eye";
  return scale_text(*settings.far_stop, plan.cutter.far_stop->zero, plan.cutter.scale).all();
}

std::string openings_text(const std::vector<int>& openings) {
  if (openings.empty()) return "all openings";
  std::string out = openings.size() == 1 ? "opening " : "openings ";
  for (std::size_t i = 0; i < openings.size(); ++i) {
    out += (i > 0 ? ", " : "") + std::to_string(openings[i]);
  }
  return out;
}

std::string line_text(const BevelCut& cut) {
  return openings_text(cut.openings) + ", " + front_name(cut.kept) + " line";
}

std::string ends_text(const CuttingPlan& plan, const BevelCut& cut) {
  return "start " + end_text(plan, cut.start, "far") + ", end " + end_text(plan, cut.end, "near");
}

std::string freehand_text(const CuttingPlan& plan, const BevelCut& cut) {
  if (cut.pencil == 0) return "";
  std::string out = "freehand: bring pencil line " + std::to_string(cut.pencil) + ", " +
                    length(plan, cut.distance) + " from the edge, under the rail";
  if (cut.instead) {
    Settings settings;
    settings.guide = cut.instead->guide;
    out += "; or, where a board can lie over your guide's bar: guide " +
           guide_text(plan, settings) + ", " + block_text(plan, *cut.instead->block);
  }
  return out;
}

std::string pencil_text(const CuttingPlan& plan, const PencilLine& line) {
  return "line " + std::to_string(line.number) + ": " + length(plan, line.distance) +
         " from edge " + std::string(1, letter(line.edge)) + ", at " + openings_text(line.openings);
}

std::string skew_text(const CuttingPlan& plan, const SkewCut& cut) {
  return openings_text(cut.openings) + ", freehand on a pencil line from " +
         point_text(plan, cut.from) + " to " + point_text(plan, cut.to) + ", mark " +
         amount_text(cut.past, plan.cutter.scale) +
         (cut.past < Length() ? " short of both points" : " past both points");
}

std::string curve_text(const CuttingPlan& plan, const CurveCut& curve) {
  const Rect& b = curve.back;
  const Point centre{half_rounded_down(b.left + b.right), half_rounded_down(b.top + b.bottom)};
  const auto axes = [&](const Rect& box) {
    return length(plan, box.width()) + " x " + length(plan, box.height());
  };
  if (curve.kind == CurveKind::template_cut) {
    return openings_text(curve.openings) +
           ": the curves by hand along the full-scale template, after the straight lines";
  }
  return openings_text(curve.openings) + ": oval cutter, axes " + axes(curve.back) +
         " on the back and " + axes(curve.face) + " on the face (half-axes " +
         length(plan, half_rounded_down(b.width())) + " and " +
         length(plan, half_rounded_down(b.height())) + " on the back); centre " +
         point_text(plan, centre);
}

std::string trim_text(const CuttingPlan& plan, const GrooveTrim& trim) {
  std::string out = "the panel of " + openings_text(trim.openings) +
                    " face up: shave all four edges by " + length(plan, trim.width);
  if (trim.guide) {
    Settings settings;
    settings.guide = trim.guide->guide;
    out += ", guide " + guide_text(plan, settings);
    if (trim.guide->block) out += ", " + block_text(plan, *trim.guide->block);
  } else {
    out += ", freehand on a pencil line";
  }
  return out + "; then tape it back from behind";
}

std::string blank_text(const CuttingPlan& plan, const StraightCut& side) {
  const Length set = side.size + half_rounded_down(plan.cutter.kerf);
  std::string out =
      side.by_stop ? "arm stop " + scale_text(set, plan.cutter.arm_zero, plan.cutter.scale).all()
                   : "pencil line at " + length(plan, side.size) + " (beyond the arm)";
  out += ": cut " + length(plan, side.length) + " long, for layer";
  out += side.layers.size() > 1 ? "s" : "";
  for (std::size_t i = 0; i < side.layers.size(); ++i) {
    out += (i > 0 ? ", " : " ") + std::to_string(side.layers[i]);
  }
  return out;
}

std::string stage_text(const CuttingPlan& plan, const Stage& stage) {
  std::string out = stage.kind == StageKind::groove
                        ? "V-grooves"
                        : "Layer " + std::to_string(stage.layer) + ": " + stage.name;
  if (stage.kind == StageKind::layer && !stage.board.empty()) out += ", " + stage.board;
  return out + ", blank " + length(plan, stage.blank.width()) + " x " +
         length(plan, stage.blank.height());
}

std::string shift_text(const CuttingPlan& plan, const Stage& stage) {
  if (!stage.shift) return "";
  const LayerShift& s = *stage.shift;
  const auto amount = [&](Length value) { return amount_text(value, plan.cutter.scale); };
  std::string out = s.guide < Length() ? "guide closed by " : "guide opened by ";
  out += amount(s.guide);
  if (plan.way == Way::pencilled) return out;
  const bool in = s.stops >= Length();
  out += ", near stop " + amount(s.stops) + (in ? " away from" : " toward") +
         " the arm, far stop " + amount(s.stops) + (in ? " toward it" : " away from it");
  return out;
}

std::string prepare_text(const CuttingPlan& plan, const Stage& stage) {
  if (stage.kind == StageKind::groove) {
    return "Cut the panels out as windows, shave their edges, tape them back; then cut the "
           "openings.";
  }
  if (stage.layer == 1) return "";
  if (!stage.taped) {
    return "Cut by itself, from a blank of the same size; keep edge A the top edge.";
  }
  return "Put all fallouts back. Tape this blank on behind, face down, centred: " +
         length(plan, stage.blank.left) +
         " of the top mat shows all around. The top mat's edges stay at guide and arm.";
}

std::string duration_text(std::int64_t seconds) {
  const std::int64_t minutes = (seconds + 59) / 60;
  if (minutes < 60) return std::to_string(minutes) + " min";
  return std::to_string(minutes / 60) + " h " + std::to_string(minutes % 60) + " min";
}

}  // namespace mullion
