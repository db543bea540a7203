#include "render/cutsheet/set_up_block.h"

#include <algorithm>

#include "engine/cutting/sheet/words.h"
#include "render/paper/drawing.h"

namespace mullion::cutsheet {
namespace {

using paper::Box;
using paper::Canvas;
using paper::Spot;
using paper::TextStyle;

constexpr int boxes_a_row = 10;
constexpr int most_boxes = 50;

struct Row {
  std::string label, value;
};

class SetUpBlock {
 public:
  SetUpBlock(Flow& flow, const CuttingPlan& plan, const Stage& stage, const SetUp& set_up,
             double size)
      : flow_(flow), plan_(plan), stage_(stage), set_up_(set_up), size_(size) {
    settings_width_ = 168 * size;
    cell_width_ = 186 * std::max(size, 0.85);
    columns_ = std::max(1, static_cast<int>((flow.width() - settings_width_) / cell_width_));
    cell_width_ = (flow.width() - settings_width_) / columns_;
  }

  void add() {
    const std::vector<BoardLine> lines = all_lines(plan_, stage_);
    const auto& placements = set_up_.placements;
    for (std::size_t first = 0; first < placements.size();) {
      const std::size_t last =
          std::min(first + static_cast<std::size_t>(columns_), placements.size());
      double height = first == 0 ? settings_height() : 0;
      for (std::size_t i = first; i < last; ++i) {
        height = std::max(height, cell_height(placements[i]));
      }
      flow_.block(height + 6, [&](Canvas& canvas, Spot at) {
        canvas.line(at, {at.x + (first == 0 ? flow_.width() : 0), at.y}, {.width = 0.7, .dashes = {}});
        if (first == 0) draw_settings(canvas, {at.x, at.y + 4});
        for (std::size_t i = first; i < last; ++i) {
          const double x = at.x + settings_width_ + cell_width_ * static_cast<double>(i - first);
          draw_cell(canvas, placements[i], lines, {x, at.y + 4});
        }
      });
      first = last;
    }
  }

 private:
  double title_size() const { return 10 * size_; }
  double value_size() const { return 19 * size_; }
  double cut_size() const { return std::max(10 * size_, 8.5); }
  double diagram() const { return 104 * size_; }

  std::vector<Row> rows() const {
    const Settings& s = set_up_.settings;
    std::vector<Row> out = {{"GUIDE", guide_text(plan_, s)}};
    if (plan_.way != Way::pencilled) {
      if (plan_.way == Way::two_stops || plan_.cutter.near_stop) {
        out.push_back({"NEAR STOP", near_stop_text(plan_, s)});
      }
      if (plan_.way == Way::two_stops || !plan_.cutter.near_stop) {
        out.push_back({"FAR STOP", far_stop_text(plan_, s)});
      }
    }
    return out;
  }

  int tally_boxes() const {
    return plan_.quantity > most_boxes ? std::min((plan_.quantity + 9) / 10, most_boxes)
                                       : plan_.quantity;
  }
  double tally_height() const {
    if (plan_.quantity < 2) return 0;
    return 12 + 11.0 * ((tally_boxes() + boxes_a_row - 1) / boxes_a_row);
  }
  std::vector<std::string> block_lines() const {
    if (!set_up_.settings.block) return {};
    return wrapped("with a " + block_text(plan_, *set_up_.settings.block), settings_width_ - 10,
                   {.size = title_size(), .bold = true});
  }
  double row_height() const { return value_size() * 1.12 + 11 * size_; }
  double settings_height() const {
    return title_size() * 1.6 + row_height() * static_cast<double>(rows().size()) +
           title_size() * line_spacing * static_cast<double>(block_lines().size()) +
           tally_height() + 4;
  }

