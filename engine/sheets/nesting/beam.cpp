#include "engine/sheets/nesting/beam.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <unordered_map>
#include <utility>

namespace mullion {
namespace {

using Kind = Pattern::Kind;

// Of states with the same blanks placed, so many are kept.
constexpr int most_alike = 3;
// Waste that every state is said to have, as a share of what is placed: it keeps small blanks from
// coming first where nothing is wasted yet.
constexpr double least_waste = 0.02;

enum class Step : std::uint8_t { sheet_of_columns, sheet_of_rows, strip, row, column, stack };

// Where the next blank can be put in a sheet whose strips lie along x. In ticks, each blank grown
// by the kerf.
struct Front {
  std::int64_t strip = 0, strip_end = 0;    // x of the present strip
  std::int64_t row = 0, row_end = 0;        // y of its present row
  std::int64_t column = 0, column_end = 0;  // x of that row's present column
  std::int64_t top = 0;                     // y up to which the column is filled
  int sheet = -1;
  bool of_rows = false;  // the strips are rows of the sheet
  friend bool operator==(const Front&, const Front&) = default;
};

struct Placing {
  int parent = -1;
  int blank = -1;
  int sheet = -1;
  Step step = Step::stack;
  bool turned = false;
};

struct State {
  Front front;
  double placed = 0, closed = 0;  // areas: of blanks; of the sheets before this one
  std::uint64_t key = 0;          // of the blanks placed
  int placing = -1;
};

struct Candidate {
  double guide = 0;
  double placed = 0;
  Front front;
  std::uint64_t key = 0;
  int from = -1;
  int blank = -1;
  Step step = Step::stack;
  bool turned = false;
};

struct SheetSize {
  std::int64_t width = 0, height = 0;
  bool columns = true, rows = true;  // whether strips of that kind can be cut off
  double area() const { return static_cast<double>(width) * static_cast<double>(height); }
};

std::uint64_t mixed(std::uint64_t number) {  // G. Steele and others, "Fast splittable pseudorandom
  number += 0x9e3779b97f4a7c15U;             // number generators", 2014
  number = (number ^ (number >> 30)) * 0xbf58476d1ce4e5b9U;
  number = (number ^ (number >> 27)) * 0x94d049bb133111ebU;
  return number ^ (number >> 31);
}

class Beam {
 public:
  Beam(const NestingProblem& problem, const std::vector<int>& wanted,
       const std::vector<int>& sheets, const BeamOptions& options)
      : problem_(problem), options_(options), wanted_(wanted), kinds_(sheets) {
    const std::int64_t kerf = problem.limits.kerf.ticks();
    for (std::size_t i = 0; i < problem.blanks.size(); ++i) {
      const BlankSize& blank = problem.blanks[i];
      widths_.push_back(blank.width.ticks() + kerf);
      heights_.push_back(blank.height.ticks() + kerf);
      areas_.push_back(static_cast<double>(widths_[i]) * static_cast<double>(heights_[i]));
      keys_.push_back(mixed(i));
      if (wanted[i] > 0) sizes_.push_back(static_cast<int>(i));
      to_place_ += wanted[i];
      total_ += wanted[i] * areas_[i];
    }
    // Large blanks first, so that of equal states the one that has placed them is found first.
    std::stable_sort(sizes_.begin(), sizes_.end(), [this](int a, int b) {
      return areas_[static_cast<std::size_t>(a)] > areas_[static_cast<std::size_t>(b)];
    });
    double room = 0;
    for (const int kind : sheets) {
      const StockKind& stock = problem.stock[static_cast<std::size_t>(kind)];
      sheets_.push_back({stock.width.ticks() + kerf, stock.height.ticks() + kerf,
                         problem.limits.allow(stock.height, stock.width),
                         problem.limits.allow(stock.width, stock.height)});
      room += sheets_.back().area();
    }
    most_waste_ = options.all ? room - total_ : room;
  }

  Packing search() {
    std::vector<State> states{State{}};
    std::vector<int> used(problem_.blanks.size(), 0);
    for (int level = 0; level < to_place_ && !states.empty(); ++level) {
      if ((options_.stop && *options_.stop) || effort_ > options_.effort) break;
      candidates_.clear();
      for (std::size_t s = 0; s < states.size(); ++s) extend(states[s], static_cast<int>(s), used);
      states = chosen(states);
    }
    return built();
  }

