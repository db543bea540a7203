#include "render/cutsheet/cutsheet.h"

#include "engine/cuts/sheet/cautions.h"
#include "engine/cuts/sheet/words.h"
#include "render/cutsheet/pages.h"
#include "render/cutsheet/placement_tile.h"
#include "render/cutsheet/settings_tile.h"
#include "render/cutsheet/stage_section.h"
#include "render/paper/document.h"

namespace mullion {
namespace {

using cutsheet::Flow;
using cutsheet::Look;
using cutsheet::Tile;

std::string title_of(const ToldPlan& plan) {
  const Locale& locale = plan.locale;
  const std::string out = plan.reference.empty() ? locale.say("Cutting plan")
                                                 : locale.say("Cutting plan %1", plan.reference);
  return plan.title.empty() ? out : locale.say("%1: %2", out, plan.title);
}

std::string summary_of(const ToldPlan& plan) {
  const Scale& scale = plan.cutter.scale;
  const Locale& locale = plan.locale;
  return locale.say(
      "%1, %2 x %3. %4, cut with %5; %6.",
      plan.quantity == 1 ? locale.say("1 mat") : locale.say("%1 mats alike", plan.quantity),
      locale.described(plan.outer.width(), scale), locale.described(plan.outer.height(), scale),
      plan.cutter.name, locale.say(name_of(plan.way)), duration_text(plan.seconds, locale));
}

class Sheet {
 public:
  Sheet(const ToldPlan& plan, Flow& flow, const Look& look)
      : plan_(plan), flow_(flow), look_(look) {}

  void write() {
    cutsheet::add_head(flow_, title_of(plan_), summary_of(plan_), cautions(plan_), plan_.locale,
                       look_);
    std::vector<std::string> blanks;
    for (const StraightCut& side : plan_.blanks) {
      blanks.push_back(blank_text(plan_, side) + (plan_.quantity > 1 ? ", " + each() : ""));
    }
    cutsheet::add_blanks(flow_, blanks, plan_.locale, look_);
    for (const Stage& stage : plan_.stages) add_stage(stage);
  }

 private:
  std::string each() const { return plan_.locale.say("%1 of each", plan_.quantity); }

  void add_stage(const Stage& stage) {
    const cutsheet::BoardPicture board = cutsheet::board_picture(plan_, stage, look_.small());
    flow_.gap(4);
    flow_.bar(stage_text(plan_, stage), look_, look_.diagram());
    cutsheet::add_before(flow_, board, look_);
    const double width = tile_width(flow_, look_);
    std::vector<Tile> tiles;
    for (const SetUp& set_up : stage.set_ups) add_set_up(board, set_up, width, tiles);
    add_tiles(flow_, tiles, look_);
    add_after(flow_, board, look_);
  }

  void add_set_up(const cutsheet::BoardPicture& board, const SetUp& set_up, double width,
                  std::vector<Tile>& tiles) {
    cutsheet::SettingsBox box = cutsheet::settings_box(plan_, set_up.settings, shown_);
    box.title = plan_.locale.say("Set-up %1", set_up.number);
    if (plan_.quantity > 1) {
      box.tallies = {{plan_.locale.say("tally of %1", plan_.quantity), plan_.quantity}};
    }
    shown_ = shown_after(shown_, set_up.settings);
    std::vector<Tile> placements = placement_tiles(board, set_up, look_, width);
    const bool little = box.dials.size() == 1 && box.tallies.empty();
    if (little) {
      placements[0] = under_settings(box, placements[0], look_, width);
    } else {
      tiles.push_back(settings_tile(box, look_, width));
    }
    for (Tile& tile : placements) tiles.push_back(std::move(tile));
  }

  const ToldPlan& plan_;
  Flow& flow_;
  const Look& look_;
  Settings shown_;
};

}  // namespace

std::string render_cutsheet(const CuttingPlan& planned, const std::string& date,
                            const Locale& locale) {
  const ToldPlan plan{planned, locale};
  return cutsheet::set_on_pages(
      paper::usual_page(plan.cutter.scale.unit, locale), title_of(plan), date, locale,
      [&](Flow& flow, const Look& look) { Sheet(plan, flow, look).write(); });
}

}  // namespace mullion
