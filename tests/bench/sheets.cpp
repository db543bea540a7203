#include "tests/bench/sheets.h"

#include <sys/resource.h>

#include <algorithm>
#include <cstdio>
#include <random>

#include "engine/sheets/nesting/nesting.h"
#include "engine/sheets/plan/sheet_cutter.h"
#include "tests/bench/stopwatch.h"
#include "tests/engine/sheets/guillotine/gcut.h"
#include "tests/engine/sheets/nesting/boards.h"

using namespace mullion;

namespace {

void solve(int first, int last) {
  for (const bool may_turn : {false, true}) {
    for (int number = first; number <= last; ++number) {
      const GcutInstance instance = read_gcut(number, may_turn);
      PatternSearch(instance.width, instance.height, {}, instance.blanks).find(instance.values);
    }
  }
}

// Sizes of pictures' mats that are sold ready-made, in inches; common practice.
constexpr int ready_made_sizes[][2] = {{5, 7},   {8, 10},  {9, 12},  {10, 20}, {11, 14},
                                       {12, 12}, {12, 16}, {14, 18}, {16, 16}, {16, 20},
                                       {18, 24}, {20, 24}, {22, 28}, {24, 30}};

enum class Sizes { any, ready_made };

// One board's share of a week: 10 sizes of 1 to 9 blanks each, 50 on average.
NestingProblem board_of_a_week(std::mt19937& random, Sizes sizes) {
  NestingProblem problem;
  problem.stock = {{inches(32), inches(40), 1200, {}}, {inches(40), inches(60), 2600, {}}};
  problem.limits = sheet_cutter(default_cutter()).limits;
  const bool may_turn = random() % 6 != 0;
  for (int i = 0; i < 10; ++i) {
    if (sizes == Sizes::any) {  // sides from 6 to 24 in by quarters
      const auto side = [&random] { return sixty_fourths(16 * (24 + random() % 73)); };
      const Length width = side();
      problem.blanks.push_back({width, side(), may_turn});
    } else {
      const auto& [width, height] = ready_made_sizes[random() % std::size(ready_made_sizes)];
      problem.blanks.push_back({inches(width), inches(height), may_turn});
    }
    problem.demands.push_back(static_cast<int>(1 + random() % 9));
  }
  return problem;
}

void weeks(const char* name, Sizes sizes) {
  constexpr int weeks = 10, boards = 6;
  double gaps = 0, worst = 0, slowest = 0;
  int proved = 0;
  for (int week = 0; week < weeks; ++week) {
    std::mt19937 random(static_cast<std::uint32_t>(week));
    std::int64_t cost = 0, bound = 0;
    const auto time = bench::time_of(
        [&] {
          for (int board = 0; board < boards; ++board) {
            NestingOptions options;
            options.patience /= boards;  // as the boards of a sheet plan share it
            const Nesting nesting = nest(board_of_a_week(random, sizes), options);
            cost += nesting.cost;
            bound += nesting.bound;
            if (nesting.cost == nesting.bound) ++proved;
          }
        },
        1);
    const double gap = static_cast<double>(cost - bound) / static_cast<double>(bound);
    gaps += gap;
    worst = std::max(worst, gap);
    slowest = std::max(slowest, time.best);
  }
  std::printf(
      "%d weeks of about 300 blanks, 60 sizes, 6 boards (%s): above the bound %.2f %% on average, "
      "%.2f %% at worst; %d of %d boards proved the cheapest; slowest week %.2f s (goal 5 s)\n",
      weeks, name, 100 * gaps / weeks, 100 * worst, proved, weeks * boards, slowest / 1000);
}

// Published instances (tests/data/boards/SOURCE.md), every `step`th of a file.
void published(const char* file, bool may_turn, std::size_t step) {
  const std::vector<BoardInstance> instances = read_boards(file, may_turn);
  std::int64_t cost = 0, best = 0;
  double gaps = 0, slowest = 0, all = 0;
  int count = 0;
  for (std::size_t i = 0; i < instances.size(); i += step) {
    Nesting nesting;
    const double time = bench::time_of([&] { nesting = nest(instances[i].problem); }, 1).best;
    cost += nesting.cost;
    best += instances[i].best;
    gaps += static_cast<double>(nesting.cost - nesting.bound) / static_cast<double>(nesting.bound);
    slowest = std::max(slowest, time);
    all += time;
    ++count;
  }
  std::printf(
      "%s, %s, %d instances: cost %lld, best published %lld; above the bound %.3f %% on average; "
      "%.2f s on average, %.2f s at worst\n",
      file, may_turn ? "turning" : "not turning", count, static_cast<long long>(cost),
      static_cast<long long>(best), 100 * gaps / count, all / count / 1000, slowest / 1000);
}

void peak_memory() {
  rusage usage{};
  ::getrusage(RUSAGE_SELF, &usage);
  std::printf("  peak memory so far %.0f MB\n", static_cast<double>(usage.ru_maxrss) / 1024);
}

}  // namespace

void bench::sheets() {
  std::printf("gcut1 to gcut12, both ways, all 24 exact            %9.2f ms  (goal 300)\n",
              time_of([] { solve(1, 12); }).best);
  std::printf("gcut13, both ways, exact                            %9.2f ms  (goal 10000)\n",
              time_of([] { solve(13, 13); }, 1).best);
  peak_memory();
  weeks("any sizes", Sizes::any);
  weeks("ready-made sizes", Sizes::ready_made);
  published("classes.txt", true, 5);
  for (const bool may_turn : {false, true}) {
    published("gcutd_one_sheet_turning.txt", may_turn, 1);
  }
  published("gcutd_three_sheets_fixed.txt", false, 1);
  published("gcutd_three_sheets_turning.txt", true, 1);
  peak_memory();
}
