#include "engine/sheets/nesting/nesting.h"

#include <catch2/catch.hpp>
#include <map>
#include <random>

#include "engine/sheets/nesting/column_generation.h"
#include "engine/sheets/nesting/combinations.h"
#include "tests/engine/sheets/nesting/check_plan.h"
#include "tests/how_many.h"

using namespace mullion;

namespace {

Length units(std::int64_t n) {
  return Length::from_ticks(n);
}

using Subsets = std::vector<bool>;  // indexed by sets of pieces

// Which sets of pieces can be cut from a rectangle, by trying every whole cut.
class EverySet {
 public:
  explicit EverySet(std::vector<BlankSize> pieces) : pieces_(std::move(pieces)) {}

  const Subsets& from(std::int64_t width, std::int64_t height) {
    const auto key = std::make_pair(width, height);
    if (const auto known = known_.find(key); known != known_.end()) return known->second;
    Subsets found(std::size_t{1} << pieces_.size(), false);
    found[0] = true;
    for (std::size_t i = 0; i < pieces_.size(); ++i) {
      const BlankSize& piece = pieces_[i];
      const bool upright = piece.width == units(width) && piece.height == units(height);
      const bool lying =
          piece.may_turn && piece.height == units(width) && piece.width == units(height);
      if (upright || lying) found[std::size_t{1} << i] = true;
    }
    for (std::int64_t x = 1; x < width; ++x) join(found, from(x, height), from(width - x, height));
    for (std::int64_t y = 1; y < height; ++y) join(found, from(width, y), from(width, height - y));
    return known_[key] = found;
  }

 private:
  static void join(Subsets& found, const Subsets& first, const Subsets& second) {
    for (std::size_t a = 0; a < first.size(); ++a) {
      for (std::size_t b = 0; first[a] && b < second.size(); ++b) {
        if (second[b] && (a & b) == 0) found[a | b] = true;
      }
    }
  }

  std::vector<BlankSize> pieces_;
  std::map<std::pair<std::int64_t, std::int64_t>, Subsets> known_;
};

std::int64_t least_cost(const NestingProblem& problem) {
  std::vector<BlankSize> pieces;
  for (std::size_t i = 0; i < problem.blanks.size(); ++i) {
    pieces.insert(pieces.end(), static_cast<std::size_t>(problem.demands[i]), problem.blanks[i]);
  }
  EverySet every(pieces);
  constexpr std::int64_t never = 1'000'000;
  std::vector<std::int64_t> cost(std::size_t{1} << pieces.size(), never);
  cost[0] = 0;
  for (std::size_t made = 0; made < cost.size(); ++made) {
    for (const StockKind& kind : problem.stock) {
      const Subsets& sets = every.from(kind.width.ticks(), kind.height.ticks());
      for (std::size_t set = 1; set < sets.size(); ++set) {
        if (!sets[set] || (made & set) != 0) continue;
        cost[made | set] = std::min(cost[made | set], cost[made] + kind.price);
      }
    }
  }
  return cost.back();
}

const StockKind standard_sheet{inches(32), inches(40), 1200, {}};
const StockKind oversize_sheet{inches(40), inches(60), 2600, {}};

}  // namespace

TEST_CASE("nine in ten plans of a few blanks are the cheapest, and the bound is never above that") {
  std::mt19937 random(3);
  const auto draw = [&random](std::uint32_t from, std::uint32_t to) {
    return static_cast<std::int64_t>(from + random() % (to - from + 1));
  };
  int best = 0;
  constexpr int rounds = 60;
  for (int round = 0; round < rounds; ++round) {
    NestingProblem problem;
    problem.stock = {{units(draw(6, 9)), units(draw(6, 9)), draw(5, 9), {}},
                     {units(draw(8, 11)), units(draw(8, 11)), draw(8, 14), {}}};
    for (int left = 6; left > 0;) {
      const int count = static_cast<int>(draw(1, std::min(left, 3)));
      problem.blanks.push_back({units(draw(2, 6)), units(draw(2, 6)), draw(0, 1) == 1});
      problem.demands.push_back(count);
      left -= count;
    }
    NestingOptions options;
    options.effort = 5'000'000;
    const Nesting nesting = nest(problem, options);
    INFO("round " << round);
    check_plan(problem, nesting);
    const std::int64_t cheapest = least_cost(problem);
    REQUIRE(nesting.bound <= cheapest);
    REQUIRE(nesting.cost >= cheapest);
    if (nesting.cost == cheapest) ++best;
  }
  CHECK(10 * best >= 9 * rounds);
}

