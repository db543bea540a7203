#include "render/cutsheet/cutsheet.h"

#include "engine/cuts/sheet/cautions.h"
#include "engine/cuts/sheet/words.h"
#include "render/cutsheet/headings.h"
#include "render/cutsheet/pages.h"
#include "render/cutsheet/placement_tile.h"
#include "render/cutsheet/placement_words.h"
#include "render/cutsheet/settings_tile.h"
#include "render/cutsheet/stage_section.h"
#include "render/paper/document.h"

namespace mullion {
namespace {

using cutsheet::Flow;
using cutsheet::Look;
using cutsheet::Tile;

class Sheet {
 public:
  Sheet(const ToldPlan& plan, Flow& flow, const Look& look)
      : plan_(plan), flow_(flow), look_(look) {}

  void write() {
    cutsheet::add_head(flow_, cutsheet::title_of(plan_), cutsheet::summary_of(plan_),
                       how_boards_lie(plan_.cutter, plan_.locale), cautions(plan_), look_);
    std::vector<std::string> blanks = blank_pair_texts(plan_);
    for (std::string& blank : blanks) blank += plan_.quantity > 1 ? ", " + each() : "";
    if (std::string gauges = gauges_text(plan_); !gauges.empty()) blanks.push_back(gauges);
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
    if (look_.dense && look_.again == 0 && stage.shift) {
      add_steps(flow_, listed(board), {.size = look_.text()});
      add_after(flow_, board, look_);
      return;
    }
    const double width = tile_width(flow_, look_);
    std::vector<Tile> tiles;
    for (const SetUp& set_up : stage.set_ups) add_set_up(board, set_up, width, tiles);
    add_tiles(flow_, tiles, look_);
    add_after(flow_, board, look_);
  }

  // A layer that is cut like the one above, in words: what is set, how the board lies, the cut.
  std::vector<std::string> listed(const cutsheet::BoardPicture& board) {
    std::vector<std::string> out;
    for (const SetUp& set_up : board.stage.set_ups) {
      std::string settings = plan_.locale.say("Set-up %1", set_up.number);
      const std::string changes = cutsheet::changed_settings(plan_, set_up.settings, shown_);
      if (!changes.empty()) settings += ": " + changes;
      shown_ = set_up.settings;
      for (const Placement& placement : set_up.placements) {
        std::string lies = cutsheet::lying_words(plan_, placement);
        for (const BevelCut& cut : placement.cuts) {
          std::string text;
          for (std::string* part : {&settings, &lies}) {
            if (!part->empty()) text += *part + "; ";
            part->clear();
          }
          out.push_back(text + cutsheet::cut_words(board, placement, cut));
        }
      }
    }
    return out;
  }

  void add_set_up(const cutsheet::BoardPicture& board, const SetUp& set_up, double width,
                  std::vector<Tile>& tiles) {
    cutsheet::SettingsBox box = cutsheet::settings_box(plan_, set_up.settings, shown_);
    box.title = plan_.locale.say("Set-up %1", set_up.number);
    if (plan_.quantity > 1) {
      box.tallies = {{plan_.locale.say("tally of %1", plan_.quantity), plan_.quantity}};
    }
    shown_ = set_up.settings;
    std::vector<Tile> placements = placement_tiles(board, set_up, look_, width);
    const bool little = look_.dense || (box.dials.size() == 1 && box.tallies.empty());
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

std::string render_marking_sheet(const CuttingPlan& planned, const std::string& date,
                                 const Locale& locale) {
  const ToldPlan plan{planned, locale};
  const std::string title = locale.say("Lines to draw: %1", cutsheet::title_of(plan));
  const auto write = [&](Flow& flow, const Look& look) {
    flow.text(title, {.size = look.title(), .bold = true});
    flow.text(locale.say("Letter the backs' edges clockwise: A top, B, C, D."),
              {.size = look.text()});
    for (const Stage& stage : plan.stages) {
      flow.gap(4);
      flow.bar(stage_text(plan, stage), look, look.diagram());
      cutsheet::add_marks(flow, cutsheet::board_picture(plan, stage, look.small()), look);
    }
  };
  return cutsheet::set_on_pages(paper::usual_page(plan.cutter.scale.unit, locale), title, date,
                                locale, write);
}

std::string render_cutsheet(const CuttingPlan& planned, const std::string& date,
                            const Locale& locale) {
  const ToldPlan plan{planned, locale};
  return cutsheet::set_on_pages(
      paper::usual_page(plan.cutter.scale.unit, locale), cutsheet::title_of(plan), date, locale,
      [&](Flow& flow, const Look& look) { Sheet(plan, flow, look).write(); });
}

}  // namespace mullion
