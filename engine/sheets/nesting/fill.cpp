#include "engine/sheets/nesting/fill.h"

#include <algorithm>

namespace mullion {
namespace {

constexpr int most_attempts = 6;
constexpr int most_gaps_filled = 4;

void count(const Pattern& pattern, std::vector<int>& counts) {
  if (pattern.kind == Pattern::Kind::blank) ++counts[static_cast<std::size_t>(pattern.blank)];
  for (const Pattern& part : pattern.parts) count(part, counts);
}

// Turns blanks into waste once no more of them are wanted.
void drop_surplus(Pattern& pattern, std::vector<int>& wanted) {
  if (pattern.kind == Pattern::Kind::blank &&
      --wanted[static_cast<std::size_t>(pattern.blank)] < 0) {
    pattern.kind = Pattern::Kind::waste;
  }
  for (Pattern& part : pattern.parts) drop_surplus(part, wanted);
}

void collect_waste(Pattern& pattern, std::vector<Pattern*>& waste) {
  if (pattern.kind == Pattern::Kind::waste) waste.push_back(&pattern);
  for (Pattern& part : pattern.parts) collect_waste(part, waste);
}

double area(const Pattern& pattern) {
  return static_cast<double>(pattern.width.ticks()) * static_cast<double>(pattern.height.ticks());
}

std::vector<int> remainder(const std::vector<int>& wanted, const std::vector<int>& counts) {
  std::vector<int> left(wanted.size());
  std::transform(wanted.begin(), wanted.end(), counts.begin(), left.begin(), std::minus<>());
  return left;
}

// The sizes that are still wanted and fit into the gap, each with its value.
std::vector<std::int64_t> values_in(const Pattern& gap, const PatternSearch& search,
                                    const std::vector<std::int64_t>& values,
                                    const std::vector<int>& left) {
  std::vector<std::int64_t> fitting(values.size(), 0);
  for (std::size_t i = 0; i < values.size(); ++i) {
    const BlankSize& blank = search.blanks()[i];
    const bool upright = blank.width <= gap.width && blank.height <= gap.height;
    const bool lying = blank.may_turn && blank.height <= gap.width && blank.width <= gap.height;
    if (left[i] > 0 && (upright || lying)) fitting[i] = values[i];
  }
  return fitting;
}

bool fill_one_gap(Pattern& pattern, const PatternSearch& search,
                  const std::vector<std::int64_t>& values, const std::vector<int>& wanted,
                  std::int64_t& effort) {
  std::vector<int> left = remainder(wanted, counts_of(pattern, wanted.size()));
  std::vector<Pattern*> gaps;
  collect_waste(pattern, gaps);
  std::stable_sort(gaps.begin(), gaps.end(),
                   [](const Pattern* a, const Pattern* b) { return area(*a) > area(*b); });
  for (Pattern* gap : gaps) {
    const std::vector<std::int64_t> fitting = values_in(*gap, search, values, left);
    if (std::all_of(fitting.begin(), fitting.end(), [](auto value) { return value <= 0; }))
      continue;
    const PatternSearch inside = search.within(gap->width, gap->height, fitting);
    effort += inside.effort();
    BestPattern best = inside.find(fitting);
    if (best.value == 0) continue;
    drop_surplus(best.pattern, left);
    *gap = std::move(best.pattern);
    pattern = search.pushed_together(pattern);
    return true;
  }
  return false;
}

}  // namespace

std::vector<int> counts_of(const Pattern& pattern, std::size_t sizes) {
  std::vector<int> counts(sizes, 0);
  count(pattern, counts);
  return counts;
}

Pattern wanted_part(const PatternSearch& search, Pattern pattern, std::vector<int> wanted) {
  drop_surplus(pattern, wanted);
  return search.pushed_together(pattern);
}

Fill fill_sheet(const PatternSearch& search, const std::vector<std::int64_t>& values,
                const std::vector<int>& wanted, std::int64_t& effort) {
  std::vector<std::int64_t> lowered = values;
  for (std::size_t i = 0; i < lowered.size(); ++i) {
    if (wanted[i] <= 0) lowered[i] = 0;
  }
  Fill best;
  best.counts.assign(wanted.size(), 0);
  for (int attempt = 0; attempt < most_attempts; ++attempt) {
    effort += search.effort();
    Pattern pattern = search.find(lowered).pattern;
    const std::vector<int> asked = counts_of(pattern, wanted.size());
    bool surplus = false;
    for (std::size_t i = 0; i < wanted.size(); ++i) {
      if (asked[i] <= wanted[i]) continue;
      surplus = true;
      lowered[i] = lowered[i] * (wanted[i] + asked[i]) / (std::int64_t{2} * asked[i]);
    }
    if (surplus) {
      pattern = wanted_part(search, std::move(pattern), wanted);
      for (int gap = 0; gap < most_gaps_filled; ++gap) {
        if (!fill_one_gap(pattern, search, values, wanted, effort)) break;
      }
    }
    const std::vector<int> counts = counts_of(pattern, wanted.size());
    std::int64_t value = 0;
    for (std::size_t i = 0; i < counts.size(); ++i) value += counts[i] * values[i];
    if (value > best.value || attempt == 0) best = {std::move(pattern), counts, value};
    if (!surplus) break;
  }
  return best;
}

}  // namespace mullion
