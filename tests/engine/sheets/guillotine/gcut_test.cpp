// J. E. Beasley's instances gcut1 to gcut13 with their published optima; tests/data/gcut/SOURCE.md
// names the sources of both.

#include "gcut.h"

#include <catch2/catch.hpp>

#include "cut_check.h"

using namespace mullion;

namespace {

void check(int number, bool may_turn, std::int64_t optimum) {
  INFO("gcut" << number << (may_turn ? ", pieces may turn" : ", pieces may not turn"));
  const GcutInstance instance = read_gcut(number, may_turn);
  REQUIRE(instance.complete);
  const BestPattern best =
      PatternSearch(instance.width, instance.height, {}, instance.blanks).find(instance.values);
  CHECK(best.value == optimum);
  CHECK(best.bound == optimum);
  CHECK(fault_in(best.pattern, instance.width, instance.height, {}, instance.blanks) == "");
  CHECK(value_of(best.pattern, instance.width, instance.height, Length(), instance.values) ==
        optimum);
}

const std::vector<std::int64_t> fixed_optima = {56460,  60536,  61036,  61698,  246000,
                                                238998, 242567, 246633, 971100, 982025,
                                                980096, 979986, 8997780};
const std::vector<std::int64_t> turning_optima = {58136,  60611,  61626,  62265,  246000,
                                                  240951, 245866, 247787, 971100, 982025,
                                                  980096, 988694, 9000000};

}  // namespace

TEST_CASE("gcut1 to gcut12 reach their published optima when pieces may not turn") {
  for (int number = 1; number <= 12; ++number) check(number, false, fixed_optima[number - 1]);
}

TEST_CASE("gcut1 to gcut12 reach their published optima when pieces may turn") {
  for (int number = 1; number <= 12; ++number) check(number, true, turning_optima[number - 1]);
}

TEST_CASE("gcut13 reaches its published optimum when pieces may not turn") {
  check(13, false, fixed_optima[12]);
}

TEST_CASE("gcut13 reaches its published optimum when pieces may turn") {
  check(13, true, turning_optima[12]);
}
