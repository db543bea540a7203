#include "render/cutsheet/placement_words.h"

#include "engine/cuts/sheet/scale_text.h"
#include "engine/cuts/sheet/words.h"

namespace mullion::cutsheet {

std::string lying_heading(const ToldPlan& plan, const Placement& placement) {
  const bool freehand = placement.cuts.front().pencil > 0;
  return plan.locale.say(freehand ? mark("Edge %1, freehand") : mark("Edge %1 at the guide"),
                         std::string(1, letter(placement.edge)));
}

std::string turn_words(const ToldPlan& plan, const Placement& placement) {
  const Locale& locale = plan.locale;
  const std::string turn = lay_text(plan, placement.edge, placement.laid, placement.turns);
  if (plan.quantity == 1) return turn;
  return locale.say(placement.laid ? mark("every blank: %1") : mark("then %1"), turn);
}

std::string line_name(const BevelCut& cut, const Locale& locale) {
  return openings_text(cut.openings, locale) + ", " + locale.say(front_name(cut.kept));
}

std::string name_of_cut(const BoardPicture& board, const BevelCut& cut) {
  const Locale& locale = board.plan.locale;
  return std::to_string(cut.number) + "  " +
         (board.openings.empty() ? locale.say(front_name(cut.kept)) : line_name(cut, locale));
}

std::string where_words(const BoardPicture& board, const Placement& placement,
                        const BevelCut& cut) {
  const ToldPlan& plan = board.plan;
  std::string more;
  if (cut.pencil > 0) {
    more = plan.locale.say("%1 from %2", rule_text(cut.distance, plan.cutter.scale, plan.locale),
                           std::string(1, letter(placement.edge)));
  }
  const std::string ends = brief_ends_text(plan, board.stage, cut);
  if (!ends.empty()) more += (more.empty() ? "" : ", ") + ends;
  return more;
}

std::string lying_words(const ToldPlan& plan, const Placement& placement) {
  return lying_heading(plan, placement) + ", " + turn_words(plan, placement);
}

std::string cut_words(const BoardPicture& board, const Placement& placement, const BevelCut& cut) {
  std::string out = name_of_cut(board, cut);
  const std::string more = where_words(board, placement, cut);
  if (!more.empty()) out += ", " + more;
  for (const std::string& check : checks_at(board.plan, board.stage, cut.number)) {
    out += "; " + check;
  }
  return out;
}

}  // namespace mullion::cutsheet