 private:
  std::int64_t across(int blank, bool turned) const {
    const auto i = static_cast<std::size_t>(blank);
    return turned ? heights_[i] : widths_[i];
  }

  void count_used(int placing, std::vector<int>& used) const {
    std::fill(used.begin(), used.end(), 0);
    for (; placing >= 0; placing = placings_[static_cast<std::size_t>(placing)].parent) {
      ++used[static_cast<std::size_t>(placings_[static_cast<std::size_t>(placing)].blank)];
    }
  }

  // Calls use(blank, turned, width, height) for each blank that is left, sizes as seen in a sheet
  // whose strips lie along x.
  template <class Use>
  void for_each_left(const std::vector<int>& used, bool of_rows, Use use) {
    for (const int blank : sizes_) {
      const auto i = static_cast<std::size_t>(blank);
      if (used[i] >= wanted_[i]) continue;
      for (const bool turned : {false, true}) {
        if (turned && (!problem_.blanks[i].may_turn || widths_[i] == heights_[i])) break;
        const std::int64_t width = across(blank, turned), height = across(blank, !turned);
        ++effort_;
        if (of_rows) {
          use(blank, turned, height, width);
        } else {
          use(blank, turned, width, height);
        }
      }
    }
  }

  void extend(const State& state, int from, std::vector<int>& used) {
    count_used(state.placing, used);
    effort_ += 10;
    const Front& front = state.front;
    bool room_in_row = false, room_in_strip = false, room_in_sheet = false;
    if (front.sheet >= 0) {
      const SheetSize& sheet = sheets_[static_cast<std::size_t>(front.sheet)];
      const std::int64_t length = front.of_rows ? sheet.height : sheet.width;
      const std::int64_t depth = front.of_rows ? sheet.width : sheet.height;
      const bool first_row = front.row == 0;
      const bool first_column = front.column == front.strip;
      for_each_left(used, front.of_rows,
                    [&](int blank, bool turned, std::int64_t w, std::int64_t h) {
                      if (w <= front.column_end - front.column && front.top + h <= front.row_end) {
                        room_in_row = true;
                        Front next = front;
                        next.top += h;
                        add(state, from, blank, turned, Step::stack, next);
                      } else if (first_column && front.top + h <= depth &&
                                 (w <= front.column_end - front.column)) {
                        Front next = front;
                        next.top += h;
                        next.row_end = next.top;
                        add(state, from, blank, turned, Step::stack, next);
                      }
                      if (h <= front.row_end - front.row &&
                          front.column_end + w <= (first_row ? length : front.strip_end)) {
                        if (front.column_end + w <= front.strip_end) room_in_row = true;
                        Front next = front;
                        next.column = front.column_end;
                        next.column_end += w;
                        next.top = front.row + h;
                        next.strip_end = std::max(next.strip_end, next.column_end);
                        add(state, from, blank, turned, Step::column, next);
                      }
                    });
      if (!room_in_row) {
        for_each_left(used, front.of_rows,
                      [&](int blank, bool turned, std::int64_t w, std::int64_t h) {
                        if (w > front.strip_end - front.strip || front.row_end + h > depth) return;
                        room_in_strip = true;
                        Front next = front;
                        next.row = front.row_end;
                        next.row_end = next.top = next.row + h;
                        next.column = front.strip;
                        next.column_end = next.column + w;
                        add(state, from, blank, turned, Step::row, next);
                      });
      }
      if (!room_in_row && !room_in_strip) {
        for_each_left(used, front.of_rows,
                      [&](int blank, bool turned, std::int64_t w, std::int64_t h) {
                        if (front.strip_end + w > length || h > depth) return;
                        room_in_sheet = true;
                        Front next = front;
                        next.strip = next.column = front.strip_end;
                        next.strip_end = next.column_end = next.strip + w;
                        next.row = 0;
                        next.row_end = next.top = h;
                        add(state, from, blank, turned, Step::strip, next);
                      });
      }
    }
    if (!room_in_row && !room_in_strip && !room_in_sheet) open_sheet(state, from, used);
  }

