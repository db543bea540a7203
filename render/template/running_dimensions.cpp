#include "render/template/running_dimensions.h"

#include <algorithm>

namespace mullion {
namespace {

using paper::Pen;
using paper::Spot;

const Pen mark_pen{0.4, {0x40, 0x40, 0x40}, {}, 1};
const paper::TextStyle label_style{7.5, false, {0x20, 0x20, 0x20}, paper::Anchor::left, 0};
constexpr double label_spacing = 9.5;
constexpr double tick = 5, leader = 7, label_gap = 2;

// A place along the edge and a distance away from the board, as a spot on the page.
Spot spot_at(DimensionSide side, double edge, double along, double away) {
  switch (side) {
    case DimensionSide::above:
      return {along, edge - away};
    case DimensionSide::below:
      return {along, edge + away};
    case DimensionSide::left:
      return {edge - away, along};
    case DimensionSide::right:
      return {edge + away, along};
  }
  return {};
}

paper::TextStyle style_for(DimensionSide side) {
  paper::TextStyle style = label_style;
  if (side == DimensionSide::above) style.turn = -90;
  if (side == DimensionSide::below) {
    style.turn = -90;
    style.anchor = paper::Anchor::right;
  }
  if (side == DimensionSide::left) style.anchor = paper::Anchor::right;
  return style;
}

}  // namespace

std::vector<double> spread_labels(const std::vector<double>& wished, double spacing, double from,
                                  double to) {
  struct Block {
    double sum;  // of wished place minus offset within the block
    std::size_t count;
    double start() const { return sum / static_cast<double>(count); }
  };
  const auto clamped = [&](const Block& block) {
    const double length = spacing * static_cast<double>(block.count - 1);
    return std::max(from, std::min(block.start(), to - length));
  };
  std::vector<Block> blocks;
  for (const double place : wished) {
    blocks.push_back({place, 1});
    while (blocks.size() > 1) {
      const Block& last = blocks.back();
      Block& before = blocks[blocks.size() - 2];
      const double end = clamped(before) + spacing * static_cast<double>(before.count);
      if (end <= clamped(last)) break;
      before.sum += last.sum - spacing * static_cast<double>(before.count * last.count);
      before.count += last.count;
      blocks.pop_back();
    }
  }
  std::vector<double> places;
  for (const Block& block : blocks) {
    for (std::size_t i = 0; i < block.count; ++i) {
      places.push_back(clamped(block) + spacing * static_cast<double>(i));
    }
  }
  return places;
}

void draw_running_dimensions(paper::Drawing& drawing, std::vector<DimensionMark> marks,
                             DimensionSide side, double edge, double from, double to,
                             const Scale& scale) {
  std::sort(marks.begin(), marks.end(),
            [](const auto& a, const auto& b) { return a.place < b.place; });
  marks.erase(std::unique(marks.begin(), marks.end(),
                          [](const auto& a, const auto& b) { return a.distance == b.distance; }),
              marks.end());
  std::vector<double> wished;
  for (const DimensionMark& mark : marks) wished.push_back(mark.place);
  const std::vector<double> places = spread_labels(wished, label_spacing, from, to);
  const paper::TextStyle style = style_for(side);
  for (std::size_t i = 0; i < marks.size(); ++i) {
    drawing.stroke(paper::polyline({spot_at(side, edge, marks[i].place, 1),
                                    spot_at(side, edge, marks[i].place, tick),
                                    spot_at(side, edge, places[i], tick + leader)}),
                   mark_pen);
    // Half a capital's height below the leader's end puts the label's middle on it.
    const double middle = places[i] + label_style.size * 0.36;
    drawing.text(format_number(marks[i].distance, scale).text,
                 spot_at(side, edge, middle, tick + leader + label_gap), style);
  }
}

}  // namespace mullion
