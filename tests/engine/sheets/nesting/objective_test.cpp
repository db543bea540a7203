// Least cost, then the most useful off-cuts, then the fewest settings of the stop: what the plans
// of a few blanks come to, beside the best of all plans, tried one by one.

#include <array>
#include <catch2/catch.hpp>
#include <map>
#include <random>

#include "engine/sheets/nesting/nesting.h"

using namespace mullion;

namespace {

constexpr int unit = 4;  // inches to a unit: an off-cut worth keeping is 2 x 3 units or more
using Counts = std::array<int, 3>;

// The stops of a pattern's cuts in their order, as far as that matters to what comes before and
// after, and its largest left-over rectangle worth keeping, in square inches.
struct Way {
  int first = 0, last = 0, settings = 0;
  double offcut = 0;

  auto operator<=>(const Way&) const = default;
};

Way joined(const Way& a, const Way& b) {
  const double offcut = std::max(a.offcut, b.offcut);
  if (a.settings == 0) return {b.first, b.last, b.settings, offcut};
  if (b.settings == 0) return {a.first, a.last, a.settings, offcut};
  return {a.first, b.last, a.settings + b.settings - (a.last == b.first ? 1 : 0), offcut};
}

Way one_cut(int stop) {
  return {stop, stop, 1, 0};
}

double offcut_of(int width, int height) {
  const int shorter = std::min(width, height) * unit, longer = std::max(width, height) * unit;
  return shorter >= 8 && longer >= 10 ? static_cast<double>(shorter) * longer : 0;
}

using Ways = std::map<std::tuple<int, int, double>, int>;  // first, last, off-cut: settings

void keep_best(Ways& ways, const Way& way) {
  const auto [at, is_new] = ways.emplace(std::tuple(way.first, way.last, way.offcut), way.settings);
  if (!is_new) at->second = std::min(at->second, way.settings);
}

std::vector<Way> list(const Ways& ways) {
  std::vector<Way> out;
  for (const auto& [key, settings] : ways) {
    out.push_back({std::get<0>(key), std::get<1>(key), settings, std::get<2>(key)});
  }
  return out;
}

// Every way to cut exactly these blanks out of a rectangle.
class EveryWay {
 public:
  explicit EveryWay(std::vector<std::array<int, 2>> sizes) : sizes_(std::move(sizes)) {}

  const std::vector<Way>& of(int width, int height, const Counts& counts) {
    const auto key = std::tuple(width, height, counts);
    if (const auto known = known_.find(key); known != known_.end()) return known->second;
    if (area_of(counts) > width * height) return known_[key] = {};
    Ways ways;
    if (counts == Counts{}) keep_best(ways, {0, 0, 0, offcut_of(width, height)});
    for (std::size_t i = 0; i < sizes_.size(); ++i) {
      Counts alone{};
      alone[i] = 1;
      const auto [w, h] = sizes_[i];
      const bool fits = (w == width && h == height) || (h == width && w == height);
      if (counts == alone && fits) keep_best(ways, {});
    }
    if (counts != Counts{}) {
      for (const bool columns : {true, false}) {
        add_parts(width, height, columns, columns ? width : height, counts, {}, {}, false, ways);
      }
    }
    return known_[key] = list(ways);
  }

 private:
  int area_of(const Counts& counts) const {
    int area = 0;
    for (std::size_t i = 0; i < sizes_.size(); ++i) {
      area += counts[i] * sizes_[i][0] * sizes_[i][1];
    }
    return area;
  }

  // Parts from the first to the last: all cuts between them come before those within them. Two
  // parts of waste are never better than one.
  void add_parts(int width, int height, bool columns, int left, const Counts& counts,
                 const Way& cuts, const Way& within, bool has_waste, Ways& ways) {
    const int whole = columns ? width : height;
    for_each_part(counts, [&](const Counts& part, const Counts& rest) {
      const bool waste = part == Counts{};
      if (waste && has_waste) return;
      for (int size = 1; size <= left; ++size) {
        const bool last = size == left;
        if (size == whole || (last && rest != Counts{})) continue;
        const auto& inner = columns ? of(size, height, part) : of(width, size, part);
        for (const Way& way : std::vector<Way>(inner)) {
          const Way so_far = joined(within, way);
          if (last) {
            keep_best(ways, joined(cuts, so_far));
          } else {
            add_parts(width, height, columns, left - size, rest, joined(cuts, one_cut(size)),
                      so_far, has_waste || waste, ways);
          }
        }
      }
    });
  }