TEST_CASE("where one sheet is all there is, no way of cutting leaves out less") {
  std::mt19937 random(17);
  const auto draw = [&random](std::uint32_t from, std::uint32_t to) {
    return static_cast<std::int64_t>(from + random() % (to - from + 1));
  };
  for (int round = test::how_many(40, 200); round > 0; --round) {
    NestingProblem problem;
    problem.stock = {{units(draw(6, 10)), units(draw(6, 10)), 1, 1}};
    problem.limits.kerf = units(0);
    std::vector<BlankSize> pieces;
    for (int left = 8; left > 0;) {  // each size at most so many times
      const int count = static_cast<int>(draw(1, std::min(left, 3)));
      problem.blanks.push_back({units(draw(1, 6)), units(draw(2, 6)), draw(0, 1) == 1});
      problem.demands.push_back(count);
      pieces.insert(pieces.end(), static_cast<std::size_t>(count), problem.blanks.back());
      left -= count;
    }
    const auto area = [](const BlankSize& blank) {
      return blank.width.ticks() * blank.height.ticks();
    };
    EverySet every(pieces);
    const Subsets& sets =
        every.from(problem.stock[0].width.ticks(), problem.stock[0].height.ticks());
    std::int64_t most = 0, all = 0;
    for (std::size_t set = 0; set < sets.size(); ++set) {
      std::int64_t sum = 0;
      for (std::size_t i = 0; i < pieces.size(); ++i) sum += (set >> i & 1) * area(pieces[i]);
      all = std::max(all, sum);
      if (sets[set]) most = std::max(most, sum);
    }
    const Nesting nesting = nest(problem);
    INFO("round " << round);
    check_plan(problem, nesting);
    std::int64_t missing = 0;
    for (std::size_t i = 0; i < problem.blanks.size(); ++i) {
      missing += nesting.missing[i] * area(problem.blanks[i]);
    }
    REQUIRE(missing == all - most);
  }
}

TEST_CASE("a week of orders on one board stays within 2 percent of the bound") {
  std::mt19937 random(11);
  NestingProblem problem;
  problem.stock = {standard_sheet, oversize_sheet};
  for (int i = 0; i < 10; ++i) {
    const auto side = [&random] { return sixty_fourths(16 * (24 + random() % 72)); };
    problem.blanks.push_back({side(), side(), true});
    problem.demands.push_back(5);
  }
  NestingOptions options;
  options.effort = 6'000'000;
  const Nesting nesting = nest(problem, options);
  check_plan(problem, nesting);
  CHECK(nesting.missing == std::vector<int>(10, 0));
  CHECK(nesting.bound > 0);
  CHECK(static_cast<double>(nesting.cost) <= 1.02 * static_cast<double>(nesting.bound));
}