  // The next sheet that holds any blank.
  void open_sheet(const State& state, int from, const std::vector<int>& used) {
    for (int s = state.front.sheet + 1; s < static_cast<int>(sheets_.size()); ++s) {
      const SheetSize& sheet = sheets_[static_cast<std::size_t>(s)];
      bool any = false;
      for (const bool of_rows : {false, true}) {
        if (of_rows ? !sheet.rows : !sheet.columns) continue;
        const std::int64_t length = of_rows ? sheet.height : sheet.width;
        const std::int64_t depth = of_rows ? sheet.width : sheet.height;
        for_each_left(used, of_rows, [&](int blank, bool turned, std::int64_t w, std::int64_t h) {
          if (w > length || h > depth) return;
          any = true;
          Front next;
          next.sheet = s;
          next.of_rows = of_rows;
          next.strip_end = next.column_end = w;
          next.row_end = next.top = h;
          add(state, from, blank, turned, of_rows ? Step::sheet_of_rows : Step::sheet_of_columns,
              next);
        });
      }
      if (any) return;
    }
  }

  // The area of all sheets before this one, or what of this one cannot be used any more.
  double lost_before(int sheet) const {
    double sum = 0;
    for (int s = 0; s < sheet; ++s) sum += sheets_[static_cast<std::size_t>(s)].area();
    return sum;
  }

  static double product(std::int64_t a, std::int64_t b) {
    return static_cast<double>(a) * static_cast<double>(b);
  }

  double consumed(const Front& front) const {
    const SheetSize& sheet = sheets_[static_cast<std::size_t>(front.sheet)];
    const std::int64_t depth = front.of_rows ? sheet.width : sheet.height;
    return lost_before(front.sheet) + product(front.strip, depth) +
           product(front.strip_end - front.strip, front.row) +
           product(front.column - front.strip, front.row_end - front.row) +
           product(front.column_end - front.column, front.top - front.row);
  }

  void add(const State& state, int from, int blank, bool turned, Step step, const Front& next) {
    effort_ += 5;
    const auto i = static_cast<std::size_t>(blank);
    const double placed = state.placed + areas_[i];
    const double waste = consumed(next) - placed;
    if (waste > most_waste_ + 0.5) return;
    Candidate candidate;
    candidate.guide = (waste / placed + least_waste) / std::pow(placed, options_.bias);
    candidate.placed = placed;
    candidate.front = next;
    candidate.key = state.key + keys_[i];
    candidate.from = from;
    candidate.blank = blank;
    candidate.step = step;
    candidate.turned = turned;
    candidates_.push_back(candidate);
  }

  std::vector<State> chosen(const std::vector<State>& states) {
    const auto before = [](const Candidate& a, const Candidate& b) {
      if (a.guide != b.guide) return a.guide < b.guide;
      if (a.from != b.from) return a.from < b.from;
      if (a.blank != b.blank) return a.blank < b.blank;
      if (a.step != b.step) return a.step < b.step;
      return a.turned < b.turned;
    };
    const std::size_t looked_at = std::min(candidates_.size(), 6 * options_.width);
    std::partial_sort(candidates_.begin(),
                      candidates_.begin() + static_cast<std::ptrdiff_t>(looked_at),
                      candidates_.end(), before);
    std::unordered_map<std::uint64_t, std::vector<std::size_t>> alike;
    std::vector<State> next;
    for (std::size_t c = 0; c < looked_at && next.size() < options_.width; ++c) {
      const Candidate& candidate = candidates_[c];
      std::vector<std::size_t>& same = alike[candidate.key];
      if (static_cast<int>(same.size()) >= most_alike) continue;
      if (std::any_of(same.begin(), same.end(),
                      [&](std::size_t other) { return next[other].front == candidate.front; })) {
        continue;
      }
      same.push_back(next.size());
      const State& state = states[static_cast<std::size_t>(candidate.from)];
      placings_.push_back({state.placing, candidate.blank, candidate.front.sheet, candidate.step,
                           candidate.turned});
      State grown;
      grown.front = candidate.front;
      grown.placed = candidate.placed;
      grown.key = candidate.key;
      grown.placing = static_cast<int>(placings_.size()) - 1;
      if (grown.placed > most_placed_) {
        most_placed_ = grown.placed;
        best_ = grown.placing;
      }
      next.push_back(grown);
    }
    return next;
  }

