#include "engine/starting/said_sizes.h"

#include <catch2/catch.hpp>

using namespace mullion;
using namespace mullion::starting;

namespace {

SaidSize only(std::string_view text, Unit unit) {
  const auto said = parse_said_sizes(text, unit);
  INFO(text);
  REQUIRE(said);
  REQUIRE(said->size() == 1);
  return said->front();
}

void check(std::string_view text, Unit unit, Length width, Length height, int count,
           const std::string& name) {
  const SaidSize said = only(text, unit);
  CHECK(said.size.width == width);
  CHECK(said.size.height == height);
  CHECK(said.count == count);
  CHECK(said.name == name);
}

}  // namespace

TEST_CASE("sizes are read as people say them") {
  check("8x10", Unit::inch, inches(8), inches(10), 1, "");
  check(" 8 X 10 ", Unit::inch, inches(8), inches(10), 1, "");
  check("8 by 10", Unit::inch, inches(8), inches(10), 1, "");
  check("8 \xC3\x97 10", Unit::inch, inches(8), inches(10), 1, "");
  check("8 1/2 x 11 *3", Unit::inch, sixty_fourths(544), inches(11), 3, "");
  check("8x10*12", Unit::inch, inches(8), inches(10), 12, "");
  check("21 x 29,7 cm", Unit::inch, millimetres(210), millimetres(297), 1, "");
  check("210 mm x 297", Unit::inch, millimetres(210), millimetres(297), 1, "");
  check("21 x 29.7", Unit::centimetre, millimetres(210), millimetres(297), 1, "");
  check("8\" x 10\"", Unit::millimetre, inches(8), inches(10), 1, "");
}

TEST_CASE("a line may end in a name") {
  check("8x10 Boat", Unit::inch, inches(8), inches(10), 1, "Boat");
  check("8 x 10 1/2 The pier at six", Unit::inch, inches(8), sixty_fourths(672), 1,
        "The pier at six");
  check("5x7 *2 Twins", Unit::inch, inches(5), inches(7), 2, "Twins");
  check("21 x 29,7 cm Diploma", Unit::inch, millimetres(210), millimetres(297), 1, "Diploma");
}

TEST_CASE("many lines give many sizes, and each wrong one is told with its line") {
  const auto said = parse_said_sizes("8x10\r\n\n5x7 *3; 4x6\n", Unit::inch);
  REQUIRE(said);
  CHECK(said->size() == 3);
  const auto wrong = parse_said_sizes("8x10\nnonsense\n0x3\n5x7 *0\n", Unit::inch);
  REQUIRE(!wrong);
  REQUIRE(wrong.error().size() == 3);
  CHECK(wrong.error()[0].place.line == 2);
  CHECK(wrong.error()[1].place.line == 3);
  CHECK(wrong.error()[2].place.line == 4);
  CHECK(!parse_said_sizes(" \n", Unit::inch));
  CHECK(!parse_said_sizes("8x10 *500\n8x10", Unit::inch));
}

TEST_CASE("the other side keeps an image's proportion, on the step") {
  Size size{inches(8), inches(8)};
  keep_proportion(size, 3000, 2000, true, sixty_fourths(4));
  CHECK(size.width == inches(8));
  CHECK(size.height == sixty_fourths(340));  // 8 x 2/3 = 5.333 in: 5 5/16 in is nearest
  keep_proportion(size, 3000, 2000, false, sixty_fourths(4));
  CHECK(size.width == inches(8));  // 5 5/16 x 3/2 = 7.969 in
}