  template <class Use>
  static void for_each_part(const Counts& counts, Use use) {
    for (int a = 0; a <= counts[0]; ++a) {
      for (int b = 0; b <= counts[1]; ++b) {
        for (int c = 0; c <= counts[2]; ++c) {
          use(Counts{a, b, c}, Counts{counts[0] - a, counts[1] - b, counts[2] - c});
        }
      }
    }
  }

  std::vector<std::array<int, 2>> sizes_;
  std::map<std::tuple<int, int, Counts>, std::vector<Way>> known_;
};

struct Objective {
  std::int64_t cost = 0;
  double useless = 0;
  int settings = 0;
  auto operator<=>(const Objective&) const = default;
};

struct Sheet {
  int width, height;  // units
  std::int64_t price;
};

// Over every division of the blanks among sheets.
Objective best_of(EveryWay& every, const std::vector<Sheet>& sheets, const Counts& counts,
                  std::map<Counts, Objective>& known) {
  if (counts == Counts{}) return {};
  if (const auto at = known.find(counts); at != known.end()) return at->second;
  Objective best{INT64_MAX / 4, 0, 0};
  for (int a = 0; a <= counts[0]; ++a) {
    for (int b = 0; b <= counts[1]; ++b) {
      for (int c = 0; c <= counts[2]; ++c) {
        const Counts part{a, b, c};
        if (part == Counts{}) continue;
        const Objective rest =
            best_of(every, sheets, {counts[0] - a, counts[1] - b, counts[2] - c}, known);
        for (const Sheet& sheet : sheets) {
          for (const Way& way : every.of(sheet.width, sheet.height, part)) {
            const double thousands = way.offcut / 1000;
            best = std::min(best, {rest.cost + sheet.price, rest.useless - thousands * thousands,
                                   rest.settings + way.settings});
          }
        }
      }
    }
  }
  return known[counts] = best;
}

Objective objective_of(const Nesting& nesting) {
  Objective out{nesting.cost, -usefulness_of_offcuts(nesting.sheets), 0};
  for (const CutSheet& sheet : nesting.sheets) out.settings += stop_settings(sheet.pattern);
  return out;
}

}  // namespace

TEST_CASE("plans of a few blanks have the least cost, then the best off-cuts, then few settings") {
  const std::vector<Sheet> sheets = {{4, 6, 500}, {6, 8, 900}};
  std::mt19937 random(12);
  constexpr int rounds = 60;
  int cheapest = 0, most_useful = 0, fewest_settings = 0;
  for (int round = 0; round < rounds; ++round) {
    NestingProblem problem;
    for (const Sheet& s : sheets) {
      problem.stock.push_back({inches(unit * s.width), inches(unit * s.height), s.price, {}});
    }
    std::vector<std::array<int, 2>> sizes;
    Counts counts{};
    for (std::size_t i = 0; i < 3; ++i) {
      sizes.push_back({2 + static_cast<int>(random() % 3), 2 + static_cast<int>(random() % 4)});
      counts[i] = 1 + static_cast<int>(random() % (i == 0 ? 2 : 1));
      problem.blanks.push_back({inches(unit * sizes[i][0]), inches(unit * sizes[i][1])});
      problem.demands.push_back(counts[i]);
    }
    EveryWay every(sizes);
    std::map<Counts, Objective> known;
    const Objective best = best_of(every, sheets, counts, known);
    const Objective found = objective_of(nest(problem));
    INFO("round " << round << ": " << found.cost << ' ' << found.useless << ' ' << found.settings
                  << ", the best " << best.cost << ' ' << best.useless << ' ' << best.settings);
    const bool by_cost = found.cost == best.cost;
    const bool by_offcut = by_cost && found.useless <= best.useless + 1e-9;
    const bool by_settings = by_offcut && found.settings <= best.settings;
    CHECK(found.cost >= best.cost);
    if (by_cost) CHECK(found.useless >= best.useless - 1e-9);
    if (by_offcut) CHECK(found.settings >= best.settings);
    cheapest += by_cost ? 1 : 0;
    most_useful += by_offcut ? 1 : 0;
    fewest_settings += by_settings ? 1 : 0;
    if (!by_settings) UNSCOPED_INFO("not the best: round " << round);
  }
  CAPTURE(cheapest, most_useful, fewest_settings);
  CHECK(cheapest >= rounds * 95 / 100);
  CHECK(most_useful >= rounds * 9 / 10);
  CHECK(fewest_settings >= rounds * 9 / 10);
}
