#include "render/template/join_marks.h"

#include <algorithm>
#include <array>

namespace mullion {
namespace {

using paper::Anchor;
using paper::Box;
using paper::Drawing;
using paper::Pen;
using paper::Spot;
using paper::TextStyle;

const Pen join_pen{0.35, {0x40, 0x40, 0x40}, {9, 3, 1.5, 3}, 1};
const Pen mark_pen{0.35, {0, 0, 0}, {}, 1};
constexpr double reach = 8, half_across = 6, half_along = 9;
constexpr double label_size = 7;
constexpr double with_label = reach + 2 + label_size + 1;  // of a mark and its label, across
constexpr double clearance = 3, from_corner = 32;

struct Join {
  Spot from, to;  // along the join
  Spot inward;    // unit, into this tile
  std::string neighbour;
};

Spot moved(Spot spot, Spot along, double by) {
  return {spot.x + along.x * by, spot.y + along.y * by};
}

// The marks of a tile's joins: all lines first and then all names.
class Marks {
 public:
  void add_line(const Join& join) { joins_.append(paper::line(join.from, join.to)); }

  void add(Spot at, Spot along, const Join& join, const paper::Text& name) {
    const Spot in = join.inward;
    marks_.append(paper::polyline({moved(at, along, -half_along), moved(at, in, half_across),
                                   moved(at, along, half_along), moved(at, in, -half_across)})
                      .close());
    marks_.append(paper::line(moved(at, in, -reach), moved(at, in, reach)));
    const double high = label_size, half = name.width() / 2;
    const Spot baseline = moved(at, in, reach + 2 + (in.x > 0 || in.y > 0 ? high * 0.73 : 0));
    // White behind the letters, so that hatching does not blur them.
    papers_.append(paper::rectangle(
        in.x != 0 ? Box{baseline.x - high, baseline.y - half, high + 1, 2 * half}
                  : Box{baseline.x - half, baseline.y - high, 2 * half, high + 1}));
    names_.emplace_back(name, baseline);
  }

  void draw(Drawing& drawing) const {
    drawing.fill(papers_, {{255, 255, 255}, 0.85})
        .stroke(joins_, join_pen)
        .stroke(marks_, mark_pen);
    for (const auto& [name, baseline] : names_) drawing.text(name, baseline);
  }

 private:
  paper::Path joins_, marks_, papers_;
  std::vector<std::pair<paper::Text, Spot>> names_;
};

paper::Text name_of(const Join& join, const Locale& locale) {
  return {
      locale.say("to %1", join.neighbour),
      {label_size, false, {0x30, 0x30, 0x30}, Anchor::centre, join.inward.x != 0 ? -90.0 : 0.0}};
}

// Both marks, from the join's start: far apart, where they and their labels hide nothing, or at
// least where the diamonds hide nothing. The same from both sides of the join.
std::array<double, 2> places_of_marks(const Join& join, double length, const Ink& ink) {
  const double inset = std::min(length / 4, std::max(length / 8, 40.0));
  const double least = std::min(length / 4, from_corner), most = length * 0.4;
  std::array<double, 2> places{inset, length - inset};
  for (const double across : {with_label, reach}) {
    const std::vector<Interval> taken = ink_beside(ink, {join.from, join.to}, across);
    const double first = clear_place(taken, inset, least, most, half_along + clearance);
    const double second =
        clear_place(taken, length - inset, length - most, length - least, half_along + clearance);
    if (places[0] == inset) places[0] = first;
    if (places[1] == length - inset) places[1] = second;
  }
  return places;
}

void add_join(Marks& marks, const Join& join, const Ink& ink, const Locale& locale) {
  marks.add_line(join);
  const double length = std::abs(join.to.x - join.from.x) + std::abs(join.to.y - join.from.y);
  const Spot along{(join.to.x - join.from.x) / length, (join.to.y - join.from.y) / length};
  const paper::Text name = name_of(join, locale);
  for (const double place : places_of_marks(join, length, ink)) {
    marks.add(moved(join.from, along, place), along, join, name);
  }
}

}  // namespace

std::string sheet_name(std::size_t row, std::size_t column) {
  return std::to_string(row + 1) + "-" + std::to_string(column + 1);
}

void draw_joins(Drawing& drawing, const paper::Tiling& tiling, std::size_t row, std::size_t column,
                const NeededSheets& sheets, const Ink& whole, const Locale& locale) {
  const double left = paper::points(tiling.columns[column]);
  const double right = paper::points(tiling.columns[column + 1]);
  const double top = paper::points(tiling.rows[row]);
  const double bottom = paper::points(tiling.rows[row + 1]);
  const Ink ink = ink_in(whole, paper::grown({left, top, right - left, bottom - top},
                                             with_label + half_along + clearance));
  Marks marks;
  if (column > 0 && sheets.has(row, column - 1)) {
    add_join(marks, {{left, top}, {left, bottom}, {1, 0}, sheet_name(row, column - 1)}, ink,
             locale);
  }
  if (row > 0 && sheets.has(row - 1, column)) {
    add_join(marks, {{left, top}, {right, top}, {0, 1}, sheet_name(row - 1, column)}, ink, locale);
  }
  if (column + 2 < tiling.columns.size() && sheets.has(row, column + 1)) {
    add_join(marks, {{right, top}, {right, bottom}, {-1, 0}, sheet_name(row, column + 1)}, ink,
             locale);
  }
  if (row + 2 < tiling.rows.size() && sheets.has(row + 1, column)) {
    add_join(marks, {{left, bottom}, {right, bottom}, {0, -1}, sheet_name(row + 1, column)}, ink,
             locale);
  }
  marks.draw(drawing);
}

}  // namespace mullion
