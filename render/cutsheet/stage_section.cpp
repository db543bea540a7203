#include "render/cutsheet/stage_section.h"

#include <map>

#include "engine/cuts/sheet/scale_text.h"
#include "engine/cuts/sheet/words.h"
#include "render/cutsheet/headings.h"
#include "render/cutsheet/tiles.h"

namespace mullion::cutsheet {
namespace {

using paper::Drawing;
using paper::Spot;
using paper::TextStyle;

constexpr Colour amount_colour{0xff, 0xf0, 0xb0};

void add_amount(Flow& flow, const std::string& shift, const Locale& locale, const Look& look) {
  if (shift.empty()) return;
  const TextStyle large{.size = 15 * look.size, .bold = true};
  const std::vector<std::string> lines = paper::lines_of(shift, flow.width() - 16, large);
  const double line = large.size * line_spacing;
  const double top = look.text() * 1.35;
  flow.block(line * static_cast<double>(lines.size()) + top + 10, [&](Drawing& page, Spot at) {
    page.fill(paper::rectangle(
                  {at.x, at.y, flow.width(), line * static_cast<double>(lines.size()) + top + 5}),
              {amount_colour});
    page.text(locale.say(one_amount), {at.x + 8, at.y + top}, {.size = look.text()});
    double y = at.y + top;
    for (const std::string& words : lines) {
      y += line;
      page.text(words, {at.x + 8, y - large.size * 0.1}, large);
    }
  });
}

// One text an edge: "From A: 2 7/8 in at 1, 3, 6; 9 7/8 in at 4".
std::vector<std::string> lines_by_edge(const ToldPlan& plan, const BoardPicture& board) {
  std::map<BoardEdge, std::string> texts;
  for (const Marking& marking : markings_of(board.stage)) {
    std::string& text = texts[marking.edge];
    const std::string distance = rule_text(marking.distance, plan.cutter.scale, plan.locale);
    const std::string line = board.openings.empty()
                                 ? distance
                                 : plan.locale.say_in("openings", "%1 at %2", distance,
                                                      openings_text(marking.openings, plan.locale));
    text = text.empty() ? plan.locale.say("From edge %1: %2",
                                          edge_name(board.stage, marking.edge, plan.locale), line)
                        : text + "; " + line;
  }
  std::vector<std::string> out;
  for (const auto& [edge, text] : texts) out.push_back(text);
  return out;
}

using DrawBack = void (*)(Drawing&, const BoardPicture&, const paper::Box&);

// The back of the board, and beside it what is to be done to it.
class Pictured {
 public:
  Pictured(Flow& flow, const BoardPicture& board, const Look& look, DrawBack draw,
           std::string heading)
      : flow_(flow), board_(board), look_(look), draw_(draw), heading_(std::move(heading)) {}

  // Over several pictures where there is more than would stand beside one of half a page.
  void add(const std::vector<std::string>& tasks) {
    for (const std::string& task : tasks) {
      std::vector<std::string> lines =
          paper::lines_of(task, flow_.width() - left() - indent(), style());
      if (!tasks_.empty() && height_ + height_of(lines) > flow_.page_height() / 2) finish();
      height_ += height_of(lines);
      tasks_.push_back(std::move(lines));
    }
    finish();
  }

 private:
  TextStyle style() const { return {.size = look_.text()}; }
  double line() const { return look_.text() * line_spacing; }
  double indent() const { return look_.text() * 1.7; }
  double diagram() const { return look_.diagram() * 1.5; }
  double left() const { return diagram() + 12; }
  double height_of(const std::vector<std::string>& lines) const {
    return line() * static_cast<double>(lines.size()) + 3;
  }

  void finish() {
    const double tall = std::max(line() + height_, diagram() * 0.85);
    flow_.block(tall + 6, [&](Drawing& page, Spot at) { paint(page, at, tall); });
    tasks_.clear();
    height_ = 0;
  }

  void paint(Drawing& page, Spot at, double tall) const {
    draw_(page, board_, {at.x, at.y, diagram(), std::min(tall, diagram())});
    double y = at.y;
    draw_fitted(page, heading_, {at.x + left(), y + look_.text()}, flow_.width() - left(),
                {.size = look_.text(), .bold = true});
    y += line();
    for (const auto& lines : tasks_) {
      tick_box(page, {at.x + left(), y + look_.text() * 0.15}, look_.text() * 0.95);
      for (const std::string& words : lines) {
        page.text(words, {at.x + left() + indent(), y + look_.text()}, style());
        y += line();
      }
      y += 3;
    }
  }

