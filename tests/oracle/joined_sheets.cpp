#include "tests/oracle/joined_sheets.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <map>
#include <optional>
#include <set>
#include <stdexcept>
#include <string>

namespace oracle {
namespace {

struct Place {
  int row = 0, column = 0;
  auto operator<=>(const Place&) const = default;
};

// The marks of one join, by rising place along it.
struct Join {
  bool upright = false;
  double at = 0;
  std::vector<Spot> marks;
};

struct Sheet {
  const DrawnPage* page = nullptr;
  std::optional<Join> left, right, top, bottom;
  Spot moved;
};

std::optional<Place> place_of(const DrawnPage& page) {
  for (const Label& label : page.labels) {
    Place place;
    if (std::sscanf(label.text.c_str(), "Sheet %d-%d", &place.row, &place.column) == 2)
      return place;
  }
  return std::nullopt;
}

// The template draws joins in this grey, and hidden edges lighter: both are dashed.
bool may_be_join(const Stroke& s) {
  return s.dashed && s.colour == "#404040";
}

// Points that a level or upright line may lean: what rounding to ticks leaves of a corrected slant.
constexpr double level = 0.01;

bool is_upright(const Stroke& s) {
  return std::abs(s.from.x - s.to.x) < level;
}
bool is_level(const Stroke& s) {
  return std::abs(s.from.y - s.to.y) < level;
}

// Short solid strokes that cross the join at right angles.
std::vector<Spot> marks_on(const DrawnPage& page, const Stroke& join, bool upright) {
  std::vector<Spot> marks;
  for (const Stroke& s : page.strokes) {
    if (s.dashed || (upright ? !is_level(s) : !is_upright(s))) continue;
    const double length = std::hypot(s.to.x - s.from.x, s.to.y - s.from.y);
    if (length < 6 || length > 17 || std::abs(s.width - join.width) > 1e-3) continue;
    const auto [low, high] =
        upright ? std::minmax(s.from.x, s.to.x) : std::minmax(s.from.y, s.to.y);
    const double at = upright ? join.from.x : join.from.y;
    const double along = upright ? s.from.y : s.from.x;
    const auto [start, end] =
        upright ? std::minmax(join.from.y, join.to.y) : std::minmax(join.from.x, join.to.x);
    if (low > at - 0.5 || high < at + 0.5 || along < start || along > end) continue;
    marks.push_back(upright ? Spot{at, along} : Spot{along, at});
  }
  std::sort(marks.begin(), marks.end(), [](Spot a, Spot b) { return a.x + a.y < b.x + b.y; });
  return marks;
}

Sheet sheet_of(const DrawnPage& page) {
  Sheet sheet{&page, {}, {}, {}, {}, {}};
  for (const Stroke& s : page.strokes) {
    if (!may_be_join(s) || (!is_upright(s) && !is_level(s))) continue;
    const bool upright = is_upright(s);
    const std::vector<Spot> marks = marks_on(page, s, upright);
    if (marks.size() != 2) continue;
    const Join join{upright, upright ? s.from.x : s.from.y, marks};
    const bool before = join.at < (upright ? page.width : page.height) / 2;
    auto& side =
        upright ? (before ? sheet.left : sheet.right) : (before ? sheet.top : sheet.bottom);
    if (side) throw std::runtime_error("a sheet shows two joins on one side");
    side = join;
  }
  return sheet;
}

const Join& needed(const std::optional<Join>& join, Place place, const char* side) {
  if (join) return *join;
  throw std::runtime_error("sheet " + std::to_string(place.row) + "-" +
                           std::to_string(place.column) + " shows no join on its " + side);
}

// How far `marks` have to move to lie on `onto`.
Spot move_between(const Join& marks, const Join& onto) {
  Spot by;
  for (int i = 0; i < 2; ++i) {
    by.x += (onto.marks[i].x - marks.marks[i].x) / 2;
    by.y += (onto.marks[i].y - marks.marks[i].y) / 2;
  }
  return by;
}

double misfit(const Join& a, Spot a_moved, const Join& b, Spot b_moved) {
  double worst = 0;
  for (int i = 0; i < 2; ++i) {
    worst = std::max(worst, std::hypot(a.marks[i].x + a_moved.x - b.marks[i].x - b_moved.x,
                                       a.marks[i].y + a_moved.y - b.marks[i].y - b_moved.y));
  }
  return worst;
}

void add_marks(const Sheet& sheet, std::vector<Spot>& marks) {
  for (const auto& join : {sheet.right, sheet.bottom}) {
    if (!join) continue;
    for (const Spot& mark : join->marks) {
      marks.push_back({mark.x + sheet.moved.x, mark.y + sheet.moved.y});
    }
  }
}

// What the sheet shows between its joins, a little beyond them, moved to its place.
void add_strokes(const Sheet& sheet, DrawnPage& whole) {
  constexpr double beyond = 2;
  const double left = sheet.left ? sheet.left->at - beyond : -1e9;
  const double right = sheet.right ? sheet.right->at + beyond : 1e9;
  const double top = sheet.top ? sheet.top->at - beyond : -1e9;
  const double bottom = sheet.bottom ? sheet.bottom->at + beyond : 1e9;
  for (Stroke s : sheet.page->strokes) {
    if (!clip_to_box(s, {left, top}, {right, bottom})) continue;
    s.from = {s.from.x + sheet.moved.x, s.from.y + sheet.moved.y};
    s.to = {s.to.x + sheet.moved.x, s.to.y + sheet.moved.y};
    whole.strokes.push_back(s);
  }
}

// A sheet laid beside one that lies: what the marks of both say.
void lay(Sheet& sheet, const Join& here, const Sheet& beside, const Join& there) {
  const Spot by = move_between(here, there);
  sheet.moved = {beside.moved.x + by.x, beside.moved.y + by.y};
}

JoinedSheets joined(std::map<Place, Sheet>& sheets) {
  JoinedSheets out;
  for (auto& [place, sheet] : sheets) {
    out.rows = std::max(out.rows, place.row);
    out.columns = std::max(out.columns, place.column);
  }
  // From the first sheet on, each beside one that lies already.
  std::set<Place> laid{{1, 1}};
  std::vector<Place> open{{1, 1}};
  struct Way {
    int down, right;
    std::optional<Join> Sheet::*from;
    std::optional<Join> Sheet::*to;
    const char *from_name, *to_name;
  };
  const std::array<Way, 4> ways{Way{0, 1, &Sheet::right, &Sheet::left, "right", "left"},
                                Way{1, 0, &Sheet::bottom, &Sheet::top, "bottom", "top"},
                                Way{0, -1, &Sheet::left, &Sheet::right, "left", "right"},
                                Way{-1, 0, &Sheet::top, &Sheet::bottom, "top", "bottom"}};
  for (std::size_t i = 0; i < open.size(); ++i) {
    const Place here = open[i];
    Sheet& lying = sheets.at(here);
    for (const Way& way : ways) {
      const Place there{here.row + way.down, here.column + way.right};
      const auto next = sheets.find(there);
      if (next == sheets.end()) {
        if (lying.*way.from) throw std::runtime_error("a join leads to no sheet");
        continue;
      }
      const Join& on = needed(lying.*way.from, here, way.from_name);
      const Join& of = needed(next->second.*way.to, there, way.to_name);
      if (laid.insert(there).second) {
        lay(next->second, of, lying, on);
        open.push_back(there);
      }
      out.worst_mark = std::max(out.worst_mark, misfit(of, next->second.moved, on, lying.moved));
    }
  }
  if (laid.size() != sheets.size()) throw std::runtime_error("sheets are missing");
  for (auto& [place, sheet] : sheets) {
    if (place.row == 1 && place.column < out.columns) {
      out.joins_x.push_back(needed(sheet.right, place, "right").at + sheet.moved.x);
    }
    if (place.column == 1 && place.row < out.rows) {
      out.joins_y.push_back(needed(sheet.bottom, place, "bottom").at + sheet.moved.y);
    }
    add_strokes(sheet, out.whole);
    add_marks(sheet, out.marks);
  }
  return out;
}

}  // namespace

std::vector<JoinedSheets> join_sheets(const std::vector<DrawnPage>& pages) {
  std::vector<JoinedSheets> boards;
  std::map<Place, Sheet> sheets;
  for (const DrawnPage& page : pages) {
    const std::optional<Place> place = place_of(page);
    if (!place) continue;
    if (*place == Place{1, 1} && !sheets.empty()) {
      boards.push_back(joined(sheets));
      sheets.clear();
    }
    sheets.emplace(*place, sheet_of(page));
  }
  if (!sheets.empty()) boards.push_back(joined(sheets));
  return boards;
}

}  // namespace oracle
