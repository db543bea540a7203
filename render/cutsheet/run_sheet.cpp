#include <deque>

#include "engine/cuts/sheet/run_text.h"
#include "engine/cuts/sheet/words.h"
#include "render/cutsheet/cutsheet.h"
#include "render/cutsheet/headings.h"
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

class RunSheet {
 public:
  RunSheet(const CuttingRun& run, const Locale& locale, Flow& flow, const Look& look)
      : run_(run), locale_(locale), flow_(flow), look_(look) {
    for (const RunKind& kind : run.kinds) plans_.push_back({kind.plan, locale});
  }

  void write() {
    cutsheet::add_head(flow_, cutsheet::title_of(run_, locale_),
                       cutsheet::summary_of(run_, locale_), how_boards_lie(run_.cutter, locale_),
                       cautions(run_, locale_), look_);
    add_kinds();
    std::vector<std::string> blanks;
    for (const RunBlank& blank : run_.blanks) blanks.push_back(blank_text(run_, blank, locale_));
    if (!blanks.empty()) cutsheet::add_blanks(flow_, blanks, locale_, look_);
    flow_.gap(6);
    for (const RunStep& step : run_.steps) add_step(step);
    flush();
  }

 private:
  const ToldPlan& plan_of(const RunWork& work) const {
    return plans_[static_cast<std::size_t>(work.kind)];
  }

  void add_kinds() {
    flow_.bar(locale_.say("Kinds"), look_, look_.text() * 2);
    for (const RunKind& kind : run_.kinds) {
      flow_.text(cutsheet::kind_line(run_, kind, locale_), {.size = look_.text()});
    }
    flow_.gap(4);
  }

  void add_step(const RunStep& step) {
    for (const RunWork& work : step.work) add_work(step, work);
    shown_ = step.settings;
  }

  void add_work(const RunStep& step, const RunWork& work) {
    const RunKind& kind = kind_of(run_, work);
    const ToldPlan& plan = plan_of(work);
    const Stage& stage = stage_of(run_, work);
    pictures_.push_back(cutsheet::board_picture(plan, stage, look_.small()));
    const cutsheet::BoardPicture& board = pictures_.back();
    if (begins_stage(work) && needs_preparation(plan, stage)) {
      flush();
      flow_.bar(locale_.say("Kind %1: %2", kind.number, stage_text(plan, stage)), look_,
                look_.diagram());
      cutsheet::add_before(flow_, board, look_);
    }
    if (work.set_up >= 0) add_set_up(step, work, board);
    if (!ends_stage(run_, work)) return;
    if (stage.skew_cuts.empty() && stage.curves.empty() && stage.trims.empty()) return;
    flush();
    cutsheet::add_after(flow_, board, look_);
  }

  static bool needs_preparation(const ToldPlan& plan, const Stage& stage) {
    return !prepare_text(plan, stage).empty() || !stage.pencil_lines.empty() ||
           stage.set_ups.empty();
  }

  void add_set_up(const RunStep& step, const RunWork& work, const cutsheet::BoardPicture& board) {
    const RunKind& kind = kind_of(run_, work);
    const bool goes_on = &work != &step.work.front();
    cutsheet::SettingsBox box =
        cutsheet::settings_box(plan_of(work), step.settings, goes_on ? step.settings : shown_);
    box.title = locale_.say(goes_on ? mark("Step %1, goes on") : mark("Step %1"), step.number);
    if (goes_on) box.dials.clear();
    box.notes = {
        locale_.say("Kind %1, %2", kind.number, stage_brief_text(stage_of(run_, work), locale_))};
    for (const RunShare& share : kind.shares) {
      box.tallies.push_back({locale_.say("%1: %2", share.order, share.quantity), share.quantity});
    }
    tiles_.push_back(settings_tile(box, look_, width()));
    set_ups_.push_back(laid_anew(stage_of(run_, work), work));
    const SetUp& set_up = set_ups_.back();
    for (Tile& tile : placement_tiles(board, set_up, look_, width())) {
      tiles_.push_back(std::move(tile));
    }
  }

  double width() const { return tile_width(flow_, look_); }

  void flush() {
    add_tiles(flow_, tiles_, look_);
    tiles_.clear();
  }

  const CuttingRun& run_;
  const Locale& locale_;
  Flow& flow_;
  const Look& look_;
  Settings shown_;
  std::vector<ToldPlan> plans_;                  // of the kinds
  std::vector<Tile> tiles_;                      // not yet on the page
  std::deque<SetUp> set_ups_;                    // as shown, likewise
  std::deque<cutsheet::BoardPicture> pictures_;  // of all set-ups: tiles refer to them
};

std::string title_of_work(const std::vector<WorkPart>& work, const Locale& locale) {
  if (work.size() == 1) return cutsheet::title_of(work.front().run, locale);
  int mats = 0;
  for (const WorkPart& part : work) mats += mats_in(part.run);
  return locale.say("Order of work: %1 in %2", locale.plural(mats, "%1 mat", "%1 mats"),
                    locale.plural(work.size(), "%1 part", "%1 parts"));
}

void add_set_aside(Flow& flow, const WorkPart& part, const Locale& locale, const Look& look) {
  if (part.set_aside.empty()) return;
  flow.gap(6);
  flow.bar(locale.say("Set aside when these mats are finished; until then the fallouts stay in"),
           look, look.text() * 2);
  std::vector<std::string> texts;
  for (const SetAside& fallout : part.set_aside) texts.push_back(set_aside_text(fallout, locale));
  cutsheet::add_list(flow, texts, {.size = look.text()});
}

void write_parts(Flow& flow, const std::vector<WorkPart>& work, const Locale& locale,
                 const Look& look) {
  for (std::size_t i = 0; i < work.size(); ++i) {
    const WorkPart& part = work[i];
    if (i > 0) flow.gap(12);
    if (work.size() > 1) {
      flow.bar(locale.say("Part %1 of %2", i + 1, work.size()), look, look.diagram());
    }
    cutsheet::add_list(flow, {sheets_text(part, locale)}, {.size = look.text()});
    flow.gap(4);
    if (!part.run.kinds.empty()) RunSheet(part.run, locale, flow, look).write();
    add_set_aside(flow, part, locale, look);
  }
}

}  // namespace

std::string render_work_sheet(const std::vector<WorkPart>& work, const Scale& scale,
                              const std::string& date, const Locale& locale) {
  return cutsheet::set_on_pages(
      paper::usual_page(scale.unit, locale), title_of_work(work, locale), date, locale,
      [&](Flow& flow, const Look& look) { write_parts(flow, work, locale, look); });
}

std::string render_run_sheet(const CuttingRun& run, const std::string& date, const Locale& locale) {
  return cutsheet::set_on_pages(
      paper::usual_page(run.cutter.scale.unit, locale), cutsheet::title_of(run, locale), date,
      locale, [&](Flow& flow, const Look& look) { RunSheet(run, locale, flow, look).write(); });
}

}  // namespace mullion
