#include <catch2/catch.hpp>
#include <map>
#include <random>

#include "cut_check.h"
#include "engine/length/format.h"

using namespace mullion;

namespace {

// The best value by trying every whole cut of every rectangle; knows nothing of cut points.
class EveryCut {
 public:
  EveryCut(std::vector<BlankSize> blanks, std::vector<std::int64_t> values, std::int64_t kerf,
           std::int64_t longest_cut, std::int64_t widest_board)
      : blanks_(std::move(blanks)),
        values_(std::move(values)),
        kerf_(kerf),
        longest_cut_(longest_cut),
        widest_board_(widest_board) {}

  std::int64_t best(std::int64_t width, std::int64_t height) {
    if (width <= 0 || height <= 0) return 0;
    const auto key = std::make_pair(width, height);
    if (const auto known = known_.find(key); known != known_.end()) return known->second;
    std::int64_t value = 0;
    for (std::size_t i = 0; i < blanks_.size(); ++i) {
      const std::int64_t w = blanks_[i].width.ticks(), h = blanks_[i].height.ticks();
      const bool upright = w == width && h == height;
      const bool lying = blanks_[i].may_turn && h == width && w == height;
      if (upright || lying) value = std::max(value, values_[i]);
    }
    const bool upright_cuts = height <= longest_cut_ && width <= widest_board_;
    const bool level_cuts = width <= longest_cut_ && height <= widest_board_;
    for (std::int64_t x = 1; x < width && upright_cuts; ++x) {
      value = std::max(value, best(x, height) + best(width - x - kerf_, height));
    }
    for (std::int64_t y = 1; y < height && level_cuts; ++y) {
      value = std::max(value, best(width, y) + best(width, height - y - kerf_));
    }
    return known_[key] = value;
  }

 private:
  std::vector<BlankSize> blanks_;
  std::vector<std::int64_t> values_;
  std::int64_t kerf_, longest_cut_, widest_board_;
  std::map<std::pair<std::int64_t, std::int64_t>, std::int64_t> known_;
};

Length units(std::int64_t n) {
  return Length::from_ticks(n);
}

}  // namespace

TEST_CASE("no way of cutting a small sheet beats the pattern found") {
  std::mt19937 random(20);
  const auto draw = [&random](std::uint32_t from, std::uint32_t to) {
    return static_cast<std::int64_t>(from + random() % (to - from + 1));
  };
  for (int round = 0; round < 400; ++round) {
    const std::int64_t width = draw(8, 32), height = draw(8, 32), kerf = draw(0, 2);
    std::vector<BlankSize> blanks;
    std::vector<std::int64_t> values;
    for (std::int64_t i = draw(1, 6); i > 0; --i) {
      const std::int64_t w = draw(2, 16), h = draw(2, 16);
      blanks.push_back({units(w), units(h), draw(0, 1) == 1});
      values.push_back(draw(0, 2) == 0 ? w * h : draw(1, 120));
    }
    const std::int64_t longest = draw(0, 1) == 0 ? 100 : draw(8, 32);
    const std::int64_t widest = draw(0, 2) > 0 ? 100 : draw(8, 32);
    const CutLimits limits{units(kerf), units(longest), units(widest)};
    const BestPattern best =
        PatternSearch(units(width), units(height), limits, blanks).find(values);
    INFO("round " << round << ": " << width << " x " << height << ", kerf " << kerf
                  << ", longest cut " << longest << ", widest board " << widest);
    REQUIRE(best.value == EveryCut(blanks, values, kerf, longest, widest).best(width, height));
    REQUIRE(best.bound == best.value);
    REQUIRE(fault_in(best.pattern, units(width), units(height), limits, blanks) == "");
    REQUIRE(value_of(best.pattern, units(width), units(height), units(kerf), values) == best.value);
  }
}

TEST_CASE("four 16 x 20 in blanks fill a 32 x 40 in sheet when a knife takes no kerf") {
  const BestPattern best =
      PatternSearch(inches(32), inches(40), {Length(), {}}, {{inches(16), inches(20), false}})
          .find({1});
  CHECK(best.value == 4);
}

TEST_CASE("a kerf of 1/8 in leaves room for one 16 x 20 in blank beside which nothing fits") {
  const Length kerf = sixty_fourths(8);
  const PatternSearch search(inches(32), inches(40), {kerf, {}}, {{inches(16), inches(20), false}});
  CHECK(search.find({1}).value == 1);
}

TEST_CASE("blanks that span the sheet need no cut at its edges") {
  const Length kerf = sixty_fourths(8);
  const Length half = Length::from_ticks((inches(32) - kerf).ticks() / 2);
  const PatternSearch search(inches(32), inches(40), {kerf, {}}, {{half, inches(40), false}});
  CHECK(search.find({1}).value == 2);
}

TEST_CASE("a blank may turn only where its board has no grain") {
  const auto count = [](bool may_turn) {
    return PatternSearch(inches(32), inches(10), {Length(), {}},
                         {{inches(10), inches(16), may_turn}})
        .find({1})
        .value;
  };
  CHECK(count(false) == 0);
  CHECK(count(true) == 2);
}

TEST_CASE("what is left over lies together in one rectangle") {
  const PatternSearch search(inches(32), inches(40), {Length(), {}},
                             {{inches(10), inches(40), false}});
  const BestPattern best = search.find({1});
  REQUIRE(best.value == 3);
  REQUIRE(best.pattern.parts.size() == 4);
  CHECK(best.pattern.parts.back().kind == Pattern::Kind::waste);
  CHECK(best.pattern.parts.back().width == inches(2));
}

TEST_CASE("sizes that share no step still give a pattern and a bound that holds") {
  std::mt19937 random(7);
  std::vector<BlankSize> blanks;
  std::vector<std::int64_t> values;
  for (int i = 0; i < 40; ++i) {
    blanks.push_back(
        {inches(2) + units(random() % 200'000), inches(2) + units(random() % 200'000)});
    values.push_back(blanks.back().width.ticks() / 1000 * (blanks.back().height.ticks() / 1000));
  }
  const BestPattern best =
      PatternSearch(inches(32), inches(40), {Length(), {}}, blanks).find(values);
  CHECK(best.value <= best.bound);
  CHECK(static_cast<double>(best.value) > 0.97 * static_cast<double>(best.bound));
  CHECK(fault_in(best.pattern, inches(32), inches(40), {}, blanks) == "");
  CHECK(value_of(best.pattern, inches(32), inches(40), Length(), values) == best.value);
}

TEST_CASE("sizes that are not positive are refused") {
  CHECK_THROWS_AS(PatternSearch(inches(32), inches(40), {Length(), {}}, {{Length(), inches(3)}}),
                  std::invalid_argument);
  CHECK_THROWS_AS(PatternSearch(Length(), inches(40), {Length(), {}}, {}), std::invalid_argument);
}