  void draw_settings(Canvas& canvas, Spot at) {
    double y = at.y + title_size();
    canvas.text("Set-up " + std::to_string(set_up_.number), {at.x, y},
                {.size = title_size(), .bold = true});
    y += title_size() * 0.6;
    for (const Row& row : rows()) {
      canvas.text(row.label, {at.x, y + 8 * size_}, {.size = 7.5 * size_});
      TextStyle style{.size = value_size(), .bold = true};
      const double room = settings_width_ - 8;
      const double wide = paper::text_width(row.value, style);
      if (wide > room) style.size *= room / wide;
      canvas.text(row.value, {at.x, y + 8 * size_ + value_size()}, style);
      y += row_height();
    }
    for (const std::string& line : block_lines()) {
      y += title_size() * line_spacing;
      canvas.text(line, {at.x, y}, {.size = title_size(), .bold = true});
    }
    if (plan_.quantity > 1) draw_tally(canvas, {at.x, y + 4});
  }

  void draw_tally(Canvas& canvas, Spot at) {
    const bool tens = plan_.quantity > most_boxes;
    canvas.text("tally of " + std::to_string(plan_.quantity) + (tens ? ", a box for ten" : ""),
                {at.x, at.y + 8}, {.size = 8});
    for (int i = 0; i < tally_boxes(); ++i) {
      const double x = at.x + 11 * (i % boxes_a_row) + (i % boxes_a_row >= 5 ? 5 : 0);
      canvas.rectangle({x, at.y + 12 + 11.0 * (i / boxes_a_row), 8, 8}, {.width = 0.6, .dashes = {}});
    }
  }

  std::string cut_text(const BevelCut& cut) const {
    std::string text = std::to_string(cut.number) + "  " + openings_text(cut.openings) + ", " +
                       front_name(cut.kept);
    if (cut.start.by != EndBy::stop || cut.end.by != EndBy::stop) {
      text += ": " + ends_text(plan_, cut);
    }
    if (cut.pencil > 0) text += "; " + freehand_text(plan_, cut);
    return text;
  }
  TextStyle cut_style() const { return {.size = cut_size()}; }
  std::vector<std::string> cut_lines(const BevelCut& cut) const {
    return wrapped(cut_text(cut), cell_width_ - cut_size() * 1.7 - 8, cut_style());
  }

  double cell_height(const Placement& placement) const {
    double height = title_size() * 2.5 + diagram();
    for (const BevelCut& cut : placement.cuts) {
      height += cut_size() * line_spacing * static_cast<double>(cut_lines(cut).size()) + 2;
    }
    return height;
  }

  void draw_cell(Canvas& canvas, const Placement& placement, const std::vector<BoardLine>& lines,
                 Spot at) {
    canvas.text("Edge " + std::string(1, letter(placement.edge)) + " at the guide" +
                    (set_up_.settings.guide ? "" : "'s side"),
                {at.x, at.y + title_size()}, {.size = title_size(), .bold = true});
    canvas.text(turn_text(placement.turns), {at.x, at.y + title_size() * 2.15},
                {.size = title_size() * 0.9});
    const double top = at.y + title_size() * 2.4;
    draw_board_as_it_lies(canvas, {plan_, stage_, set_up_, placement, lines},
                          {at.x, top, std::min(cell_width_ - 10, diagram() * 1.35), diagram()});
    double y = top + diagram() + 2;
    for (const BevelCut& cut : placement.cuts) {
      tick_box(canvas, {at.x, y + cut_size() * 0.15}, cut_size() * 0.95);
      for (const std::string& line : cut_lines(cut)) {
        canvas.text(line, {at.x + cut_size() * 1.7, y + cut_size()}, cut_style());
        y += cut_size() * line_spacing;
      }
      y += 2;
    }
  }

  Flow& flow_;
  const CuttingPlan& plan_;
  const Stage& stage_;
  const SetUp& set_up_;
  double size_;
  double settings_width_ = 0, cell_width_ = 0;
  int columns_ = 1;
};

}  // namespace

std::vector<BoardLine> all_lines(const CuttingPlan& plan, const Stage& stage) {
  std::vector<BoardLine> out;
  for (const SetUp& set_up : stage.set_ups) {
    for (const Placement& placement : set_up.placements) {
      for (const BoardLine& line : lines_of(plan, placement)) out.push_back(line);
    }
  }
  return out;
}

void add_set_up(Flow& flow, const CuttingPlan& plan, const Stage& stage, const SetUp& set_up,
                double size) {
  SetUpBlock(flow, plan, stage, set_up, size).add();
}

}  // namespace mullion::cutsheet
