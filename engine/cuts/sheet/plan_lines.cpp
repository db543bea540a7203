#include "engine/cuts/sheet/plan_lines.h"

#include <algorithm>

#include "engine/cuts/sheet/words.h"

namespace mullion {
namespace {

constexpr std::size_t columns = 100;

void write_cut(TextLines& out, const ToldPlan& plan, const BevelCut& cut) {
  std::string text = line_text(cut) + ": " + ends_text(plan, cut);
  if (const std::string freehand = freehand_text(plan, cut); !freehand.empty()) {
    text += "; " + freehand;
  }
  out.wrapped("    [ ] cut " + std::to_string(cut.number) + "  ", text);
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
  for (const Marking& marking : markings_of(stage)) {
    out.wrapped("  draw ", marking_text(plan, marking));
  }
  if (const std::string blocks = outside_blocks_text(plan, stage); !blocks.empty()) {
    out.wrapped("  or ", blocks);
  }
}

void write_placements(TextLines& out, const ToldPlan& plan, const SetUp& set_up) {
  for (const Placement& placement : set_up.placements) {
    out.line("    edge " + edge_text(placement.edge) + " at the guide, " +
             std::string(1, letter(near_edge(placement.edge, plan.cutter.side))) + " at the arm; " +
             turn_text(placement.turns));
    for (const BevelCut& cut : placement.cuts) write_cut(out, plan, cut);
  }
}

void write_after(TextLines& out, const ToldPlan& plan, const Stage& stage) {
  for (const SkewCut& cut : stage.skew_cuts) {
    out.wrapped("  [ ] cut " + std::to_string(cut.number) + "  ", skew_text(plan, cut));
  }
  for (const std::string& curve : curve_texts(plan, stage)) out.wrapped("  [ ] ", curve);
  for (const GrooveTrim& trim : stage.trims) out.wrapped("  [ ] ", trim_text(plan, trim));
}

void write_cautions(TextLines& out, const std::vector<std::string>& cautions) {
  for (const std::string& caution : cautions) out.wrapped("  ! ", caution);
}

}  // namespace mullion