  static Pattern node(Kind kind, std::vector<Pattern> parts) {
    if (parts.size() == 1) return std::move(parts.front());
    Pattern pattern;
    pattern.kind = kind;
    pattern.parts = std::move(parts);
    return pattern;
  }

  Pattern blank_of(const Placing& placing) const {
    const BlankSize& size = problem_.blanks[static_cast<std::size_t>(placing.blank)];
    Pattern pattern;
    pattern.kind = Kind::blank;
    pattern.blank = placing.blank;
    pattern.turned = placing.turned;
    pattern.width = placing.turned ? size.height : size.width;
    pattern.height = placing.turned ? size.width : size.height;
    return pattern;
  }

  Packing built() const {
    std::vector<Placing> placings;
    for (int p = best_; p >= 0; p = placings_[static_cast<std::size_t>(p)].parent) {
      placings.push_back(placings_[static_cast<std::size_t>(p)]);
    }
    std::reverse(placings.begin(), placings.end());
    Packing packing;
    packing.missing = wanted_;
    packing.effort = effort_;
    for (std::size_t first = 0; first < placings.size();) {
      std::size_t last = first;
      while (last < placings.size() && placings[last].sheet == placings[first].sheet) ++last;
      add_sheet({placings.begin() + static_cast<std::ptrdiff_t>(first),
                 placings.begin() + static_cast<std::ptrdiff_t>(last)},
                packing);
      first = last;
    }
    return packing;
  }

  void add_sheet(const std::vector<Placing>& placings, Packing& packing) const {
    const bool of_rows = placings.front().step == Step::sheet_of_rows;
    const Kind along = of_rows ? Kind::rows : Kind::columns;
    const Kind other = of_rows ? Kind::columns : Kind::rows;
    std::vector<Pattern> strips, rows, columns, stack;
    const auto close_column = [&] {
      if (!stack.empty()) columns.push_back(node(other, std::exchange(stack, {})));
    };
    const auto close_row = [&] {
      close_column();
      if (!columns.empty()) rows.push_back(node(along, std::exchange(columns, {})));
    };
    const auto close_strip = [&] {
      close_row();
      if (!rows.empty()) strips.push_back(node(other, std::exchange(rows, {})));
    };
    for (const Placing& placing : placings) {
      if (placing.step <= Step::strip) close_strip();
      if (placing.step == Step::row) close_row();
      if (placing.step == Step::column) close_column();
      stack.push_back(blank_of(placing));
    }
    close_strip();
    const int kind = kinds_[static_cast<std::size_t>(placings.front().sheet)];
    const StockKind& stock = problem_.stock[static_cast<std::size_t>(kind)];
    Pattern pattern =
        pushed_together(node(along, std::move(strips)), stock.width, stock.height, problem_.limits);
    for (const Placing& placing : placings)
      --packing.missing[static_cast<std::size_t>(placing.blank)];
    packing.sheets.push_back({kind, std::move(pattern)});
  }

  const NestingProblem& problem_;
  const BeamOptions& options_;
  const std::vector<int>& wanted_;
  const std::vector<int>& kinds_;
  std::vector<std::int64_t> widths_, heights_;
  std::vector<double> areas_;
  std::vector<std::uint64_t> keys_;
  std::vector<int> sizes_;
  std::vector<SheetSize> sheets_;
  int to_place_ = 0;
  double total_ = 0, most_waste_ = 0;
  std::vector<Candidate> candidates_;
  std::vector<Placing> placings_;
  double most_placed_ = 0;
  int best_ = -1;
  std::int64_t effort_ = 0;
};

}  // namespace

bool Packing::complete() const {
  return std::all_of(missing.begin(), missing.end(), [](int count) { return count <= 0; });
}

Packing packed(const NestingProblem& problem, const std::vector<int>& wanted,
               const std::vector<int>& sheets, const BeamOptions& options) {
  return Beam(problem, wanted, sheets, options).search();
}

}  // namespace mullion