TEST_CASE("every board of 60 to 300 sizes gets a plan that makes every blank") {
  const int rounds = test::how_many(12, 1000);
  for (int round = 0; round < rounds; ++round) {
    std::mt19937 random(static_cast<std::uint32_t>(round) + 1);
    const int sizes = 60 + 240 * round / rounds;
    NestingProblem problem;
    problem.stock = {standard_sheet, oversize_sheet};
    for (int i = 0; i < sizes; ++i) {
      const auto side = [&random] { return sixty_fourths(16 * (24 + random() % 72)); };
      const Length width = side();
      problem.blanks.push_back({width, side(), random() % 6 != 0});
      problem.demands.push_back(1 + static_cast<int>(random() % 3));
    }
    NestingOptions options;
    options.effort = 300'000;
    INFO("round " << round << ", " << sizes << " sizes");
    const Nesting nesting = nest(problem, options);
    check_plan(problem, nesting);
    CHECK(nesting.missing == std::vector<int>(problem.blanks.size(), 0));
    CHECK(nesting.bound > 0);
    CHECK(nesting.bound <= nesting.cost);
  }
}

TEST_CASE("weeks of 80 and of 100 mats on one board are planned to within 8 percent of the bound") {
  for (const int mats : {80, 100}) {
    std::mt19937 random(static_cast<std::uint32_t>(mats));
    NestingProblem problem;
    problem.stock = {standard_sheet, oversize_sheet};
    for (int i = 0; i < mats; ++i) {
      const auto side = [&random] { return sixty_fourths(16 * (24 + random() % 72)); };
      const Length width = side();
      problem.blanks.push_back({width, side(), true});
      problem.demands.push_back(1);
    }
    NestingOptions options;
    options.effort = 5'000'000;
    const Nesting nesting = nest(problem, options);
    check_plan(problem, nesting);
    CHECK(nesting.missing == std::vector<int>(problem.blanks.size(), 0));
    CAPTURE(mats, nesting.cost, nesting.bound);
    CHECK(static_cast<double>(nesting.cost) <= 1.08 * static_cast<double>(nesting.bound));
  }
}

TEST_CASE("off-cuts on hand that cost nothing are used before a sheet is bought") {
  NestingProblem problem;
  problem.blanks = {{inches(11), inches(14)}};
  problem.demands = {2};
  problem.stock = {standard_sheet, {inches(12), inches(30), 0, 1}};
  const Nesting nesting = nest(problem);
  check_plan(problem, nesting);
  CHECK(nesting.cost == 0);
  CHECK(nesting.bound == 0);
}

TEST_CASE("no more sheets are cut than are on hand, and what is missing is named") {
  NestingProblem problem;
  problem.blanks = {{inches(16), inches(20)}, {inches(50), inches(60)}};
  problem.demands = {9, 1};
  problem.stock = {{inches(32), inches(40), 1200, 2}};
  const Nesting nesting = nest(problem);
  check_plan(problem, nesting);
  CHECK(nesting.sheets.size() == 2);
  CHECK(nesting.missing == std::vector<int>{1, 1});
}

TEST_CASE("with hundreds of off-cuts no blank is missing while sheets can be bought") {
  std::mt19937 random(5);
  const auto quarters = [&random](int least, int most) {
    return sixty_fourths(16 * (least + static_cast<int>(random() % (most - least))));
  };
  NestingProblem problem;
  problem.stock = {standard_sheet, oversize_sheet};
  for (int i = 0; i < 200; ++i) {
    const Length width = quarters(32, 56);
    problem.stock.push_back({width, quarters(40, 70), 0, 1});
  }
  for (int i = 0; i < 40; ++i) {
    const Length width = quarters(24, 96);
    problem.blanks.push_back({width, quarters(24, 96), true});
    problem.demands.push_back(1 + static_cast<int>(random() % 7));
  }
  for (const std::int64_t effort : {1'000'000, 25'000'000}) {
    NestingOptions options;
    options.effort = effort;
    const Nesting nesting = nest(problem, options);
    CHECK(std::all_of(nesting.missing.begin(), nesting.missing.end(),
                      [](int count) { return count == 0; }));
    check_plan(problem, nesting);
  }
}

