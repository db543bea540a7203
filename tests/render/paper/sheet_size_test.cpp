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
