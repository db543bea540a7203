#include "engine/sheets/nesting/fewer_sheets.h"

#include <algorithm>
#include <future>
#include <numeric>
#include <utility>

#include "engine/sheets/nesting/beam.h"
#include "engine/sheets/nesting/fill.h"
#include "engine/sheets/nesting/tidy.h"

namespace mullion {
namespace {

// What takes as long as a cell of a value table; measured.
constexpr std::int64_t divisions_per_cell = 16;
constexpr std::int64_t states_per_cell = 3;
constexpr std::int64_t most_divisions = 60'000'000;
constexpr double biases[] = {1.0, 2.0};
constexpr std::size_t least_width_threaded = 100;
constexpr std::size_t most_sheets_regrouped = 12;
constexpr int most_blanks_divided = 16;

int sum(const std::vector<int>& counts) {
  return std::accumulate(counts.begin(), counts.end(), 0);
}

}  // namespace

FewerSheets::FewerSheets(const NestingProblem& problem, const std::atomic<bool>* stop)
    : problem_(problem), stop_(stop) {}

double FewerSheets::area(int stock) const {
  const StockKind& kind = problem_.stock[static_cast<std::size_t>(stock)];
  return static_cast<double>(kind.width.ticks()) * static_cast<double>(kind.height.ticks());
}

Division FewerSheets::divide(const std::vector<int>& wanted, const std::vector<int>& sheets,
                             double least_area, std::vector<CutSheet>& found) {
  if (sum(wanted) > most_blanks_divided) return Division::open;
  std::int64_t effort = 0;
  const Division division =
      divided(problem_, wanted, sheets, least_area, most_divisions, effort, found);
  effort_ += effort / divisions_per_cell;
  return division;
}

std::vector<CutSheet> FewerSheets::pack_most(const std::vector<int>& wanted,
                                             std::vector<int> sheets, std::size_t width, bool whole,
                                             std::int64_t most_effort) {
  std::vector<CutSheet> best;
  double most = 0;
  const double all = area_of(problem_.blanks, wanted);
  const std::int64_t end = effort_ + most_effort;
  for (const bool small_first : {false, true}) {
    std::stable_sort(sheets.begin(), sheets.end(), [&](int a, int b) {
      return small_first ? area(a) < area(b) : area(a) > area(b);
    });
    for (Packing& packing : packings(wanted, sheets, width, whole, end - effort_)) {
      effort_ += packing.effort / states_per_cell;
      const double held = all - area_of(problem_.blanks, packing.missing);
      const bool sound = std::all_of(
          packing.sheets.begin(), packing.sheets.end(),
          [&](const CutSheet& sheet) { return can_be_cut(sheet.pattern, problem_.limits); });
      if (!sound) continue;
      patterns_.insert(patterns_.end(), packing.sheets.begin(), packing.sheets.end());
      if (held <= most) continue;
      most = held;
      best = std::move(packing.sheets);
    }
    if (most >= all - 0.5 || area(sheets.front()) == area(sheets.back())) break;
  }
  return best;
}

// By each bias. Both are always waited for, so that the plan does not hang on which is quicker.
std::vector<Packing> FewerSheets::packings(const std::vector<int>& wanted,
                                           const std::vector<int>& sheets, std::size_t width,
                                           bool whole, std::int64_t most_effort) const {
  const auto by = [&](double bias) {
    BeamOptions options;
    options.width = width;
    options.bias = bias;
    options.effort = most_effort * states_per_cell / static_cast<int>(std::size(biases));
    options.all = whole;
    options.stop = stop_;
    return packed(problem_, wanted, sheets, options);
  };
  const auto policy = width < least_width_threaded ? std::launch::deferred : std::launch::async;
  std::future<Packing> other = std::async(policy, by, biases[1]);
  std::vector<Packing> all;
  all.push_back(by(biases[0]));
  all.push_back(other.get());
  return all;
}

std::vector<CutSheet> FewerSheets::patterns() {
  return std::exchange(patterns_, {});
}

std::optional<std::vector<CutSheet>> FewerSheets::pack(const std::vector<int>& wanted,
                                                       std::vector<int> sheets, std::size_t width,
                                                       std::int64_t most_effort) {
  std::vector<CutSheet> found = pack_most(wanted, std::move(sheets), width, true, most_effort);
  std::vector<int> left = wanted;
  for (const CutSheet& sheet : found) {
    const std::vector<int> counts = counts_of(sheet.pattern, left.size());
    for (std::size_t i = 0; i < left.size(); ++i) left[i] -= counts[i];
  }
  if (sum(left) > 0) return std::nullopt;
  return found;
}

// Those that waste much tend to come first.
std::vector<std::size_t> FewerSheets::wasteful_first(const NestingPlan& plan,
                                                     std::mt19937& random) const {
  std::vector<std::pair<double, std::size_t>> keys;
  for (std::size_t s = 0; s < plan.sheets.size(); ++s) {
    const CutSheet& sheet = plan.sheets[s];
    const double used = area_of(problem_.blanks, counts_of(sheet.pattern, problem_.blanks.size()));
    const double waste = 1.0 - used / area(sheet.stock);
    keys.emplace_back((waste + 0.05) * static_cast<double>(random() % 1024 + 1), s);
  }
  std::stable_sort(keys.begin(), keys.end(),
                   [](const auto& a, const auto& b) { return a.first > b.first; });
  std::vector<std::size_t> order;
  for (const auto& [key, sheet] : keys) order.push_back(sheet);
  return order;
}

// These sheets without one of them, or with a cheaper one for it, that have room for that area: the
// ones with the most room.
std::optional<std::vector<int>> FewerSheets::cheaper(const std::vector<int>& sheets,
                                                     const std::vector<int>& on_hand,
                                                     double needed) const {
  double room = 0;
  for (const int sheet : sheets) room += area(sheet);
  double most = needed;
  std::size_t gone = sheets.size();
  int instead = -1;
  for (std::size_t s = 0; s < sheets.size(); ++s) {
    const std::int64_t price = problem_.stock[static_cast<std::size_t>(sheets[s])].price;
    const double without = room - area(sheets[s]);
    if (price > 0 && without > most) {
      most = without;
      gone = s;
      instead = -1;
    }
    for (std::size_t kind = 0; kind < problem_.stock.size(); ++kind) {
      if (problem_.stock[kind].price >= price || on_hand[kind] == 0) continue;
      const double with = without + area(static_cast<int>(kind));
      if (with <= most) continue;
      most = with;
      gone = s;
      instead = static_cast<int>(kind);
    }
  }
  if (gone == sheets.size()) return std::nullopt;
  std::vector<int> result = sheets;
  result.erase(result.begin() + static_cast<std::ptrdiff_t>(gone));
  if (instead >= 0) result.push_back(instead);
  return result;
}

std::optional<NestingPlan> FewerSheets::regrouped(const NestingPlan& plan, std::size_t width,
                                                  std::mt19937& random, std::int64_t most_effort) {
  effort_ += static_cast<std::int64_t>(100 * plan.sheets.size());
  auto more = static_cast<int>(random() % 3);
  std::vector<std::size_t> chosen;
  std::vector<int> kinds, freed(problem_.blanks.size(), 0);
  std::optional<std::vector<int>> sheets;
  for (const std::size_t s : wasteful_first(plan, random)) {
    if (chosen.size() == most_sheets_regrouped) break;
    const CutSheet& sheet = plan.sheets[s];
    chosen.push_back(s);
    kinds.push_back(sheet.stock);
    const std::vector<int> counts = counts_of(sheet.pattern, freed.size());
    for (std::size_t i = 0; i < freed.size(); ++i) freed[i] += counts[i];
    if (auto found = cheaper(kinds, plan.on_hand, area_of(problem_.blanks, freed))) {
      sheets = std::move(found);
      if (more-- == 0) break;
    }
  }
  if (!sheets) return std::nullopt;
  std::vector<CutSheet> packing;
  const Division division = divide(freed, *sheets, area_of(problem_.blanks, freed), packing);
  if (division == Division::impossible) return std::nullopt;
  if (division == Division::open) {
    auto found = pack(freed, *sheets, width, most_effort);
    if (!found) return std::nullopt;
    packing = std::move(*found);
  }
  NestingPlan result = plan;
  std::sort(chosen.rbegin(), chosen.rend());
  for (const std::size_t s : chosen) undo(result, s);
  for (CutSheet& sheet : packing) cut(result, std::move(sheet));
  return result;
}

}  // namespace mullion
