#include "render/paper/sheet_size.h"

#include <catch2/catch.hpp>

using namespace mullion;
using paper::parse_sheet_size;

TEST_CASE("A-series sheets have the sizes of ISO 216") {
  struct Size {
    const char* name;
    int width, height;
  };
  for (const Size& size : {Size{"A4", 210, 297}, Size{"a3", 297, 420}, Size{"a2", 420, 594},
                           Size{"a1", 594, 841}, Size{"a0", 841, 1189}}) {
    const auto sheet = parse_sheet_size(size.name, Unit::inch);
    REQUIRE(sheet);
    CHECK(sheet->width == millimetres(size.width));
    CHECK(sheet->height == millimetres(size.height));
  }
}

TEST_CASE("ANSI sheets have the sizes of ANSI/ASME Y14.1") {
  struct Size {
    const char* name;
    int width, height;
  };
  for (const Size& size : {Size{"tabloid", 11, 17}, Size{"ansi-c", 17, 22}, Size{"ansi-d", 22, 34},
                           Size{"ansi-e", 34, 44}}) {
    const auto sheet = parse_sheet_size(size.name, Unit::millimetre);
    REQUIRE(sheet);
    CHECK(sheet->width == inches(size.width));
    CHECK(sheet->height == inches(size.height));
  }
  CHECK(parse_sheet_size("letter", Unit::inch)->width == sixty_fourths(544));
}

TEST_CASE("a sheet of any size is written as width x height") {
  const auto sheet = parse_sheet_size("13 x 19 in", Unit::millimetre);
  REQUIRE(sheet);
  CHECK(sheet->width == inches(13));
  CHECK(sheet->height == inches(19));
  CHECK(parse_sheet_size("329x483", Unit::millimetre)->width == millimetres(329));
}

TEST_CASE("a slip in a sheet's name is answered with the near name") {
  const auto sheet = parse_sheet_size("leter", Unit::inch);
  REQUIRE_FALSE(sheet);
  CHECK(sheet.error().find("\"letter\"") != std::string::npos);
}

TEST_CASE("sheets of no sense are refused") {
  for (const char* text :
       {"", "x", "0 x 0", "1 x 1 in", "-3 x 9 in", "9999 x 9 in", "8 x", "x 9"}) {
    INFO(text);
    CHECK_FALSE(parse_sheet_size(text, Unit::inch));
  }
}

TEST_CASE("architectural and B sheets have the sizes of ANSI/ASME Y14.1 and ISO 216") {
  CHECK(parse_sheet_size("arch-d", Unit::inch)->height == inches(36));
  CHECK(parse_sheet_size("B3", Unit::inch)->width == millimetres(353));
}

TEST_CASE("a width with its unit is a roll") {
  const auto roll = parse_sheet_size("30in", Unit::millimetre);
  REQUIRE(roll);
  CHECK(roll->roll);
  CHECK(roll->width == inches(30));
  CHECK(parse_sheet_size("610 mm", Unit::inch)->width == millimetres(610));
  CHECK(parse_sheet_size("24\"", Unit::inch)->roll);
  for (const char* text : {"24", "100in", "2in", "in"}) {
    INFO(text);
    CHECK_FALSE(parse_sheet_size(text, Unit::inch));
  }
}

TEST_CASE("a size without a unit is in the job's, or in the one in which it is a sheet") {
  const auto letter = parse_sheet_size("8.5x11", Unit::millimetre);
  REQUIRE(letter);
  CHECK(letter->width == sixty_fourths(544));
  CHECK(parse_sheet_size("210x297", Unit::inch)->width == millimetres(210));
  // Both 21 in and 21 cm make a sheet; the latter is A4.
  CHECK(parse_sheet_size("21x29.7", Unit::millimetre)->height == millimetres(297));
  CHECK(parse_sheet_size("11x17", Unit::inch)->width == inches(11));
}

TEST_CASE("a page has the name of its paper in PWG 5101.1, upright or across") {
  CHECK(paper::media_name({inches(11), sixty_fourths(544)}) == "na_letter_8.5x11in");
  CHECK(paper::media_name({millimetres(297), millimetres(420)}) == "iso_a3_297x420mm");
  CHECK(paper::media_name({inches(19), inches(13)}) == "custom_13x19in_13x19in");
  CHECK(paper::media_name({millimetres(610), millimetres(423)}) == "custom_423x610mm_423x610mm");
}
