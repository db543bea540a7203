#include "engine/cuts/cutter/profile_file.h"
#include "engine/xml/words.h"
#include "engine/xml/write_element.h"

namespace mullion {
namespace {

void write_stop(ElementWriter out, const char* end, const StopScale& stop) {
  out.attribute("end", end);
  out.length("least", stop.least);
  out.length("most", stop.most);
  out.length_unless("zero", stop.zero, Length());
}

void write_times(ElementWriter out, const HandlingTimes& t) {
  out.integer("guide-move", t.guide_move);
  out.integer("stop-move", t.stop_move);
  out.integer("quarter-turn", t.quarter_turn);
  out.integer("rechuck", t.rechuck);
  out.integer("pencil-line", t.pencil_line);
  out.integer("by-eye", t.by_eye);
  out.integer("freehand-line", t.freehand_line);
  out.integer("bevel-cut", t.bevel_cut);
  out.integer("straight-cut", t.straight_cut);
  out.integer("curve", t.curve);
  out.integer("tape-layer", t.tape_layer);
  out.integer("arm-stop-move", t.arm_stop_move);
  out.integer("guide-stroke", t.guide_stroke);
  out.integer("gauge-piece", t.gauge_piece);
  out.integer("gauge-change", t.gauge_change);
  out.integer("tape-template", t.tape_template);
}

void write_precision(ElementWriter out, const LikelyErrors& e, int price) {
  out.length("guide", e.guide);
  out.length("stop", e.stop);
  out.length("gauge", e.gauge);
  out.length("rule-line", e.rule_line);
  out.length("guide-line", e.guide_line);
  out.length("printed-line", e.printed_line);
  out.length("by-eye", e.by_eye);
  out.length("under-rail", e.under_rail);
  out.integer("seconds-per-mm", price);
}

void write_if_any(ElementWriter& out, const char* name, const std::optional<Length>& length) {
  if (length) out.length(name, *length);
}

void write_guide(ElementWriter out, const GuideScale& guide) {
  out.length("least", guide.least);
  out.length("most", guide.most);
  out.length_unless("zero", guide.zero, Length());
  out.yes("board-over-bar", guide.board_over_bar);
}

void write_blade(ElementWriter out, const CutterProfile& cutter) {
  out.attribute("guide-side", cutter.side == GuideSide::left ? "left" : "right");
  out.attribute("tip", cutter.lean == BladeLean::to_guide ? "to-guide" : "from-guide");
  if (cutter.stroke == Stroke::push) out.attribute("stroke", "push");
  out.length_unless("mark-lead", cutter.mark_lead, Length());
  write_if_any(out, "start-lead", cutter.own_start_lead);
  out.length_unless("start-extra", cutter.start_extra, Length());
  write_if_any(out, "line-from-rail", cutter.line_from_rail);
  write_if_any(out, "deepest-cut", cutter.deepest_cut);
  write_if_any(out, "deepest-in-two", cutter.deepest_in_two);
  out.length_unless("straight-kerf", cutter.kerf, Length());
}

}  // namespace

std::string write_cutter(const CutterProfile& cutter) {
  FileWriter file("cutter", cutter.scale.unit);
  ElementWriter& out = file.root();
  out.attribute("version", "1");
  out.attribute("id", cutter.id);
  out.attribute("name", cutter.name);
  out.attribute("unit", word_for(cutter.scale.unit));
  out.length("division", cutter.scale.increment);
  ElementWriter rail = out.child("rail");
  rail.length("longest-cut", cutter.longest_cut);
  rail.length("widest-board", cutter.widest_board);
  write_if_any(rail, "reach", cutter.reach);
  write_if_any(rail, "thickest-board", cutter.thickest_board);
  write_blade(out.child("blade"), cutter);
  if (cutter.guide) write_guide(out.child("guide"), *cutter.guide);
  ElementWriter arm = out.child("arm");
  arm.length("length", cutter.arm_length);
  arm.length_unless("zero", cutter.arm_zero, Length());
  if (cutter.near_stop) write_stop(out.child("stop"), "near", *cutter.near_stop);
  if (cutter.far_stop) write_stop(out.child("stop"), "far", *cutter.far_stop);
  for (const OverCut& entry : cutter.over_cuts) {
    ElementWriter over_cut = out.child("over-cut");
    over_cut.measured("thickness", entry.thickness);
    over_cut.length("distance", entry.distance);
  }
  if (cutter.times != HandlingTimes{}) write_times(out.child("times"), cutter.times);
  const CutterProfile usual;
  if (cutter.errors != usual.errors || cutter.error_price != usual.error_price) {
    write_precision(out.child("precision"), cutter.errors, cutter.error_price);
  }
  if (!cutter.farther_first || cutter.prefers) {
    ElementWriter order = out.child("order");
    if (cutter.prefers) order.attribute("prefers", word_of(*cutter.prefers));
    if (!cutter.farther_first) order.attribute("farther-first", "no");
  }
  return file.text();
}

}  // namespace mullion
