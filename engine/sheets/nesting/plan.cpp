#include "engine/sheets/nesting/plan.h"

#include <algorithm>
#include <limits>

#include "engine/sheets/nesting/fill.h"

namespace mullion {
namespace {

void largest_waste(const Pattern& pattern, double& largest) {
  if (pattern.kind == Pattern::Kind::waste &&
      std::min(pattern.width, pattern.height) >= shorter_side_of_offcut &&
      std::max(pattern.width, pattern.height) >= longer_side_of_offcut) {
    largest = std::max(largest, to_inches(pattern.width) * to_inches(pattern.height));
  }
  for (const Pattern& part : pattern.parts) largest_waste(part, largest);
}

void count_settings(const Pattern& pattern, Length& stop, int& settings) {
  if (pattern.parts.empty()) return;
  for (std::size_t i = 0; i + 1 < pattern.parts.size(); ++i) {
    const Pattern& part = pattern.parts[i];
    const Length size = pattern.kind == Pattern::Kind::columns ? part.width : part.height;
    if (size != stop) ++settings;
    stop = size;
  }
  for (const Pattern& part : pattern.parts) count_settings(part, stop, settings);
}

}  // namespace

bool NestingPlan::finished() const {
  return std::all_of(wanted.begin(), wanted.end(), [](int count) { return count <= 0; });
}

NestingPlan empty_plan(const NestingProblem& problem) {
  NestingPlan plan;
  plan.wanted = problem.demands;
  for (const StockKind& kind : problem.stock) {
    plan.on_hand.push_back(kind.on_hand.value_or(std::numeric_limits<int>::max() / 2));
  }
  return plan;
}

void cut(NestingPlan& plan, CutSheet sheet) {
  const std::vector<int> counts = counts_of(sheet.pattern, plan.wanted.size());
  for (std::size_t i = 0; i < counts.size(); ++i) plan.wanted[i] -= counts[i];
  --plan.on_hand[static_cast<std::size_t>(sheet.stock)];
  plan.sheets.push_back(std::move(sheet));
}

void undo(NestingPlan& plan, std::size_t sheet) {
  const CutSheet& gone = plan.sheets[sheet];
  const std::vector<int> counts = counts_of(gone.pattern, plan.wanted.size());
  for (std::size_t i = 0; i < counts.size(); ++i) plan.wanted[i] += counts[i];
  ++plan.on_hand[static_cast<std::size_t>(gone.stock)];
  plan.sheets.erase(plan.sheets.begin() + static_cast<std::ptrdiff_t>(sheet));
}

double usefulness_of_offcuts(const std::vector<CutSheet>& sheets) {
  double sum = 0;
  for (const CutSheet& sheet : sheets) {
    double largest = 0;
    largest_waste(sheet.pattern, largest);
    sum += largest / 1000 * (largest / 1000);
  }
  return sum;
}

int stop_settings(const Pattern& pattern) {
  Length stop;
  int settings = 0;
  count_settings(pattern, stop, settings);
  return settings;
}

PlanScore score(const NestingPlan& plan, const NestingProblem& problem) {
  PlanScore result;
  for (std::size_t i = 0; i < plan.wanted.size(); ++i) {
    const BlankSize& blank = problem.blanks[i];
    result.missing += plan.wanted[i] * to_inches(blank.width) * to_inches(blank.height);
  }
  for (const CutSheet& sheet : plan.sheets) {
    result.cost += problem.stock[static_cast<std::size_t>(sheet.stock)].price;
    result.settings += stop_settings(sheet.pattern);
  }
  result.useless = -usefulness_of_offcuts(plan.sheets);
  return result;
}

}  // namespace mullion
