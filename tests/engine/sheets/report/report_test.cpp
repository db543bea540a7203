#include "engine/sheets/report/report.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "engine/sheets/stock/size_text.h"
#include "tests/engine/sheets/report/planned_shop.h"

using namespace mullion;

namespace {

PlannedShop shop_for(const std::vector<BlankOrder>& orders) {
  return PlannedShop(orders, 3'000'000);
}

}  // namespace

TEST_CASE("the summary says what is cut, what it costs, and that nothing is cheaper") {
  const PlannedShop shop = shop_for({blank_order("A-1", inches(16), inches(20), 4),
                                     blank_order("A-2", inches(20), inches(30), 1)});
  CHECK(text_of(shop.report) ==
        "Oat, #f2eee3, 1/16 in\n"
        "  5 blanks from 2 sheets, 0 off-cuts and 0 fallouts; 73.4 % of the board used\n"
        "  8 cuts at 4 settings\n"
        "  cost 25.00 EUR; no plan costs less\n"
        "  Sheet 1, sheet full, 32 x 40 in: 6 cuts at 2 settings\n"
        "      4 of 16 x 20 in: A-1, Top mat, copies 1, 2, 3, 4\n"
        "  Sheet 2, sheet full, 32 x 40 in: 2 cuts at 2 settings\n"
        "      1 of 20 x 30 in: A-2, Top mat, copy 1\n"
        "\n"
        "Off-cuts to keep\n"
        "  offcut-1, Oat, 32 x 20 in, from sheet 2\n"
        "\n"
        "Buy\n"
        "  2 of full, Oat, 32 x 40 in: 25.00 EUR\n"
        "\n"
        "Board by order\n"
        "  A-1: 12.50 EUR\n"
        "  A-2: 12.50 EUR\n"
        "\n"
        "In all: 25.00 EUR; no plan costs less\n");
}

TEST_CASE("the JSON holds the same plan in exact ticks") {
  const PlannedShop shop = shop_for({blank_order("A-1", inches(16), inches(20), 4)});
  const auto json = nlohmann::json::parse(json_of(shop.report));
  CHECK(json["cost"] == 1250);
  CHECK(json["bound"] == 1250);
  const auto& sheet = json["boards"][0]["sheets"][0];
  CHECK(sheet["from"] == "sheet full");
  REQUIRE(sheet["blanks"].size() == 4);
  CHECK(sheet["blanks"][3]["left"]["ticks"] == inches(16).ticks());
  CHECK(sheet["blanks"][3]["top"]["text"] == "20 in");
  REQUIRE(sheet["cuts"].size() == 6);
  CHECK(sheet["cuts"][1]["check"] == true);
  CHECK(sheet["cuts"][0]["stop"]["ticks"] == inches(16).ticks());
  CHECK(json_of(shop.report) == json_of(shop.report));
}

TEST_CASE("a name that is not UTF-8 does not break the JSON") {
  const PlannedShop shop = shop_for({blank_order("A-\xff", inches(16), inches(20), 1)});
  CHECK_NOTHROW(nlohmann::json::parse(json_of(shop.report)));
}

TEST_CASE("sizes are said in the other system where the job's own cannot say them") {
  const Scale sixteenths{Unit::inch, sixty_fourths(4)};
  CHECK(size_text(inches(16), inches(20), sixteenths) == "16 x 20 in");
  CHECK(size_text(millimetres(400), millimetres(500), sixteenths) == "400 x 500 mm");
  CHECK(size_text(millimetres(400), inches(20), sixteenths) == "400 x 508 mm");
  CHECK(size_text(Length::from_ticks(7), sixteenths) == "about 0 in");
}