TEST_CASE("of plans that cost the same the one with the larger off-cut is kept") {
  NestingProblem problem;
  problem.blanks = {{inches(16), inches(20), false}, {inches(8), inches(10), false}};
  problem.demands = {5, 4};
  problem.stock = {standard_sheet};
  const Nesting nesting = nest(problem);
  check_plan(problem, nesting);
  REQUIRE(nesting.sheets.size() == 2);
  // One full sheet, and one with 16 x 40 in of it left in one piece.
  CHECK(usefulness_of_offcuts(nesting.sheets) == Approx(0.64 * 0.64));
}

TEST_CASE("a plan can be ended at once and is still whole") {
  NestingProblem problem;
  problem.blanks = {{inches(13), inches(17)}, {inches(9), inches(11)}};
  problem.demands = {30, 40};
  problem.stock = {standard_sheet, oversize_sheet};
  const std::atomic<bool> stop{true};
  NestingOptions options;
  options.stop = &stop;
  const Nesting nesting = nest(problem, options);
  check_plan(problem, nesting);
  CHECK(nesting.missing == std::vector<int>{0, 0});
}

TEST_CASE("progress is reported and never goes backwards") {
  NestingProblem problem;
  problem.blanks = {{inches(13), inches(17)}, {inches(9), inches(11)}, {inches(7), inches(19)}};
  problem.demands = {11, 14, 9};
  problem.stock = {standard_sheet, oversize_sheet};
  NestingOptions options;
  options.effort = 2'000'000;
  std::vector<NestingProgress> reports;
  options.report = [&reports](const NestingProgress& progress) { reports.push_back(progress); };
  nest(problem, options);
  REQUIRE(!reports.empty());
  for (std::size_t i = 1; i < reports.size(); ++i) {
    CHECK(reports[i].done >= reports[i - 1].done);
    CHECK(reports[i].cost <= reports[i - 1].cost);
    CHECK(reports[i].bound >= reports[i - 1].bound);
  }
}

TEST_CASE("the same problem always gets the same plan") {
  NestingProblem problem;
  problem.blanks = {{inches(13), inches(17)}, {inches(9), inches(11)}, {inches(7), inches(19)}};
  problem.demands = {5, 7, 4};
  problem.stock = {standard_sheet, oversize_sheet};
  const auto placed = [&problem] {
    std::vector<std::int64_t> numbers;
    for (const CutSheet& sheet : nest(problem).sheets) {
      for (const PlacedBlank& blank : blanks_in(sheet.pattern, Length())) {
        numbers.insert(numbers.end(), {blank.blank, blank.left.ticks(), blank.top.ticks()});
      }
    }
    return numbers;
  };
  CHECK(placed() == placed());
}

TEST_CASE("blanks with grain are never turned in a plan of many sheets") {
  NestingProblem problem;
  problem.blanks = {{inches(10), inches(24), false}};
  problem.demands = {7};
  problem.stock = {standard_sheet};
  const Nesting nesting = nest(problem);
  check_plan(problem, nesting);
  CHECK(nesting.sheets.size() == 3);  // three upright ones a sheet; turned, a fourth would fit
}

TEST_CASE("a bound rises to the next sum of prices") {
  CHECK(raised_to_sum_of_prices(2500, {1200, 2600}) == 2600);
  CHECK(raised_to_sum_of_prices(2601, {1200, 2600}) == 3600);
  CHECK(raised_to_sum_of_prices(0, {1200}) == 0);
  CHECK(raised_to_sum_of_prices(7, {}) == 7);
}

TEST_CASE("cheaper combinations of sheets are listed from the cheapest") {
  NestingProblem problem;
  problem.stock = {standard_sheet, oversize_sheet, {inches(10), inches(10), 0, 3}};
  const auto found = stock_combinations(problem, 2400, 5000, 0, 100);
  REQUIRE(found);
  std::vector<std::int64_t> costs;
  for (const StockCombination& combination : *found) {
    costs.push_back(combination.cost);
    CHECK(combination.counts.at(2) == 3);
  }
  CHECK(costs == std::vector<std::int64_t>{2400, 2600, 3600, 3800, 4800});
  CHECK(!stock_combinations(problem, 2400, 5000, 0, 2));
}
