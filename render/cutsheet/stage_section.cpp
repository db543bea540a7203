#include "render/cutsheet/stage_section.h"

#include <map>

#include "engine/cutting/sheet/words.h"

namespace mullion::cutsheet {
namespace {

using paper::Canvas;
using paper::Spot;
using paper::TextStyle;

constexpr Colour amount_colour{0xff, 0xf0, 0xb0};
constexpr const char* one_amount = "Same edges, same order; every setting changed by one amount:";

void add_amount(Flow& flow, const std::string& shift, const Look& look) {
  if (shift.empty()) return;
  const TextStyle large{.size = 15 * look.size, .bold = true};
  const std::vector<std::string> lines = wrapped(shift, flow.width() - 16, large);
  const double line = large.size * line_spacing;
  const double top = look.text() * 1.35;
  flow.block(line * static_cast<double>(lines.size()) + top + 10, [&](Canvas& canvas, Spot at) {
    canvas.fill({at.x, at.y, flow.width(), line * static_cast<double>(lines.size()) + top + 5},
                {amount_colour});
    canvas.text(one_amount, {at.x + 8, at.y + top}, {.size = look.text()});
    double y = at.y + top;
    for (const std::string& words : lines) {
      y += line;
      canvas.text(words, {at.x + 8, y - large.size * 0.1}, large);
    }
  });
}

std::vector<std::string> named_lines(const CuttingPlan& plan, const Stage& stage) {
  std::vector<std::string> out;
  for (const Marking& marking : markings_of(stage)) {
    out.push_back("Draw " + marking_text(plan, marking));
  }
  return out;
}

// One text an edge: "From A: 2 7/8 in at 1, 3, 6; 9 7/8 in at 4".
std::vector<std::string> lines_by_edge(const CuttingPlan& plan, const BoardPicture& board) {
  std::map<BoardEdge, std::string> texts;
  for (const Marking& marking : markings_of(board.stage)) {
    std::string& text = texts[marking.edge];
    text += text.empty() ? std::string("From edge ") + letter(marking.edge) + ": " : "; ";
    text += distance_text(plan, marking.distance);
    if (!board.openings.empty()) text += " at " + openings_text(marking.openings);
  }
  std::vector<std::string> out;
  for (const auto& [edge, text] : texts) out.push_back(text);
  return out;
}

// Every line of the openings is drawn: the back as it looks then, and the distances.
void add_drawn_back(Flow& flow, const BoardPicture& board, const Look& look) {
  const TextStyle style{.size = look.text()};
  const double diagram = look.diagram() * 1.5;
  const double left = diagram + 12;
  std::vector<std::vector<std::string>> texts;
  double height = look.text() * line_spacing;
  for (const std::string& text : lines_by_edge(board.plan, board)) {
    texts.push_back(wrapped(text, flow.width() - left - look.text() * 1.7, style));
    height += look.text() * line_spacing * static_cast<double>(texts.back().size()) + 3;
  }
  const double tall = std::max(height, diagram * 0.85);
  flow.block(tall + 6, [&](Canvas& canvas, Spot at) {
    draw_back(canvas, board, {at.x, at.y, diagram, tall});
    double y = at.y;
    canvas.text("Draw on the back:", {at.x + left, y + look.text()},
                {.size = look.text(), .bold = true});
    y += look.text() * line_spacing;
    for (const auto& lines : texts) {
      tick_box(canvas, {at.x + left, y + look.text() * 0.15}, look.text() * 0.95);
      for (const std::string& line : lines) {
        canvas.text(line, {at.x + left + look.text() * 1.7, y + look.text()}, style);
        y += look.text() * line_spacing;
      }
      y += 3;
    }
  });
}

}  // namespace

void add_before(Flow& flow, const BoardPicture& board, const Look& look) {
  const CuttingPlan& plan = board.plan;
  const Stage& stage = board.stage;
  const TextStyle style{.size = look.text()};
  if (const std::string prepare = prepare_text(plan, stage); !prepare.empty()) {
    flow.text(prepare, style);
  }
  add_amount(flow, shift_text(plan, stage), look);
  if (lines_are_named(plan, stage)) {
    add_list(flow, named_lines(plan, stage), style);
  } else if (stage.same_order) {
    add_list(flow, lines_by_edge(plan, board), style);
  } else if (!stage.pencil_lines.empty()) {
    add_drawn_back(flow, board, look);
  }
  if (const std::string by_eye = by_eye_text(plan, stage); !by_eye.empty()) {
    flow.text(by_eye, style);
  }
  if (const std::string blocks = outside_blocks_text(plan, stage); !blocks.empty()) {
    flow.text("Or, " + blocks + ".", {.size = look.small()});
  }
  flow.gap(4);
}

void add_after(Flow& flow, const BoardPicture& board, const Look& look) {
  std::vector<std::string> texts;
  for (const CurveCut& curve : board.stage.curves) texts.push_back(curve_text(board.plan, curve));
  for (const GrooveTrim& trim : board.stage.trims) texts.push_back(trim_text(board.plan, trim));
  add_list(flow, texts, {.size = look.text()});
}

}  // namespace mullion::cutsheet