  Flow& flow_;
  const BoardPicture& board_;
  const Look& look_;
  DrawBack draw_;
  std::string heading_;
  std::vector<std::vector<std::string>> tasks_;  // lines of each
  double height_ = 0;
};

void add_skew_lines(Flow& flow, const BoardPicture& board, const Look& look) {
  if (board.stage.skew_cuts.empty()) return;
  std::vector<std::string> tasks;
  for (const SkewCut& cut : board.stage.skew_cuts) {
    tasks.push_back(skew_brief_text(board.plan, board.stage, cut));
  }
  const Locale& locale = board.plan.locale;
  const std::string marks = skew_marks_text(board.plan, board.stage);
  Pictured(flow, board, look, draw_skew_lines,
           marks.empty() ? locale.say("Freehand, each line under the rail:")
                         : locale.say("Freehand, each line under the rail: %1", marks))
      .add(tasks);
}

void add_lines(Flow& flow, const BoardPicture& board, const Look& look) {
  const ToldPlan& plan = board.plan;
  const Stage& stage = board.stage;
  const TextStyle style{.size = look.text()};
  if (stage.pencil_lines.empty()) return;
  if (plan.way == Way::template_taped) {
    add_list(flow, {plan.locale.say("Tape the printed template of this layer on.")}, style);
    return;
  }
  add_list(flow, guide_marking_texts(plan, stage), style);
  const std::vector<std::string> lines = lines_by_edge(plan, board);
  const bool pictured = plan.way == Way::pencilled && !stage.same_order && !look.dense;
  if (pictured) {
    Pictured(flow, board, look, draw_back, plan.locale.say("Draw on the back:")).add(lines);
  } else {
    for (const std::string& line : lines) {
      add_list(flow, {plan.locale.say("Draw on the back: %1", line)}, style);
    }
  }
}

}  // namespace

void add_marks(Flow& flow, const BoardPicture& board, const Look& look) {
  const ToldPlan& plan = board.plan;
  const std::string prepare = prepare_text(plan, board.stage);
  if (!prepare.empty()) flow.text(prepare, {.size = look.text()});
  std::vector<std::string> lines = lines_by_edge(plan, board);
  for (const SkewCut& cut : board.stage.skew_cuts)
    lines.push_back(skew_brief_text(plan, board.stage, cut));
  for (std::string& curve : curve_texts(plan, board.stage)) lines.push_back(std::move(curve));
  if (!lines.empty()) {
    Pictured(flow, board, look, draw_back, plan.locale.say("Draw on the back:")).add(lines);
  }
  add_list(flow, spacer_texts(plan, board.stage), {.size = look.text()});
}

void add_before(Flow& flow, const BoardPicture& board, const Look& look) {
  const ToldPlan& plan = board.plan;
  const Stage& stage = board.stage;
  const TextStyle style{.size = look.text()};
  if (const std::string prepare = prepare_text(plan, stage); !prepare.empty()) {
    flow.text(prepare, style);
  }
  add_amount(flow, shift_text(plan, stage), plan.locale, look);
  add_lines(flow, board, look);
  std::string blocks = outside_blocks_text(plan, stage);
  if (!blocks.empty()) blocks = plan.locale.say("Or, %1.", blocks);
  std::string by_hand;
  for (const std::string& sentence :
       {by_eye_text(plan, stage), freehand_lines_text(plan, stage), blocks}) {
    if (!sentence.empty()) by_hand += (by_hand.empty() ? "" : " ") + sentence;
  }
  if (!by_hand.empty())
    flow.text(by_hand, blocks.empty() ? style : TextStyle{.size = look.small()});
  add_list(flow, checks_at(plan, stage, 0), style);
  add_list(flow, spacer_texts(plan, stage), style);
  flow.gap(4);
}

void add_after(Flow& flow, const BoardPicture& board, const Look& look) {
  add_skew_lines(flow, board, look);
  const std::vector<std::string> curves = curve_texts(board.plan, board.stage);
  if (!curves.empty())
    Pictured(flow, board, look, draw_curves, board.plan.locale.say("Curves:")).add(curves);
  std::vector<std::string> texts;
  for (const GrooveTrim& trim : board.stage.trims) texts.push_back(trim_text(board.plan, trim));
  add_list(flow, texts, {.size = look.text()});
  const std::vector<std::string> checks = checks_at(board.plan, board.stage, -1);
  add_sentences(flow, checks, "=", {.size = look.text()});
}

}  // namespace mullion::cutsheet
