#include "render/template/running_dimensions.h"

#include <algorithm>
#include <tuple>

namespace mullion {
namespace {

using paper::Pen;
using paper::Spot;

const Pen dimension_pen{0.4, {0x40, 0x40, 0x40}, {}, 1};
const std::string about = "\xE2\x89\x88";
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

paper::TextStyle style_for(DimensionSide side, double size) {
  paper::TextStyle style{size, false, {0x20, 0x20, 0x20}, paper::Anchor::left, 0};
  if (side == DimensionSide::above) style.turn = -90;
  if (side == DimensionSide::below) {
    style.turn = -90;
    style.anchor = paper::Anchor::right;
  }
  if (side == DimensionSide::left) style.anchor = paper::Anchor::right;
  return style;
}

struct SharedLabel {
  std::string text;
  std::string digits;          // the text without its sign for "about"
  std::vector<double> places;  // of its marks, rising
  double middle() const { return (places.front() + places.back()) / 2; }
};

// In the order of their places along the axis.
std::vector<SharedLabel> labels_of(std::vector<DimensionMark> marks, const Scale& scale,
                                   const Locale& locale) {
  std::sort(marks.begin(), marks.end(), [](const auto& a, const auto& b) {
    return std::tie(a.place, a.before) < std::tie(b.place, b.before);
  });
  marks.erase(std::unique(marks.begin(), marks.end(),
                          [](const auto& a, const auto& b) {
                            return a.distance == b.distance && a.before == b.before;
                          }),
              marks.end());
  std::vector<SharedLabel> labels;
  for (const DimensionMark& mark : marks) {
    std::string text = dimension_text(mark.distance, scale, locale);
    const bool exact = !text.starts_with(about);
    std::string digits = mark.before + (exact ? text : text.substr(about.size()));
    if (labels.empty() || labels.back().digits != digits) {
      labels.push_back({mark.before + text, std::move(digits), {}});
    }
    // "2 3/16" and what a rule cannot tell from it are one place.
    if (!exact) labels.back().text = mark.before + text;
    labels.back().places.push_back(mark.place);
  }
  return labels;
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

std::string dimension_text(Length length, const Scale& scale, const Locale& locale) {
  const LengthText out = format_readable(length, scale);
  return (out.exact ? "" : about) + locale.number(out.text);
}

bool draw_running_dimensions(paper::Drawing& drawing, std::vector<DimensionMark> marks,
                             DimensionSide side, double edge, double from, double to, double size,
                             const Scale& scale, const Locale& locale) {
  const std::vector<SharedLabel> labels = labels_of(std::move(marks), scale, locale);
  std::vector<double> wished;
  for (const SharedLabel& label : labels) wished.push_back(label.middle());
  if (static_cast<double>(labels.size()) * (size + 2) > to - from + size) return false;
  const std::vector<double> places = spread_labels(wished, size + 2, from, to);
  const paper::TextStyle style = style_for(side, size);
  for (std::size_t i = 0; i < labels.size(); ++i) {
    for (const double place : labels[i].places) {
      drawing.stroke(
          paper::polyline({spot_at(side, edge, place, 1), spot_at(side, edge, place, tick),
                           spot_at(side, edge, places[i], tick + leader)}),
          dimension_pen);
    }
    // Half a capital's height below the leader's end puts the label's middle on it.
    drawing.text(labels[i].text,
                 spot_at(side, edge, places[i] + size * 0.36, tick + leader + label_gap), style);
  }
  return true;
}

}  // namespace mullion
