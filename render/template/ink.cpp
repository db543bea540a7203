#include "render/template/ink.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

namespace mullion {
namespace {

constexpr std::array<const char*, 4> board_line_groups{"outer-edge", "face-edges", "cut-lines",
                                                       "grooves"};

struct Collect {
  Ink& ink;
  const paper::Transform& placed;

  void operator()(const paper::Stroke& stroke) const {
    for (const paper::Edge& edge : paper::flattened(stroke.path)) {
      ink.lines.push_back({placed(edge.from), placed(edge.to)});
    }
  }
  void operator()(const paper::Area&) const {}
  void operator()(const paper::Image&) const {}
  void operator()(const paper::Label& label) const {
    ink.labels.push_back(bounds_of(placed, bounds_of(paper::Item(label))));
  }
  void operator()(const paper::Group& group) const {
    if (group.id.ends_with("hatching")) return;
    add_ink(ink, *group.drawing, then(group.placed, placed));
  }
};

struct BoardLines {
  std::vector<paper::Edge>& lines;
  bool inside;

  void operator()(const paper::Stroke& stroke) const {
    if (!inside) return;
    const std::vector<paper::Edge> edges = paper::flattened(stroke.path);
    lines.insert(lines.end(), edges.begin(), edges.end());
  }
  void operator()(const paper::Area&) const {}
  void operator()(const paper::Image&) const {}
  void operator()(const paper::Label&) const {}
  void operator()(const paper::Group& group) const {
    const bool wanted = std::any_of(board_line_groups.begin(), board_line_groups.end(),
                                    [&](const char* ending) { return group.id.ends_with(ending); });
    for (const paper::Item& item : group.drawing->items()) {
      std::visit(BoardLines{lines, inside || wanted}, item);
    }
  }
};

// The part of an edge whose distance across is at most `reach`, along the line; `along` and
// `across` are its ends in the line's own directions.
std::optional<Interval> part_beside(paper::Spot a, paper::Spot b, double reach) {
  double start = 0, end = 1;
  for (const double side : {-1.0, 1.0}) {
    const double at_a = side * a.y - reach, at_b = side * b.y - reach;  // inside: not above zero
    if (at_a > 0 && at_b > 0) return std::nullopt;
    if (at_a > 0) start = std::max(start, at_a / (at_a - at_b));
    if (at_b > 0) end = std::min(end, at_a / (at_a - at_b));
  }
  if (start > end) return std::nullopt;
  const double first = a.x + start * (b.x - a.x), second = a.x + end * (b.x - a.x);
  return Interval{std::min(first, second), std::max(first, second)};
}

}  // namespace

void add_ink(Ink& ink, const paper::Drawing& drawing, const paper::Transform& placed) {
  for (const paper::Item& item : drawing.items()) std::visit(Collect{ink, placed}, item);
}

std::vector<paper::Edge> board_lines(const paper::Drawing& board) {
  std::vector<paper::Edge> lines;
  for (const paper::Item& item : board.items()) std::visit(BoardLines{lines, false}, item);
  return lines;
}

Ink ink_in(const Ink& ink, const paper::Box& box) {
  Ink near;
  for (const paper::Edge& line : ink.lines) {
    const auto [left, right] = std::minmax(line.from.x, line.to.x);
    const auto [top, bottom] = std::minmax(line.from.y, line.to.y);
    if (overlap(paper::Box{left, top, right - left, bottom - top}, box)) near.lines.push_back(line);
  }
  std::copy_if(ink.labels.begin(), ink.labels.end(), std::back_inserter(near.labels),
               [&](const paper::Box& label) { return overlap(label, box); });
  return near;
}

std::vector<Interval> ink_beside(const Ink& ink, const paper::Edge& line, double reach) {
  const double dx = line.to.x - line.from.x, dy = line.to.y - line.from.y;
  const double length = std::hypot(dx, dy);
  // In the line's own directions: x along it, y across.
  const auto seen = [&](paper::Spot spot) {
    const double x = spot.x - line.from.x, y = spot.y - line.from.y;
    return paper::Spot{(x * dx + y * dy) / length, (y * dx - x * dy) / length};
  };
  std::vector<Interval> taken;
  for (const paper::Edge& edge : ink.lines) {
    if (const auto part = part_beside(seen(edge.from), seen(edge.to), reach))
      taken.push_back(*part);
  }
  for (const paper::Box& box : ink.labels) {
    const paper::Spot a = seen({box.x, box.y}), b = seen({box.x + box.width, box.y + box.height});
    const auto [low, high] = std::minmax(a.y, b.y);
    if (low > reach || high < -reach) continue;
    taken.push_back({std::min(a.x, b.x), std::max(a.x, b.x)});
  }
  return taken;
}

double clear_place(const std::vector<Interval>& taken, double wished, double from, double to,
                   double clearance) {
  std::vector<double> places{wished};
  for (const Interval& interval : taken) {
    places.push_back(interval.from - clearance);
    places.push_back(interval.to + clearance);
  }
  std::stable_sort(places.begin(), places.end(),
                   [&](double a, double b) { return std::abs(a - wished) < std::abs(b - wished); });
  constexpr double rounding = 1e-6;
  for (const double place : places) {
    if (place < from || place > to) continue;
    const bool clear = std::none_of(taken.begin(), taken.end(), [&](const Interval& interval) {
      return place > interval.from - clearance + rounding &&
             place < interval.to + clearance - rounding;
    });
    if (clear) return place;
  }
  return wished;
}

}  // namespace mullion
