#include "engine/cuts/sheet/plan_lines.h"

#include <algorithm>

#include "engine/cuts/sheet/words.h"

namespace mullion {
namespace {

constexpr std::size_t columns = 100;

void write_cut(TextLines& out, const ToldPlan& plan, const Stage& stage, const BevelCut& cut) {
  std::string text = line_text(cut) + ": " + ends_text(plan, cut);
  if (const std::string freehand = freehand_text(plan, stage, cut); !freehand.empty()) {
    text += "; " + freehand;
  }
  out.wrapped("    [ ] cut " + std::to_string(cut.number) + "  ", text);
  for (const std::string& check : checks_at(plan, stage, cut.number)) {
    out.wrapped("        = ", check);
  }
}

}  // namespace

void TextLines::wrapped(const std::string& lead, const std::string& text) {
  const std::string blank(lead.size(), ' ');
  std::string row = lead;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find(' ', at), text.size());
    const std::string word = text.substr(at, end - at);
    if (row.size() > lead.size() && row.size() + 1 + word.size() > columns) {
      line(row);
      row = blank;
    }
    row += (row.size() > lead.size() ? " " : "") + word;
    at = end + 1;
  }
  line(row);
}

void write_before(TextLines& out, const ToldPlan& plan, const Stage& stage) {
  if (const std::string prepare = prepare_text(plan, stage); !prepare.empty()) {
    out.wrapped("  ", prepare);
  }
  if (const std::string shift = shift_text(plan, stage); !shift.empty()) {
    out.wrapped("  >>> ", "SAME EDGES, SAME ORDER, EVERY SETTING BY ONE AMOUNT: " + shift);
  }
  for (const std::string& check : checks_at(plan, stage, 0)) out.wrapped("  = ", check);
  const char* lead = plan.way == Way::template_taped ? "  printed " : "  draw ";
  if (plan.way == Way::template_taped && !stage.pencil_lines.empty()) {
    out.wrapped("  ",
                "Tape the printed template of this layer on: its lines are those numbered here.");
  }
  for (const Marking& marking : markings_of(stage)) {
    out.wrapped(lead, marking_text(plan, stage, marking));
  }
  for (const std::string& text : guide_marking_texts(plan, stage)) out.wrapped("  [ ] ", text);
  if (const std::string blocks = outside_blocks_text(plan, stage); !blocks.empty()) {
    out.wrapped("  or ", blocks);
  }
}

void write_placements(TextLines& out, const ToldPlan& plan, const Stage& stage,
                      const SetUp& set_up) {
  const char* at_side = set_up.settings.guide                 ? " at the guide, "
                        : plan.cutter.side == GuideSide::left ? " on the left, "
                                                              : " on the right, ";
  for (const Placement& placement : set_up.placements) {
    out.wrapped("    ", "edge " + edge_text(placement.edge) + at_side +
                            std::string(1, letter(near_edge(placement.edge, plan.cutter.side))) +
                            " at the arm; " +
                            lay_text(plan, placement.edge, placement.laid, placement.turns));
    for (const BevelCut& cut : placement.cuts) write_cut(out, plan, stage, cut);
  }
}

void write_after(TextLines& out, const ToldPlan& plan, const Stage& stage) {
  for (const SkewCut& cut : stage.skew_cuts) {
    out.wrapped("  [ ] cut " + std::to_string(cut.number) + "  ", skew_text(plan, stage, cut));
  }
  for (const std::string& curve : curve_texts(plan, stage)) out.wrapped("  [ ] ", curve);
  for (const GrooveTrim& trim : stage.trims) out.wrapped("  [ ] ", trim_text(plan, trim));
  for (const std::string& text : spacer_texts(plan, stage)) out.wrapped("  [ ] ", text);
  for (const std::string& check : checks_at(plan, stage, -1)) out.wrapped("  = ", check);
}

void write_cautions(TextLines& out, const std::vector<std::string>& cautions) {
  for (const std::string& caution : cautions) out.wrapped("  ! ", caution);
}

}  // namespace mullion
