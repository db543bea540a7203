#include "engine/sheets/inventory/inventory.h"

#include <catch2/catch.hpp>

#include "tests/oracle/program.h"

using namespace mullion;

namespace {

const char* const shop = R"(<?xml version="1.0" encoding="UTF-8"?>
<stock version="1" unit="in" currency="EUR">
  <board name="Oat" colour="#f2eee3" thickness="1/16">
    <sheet id="oat-standard" width="32" height="40" price="12.50" on-hand="14" />
    <sheet id="oat-oversize" width="40" height="60" price="26" trim-left="1/4" />
    <offcut id="c-1" width="16" height="40" trim="1/8" />
  </board>
  <board name="Slate" colour="#40444a" thickness="1.4 mm">
    <offcut id="c-2" width="215.9 mm" height="12 1/2" price="0.5" on-hand="3" />
  </board>
</stock>
)";

std::string first_problem(const std::string& xml) {
  const auto stock = parse_stock(xml, "shop.xml");
  return stock ? "" : to_string(stock.error().at(0));
}

// What xmllint says of the text by the published schema; empty: it is valid.
std::string fault_by_schema(const std::string& xml) {
  const std::string path = oracle::scratch_folder("stock_schema") + "/stock.xml";
  oracle::write_file(path, xml);
  const oracle::Run xmllint =
      oracle::run({"xmllint", "--noout", "--schema",
                   std::string(MULLION_SOURCE) + "/engine/sheets/inventory/stock.xsd", path});
  return xmllint.status == 0 ? "" : xmllint.err;
}

std::string with_sheet(const std::string& attributes) {
  return "<stock>\n<board name=\"Oat\">\n<sheet " + attributes + "/>\n</board></stock>";
}

}  // namespace

TEST_CASE("a stock file lists sheets and off-cuts of each board") {
  const auto stock = parse_stock(shop, "shop.xml");
  REQUIRE(stock);
  CHECK(stock->currency == "EUR");
  REQUIRE(stock->pieces.size() == 4);
  CHECK(stock->pieces[0].width == inches(32));
  CHECK(stock->pieces[0].price == 1250);
  CHECK(stock->pieces[0].on_hand == 14);
  CHECK(stock->pieces[1].price == 2600);
  CHECK(!stock->pieces[1].on_hand);
  CHECK(stock->pieces[1].trim == Sides{sixty_fourths(16), {}, {}, {}});
  CHECK(stock->pieces[2].offcut);
  CHECK(stock->pieces[2].on_hand == 1);
  CHECK(stock->pieces[2].usable_width() == inches(16) - sixty_fourths(16));
  CHECK(stock->pieces[3].board.thickness == Length::from_ticks(2240));
  CHECK(stock->pieces[3].price == 50);
  CHECK(stock->pieces[3].place.line == 9);
}

TEST_CASE("a stock file that is written reads back the same, and is valid by its schema") {
  const auto stock = parse_stock(shop, "shop.xml");
  REQUIRE(stock);
  const std::string written = write_stock(*stock);
  const auto again = parse_stock(written, "shop.xml");
  REQUIRE(again);
  REQUIRE(again->pieces.size() == stock->pieces.size());
  for (std::size_t i = 0; i < stock->pieces.size(); ++i) {
    const StockPiece& a = stock->pieces[i];
    const StockPiece& b = again->pieces[i];
    INFO(a.id);
    CHECK(std::tie(a.id, a.board, a.width, a.height, a.trim, a.price, a.on_hand, a.offcut) ==
          std::tie(b.id, b.board, b.width, b.height, b.trim, b.price, b.on_hand, b.offcut));
  }
  CHECK(write_stock(*again) == written);

  CHECK(fault_by_schema(shop) == "");
  CHECK(fault_by_schema(written) == "");
}

TEST_CASE("the stock files that come with the program are read and valid by their schema") {
  for (const std::string& path :
       {oracle::gallery("shop/stock.xml"),
        std::string(MULLION_SOURCE) + "/tests/fuzz/corpus/stock/shop.xml",
        std::string(MULLION_SOURCE) + "/tests/fuzz/corpus/stock/small.xml"}) {
    INFO(path);
    CHECK(read_stock(path));
    CHECK(fault_by_schema(oracle::read_file(path)) == "");
  }
}

TEST_CASE("a stock file that the reader refuses is refused by the schema too") {
  for (const char* attributes :
       {"id=\"a\" height=\"40\"", "id=\"a\" width=\"32\" height=\"40\" price=\"1,50\"",
        "id=\"a\" width=\"32\" height=\"40\" widht=\"32\"",
        "id=\"a\" width=\"32\" height=\"40\" on-hand=\"-1\"",
        "id=\"a\" width=\"32\" height=\"40\" on-hand=\"many\"", "width=\"32\" height=\"40\""}) {
    INFO(attributes);
    CHECK(first_problem(with_sheet(attributes)) != "");
    CHECK(fault_by_schema(with_sheet(attributes)) != "");
  }
  CHECK(fault_by_schema("<stock><board><sheet/></board></stock>") != "");
  CHECK(fault_by_schema("<stock unit=\"ell\"/>") != "");
  CHECK(first_problem("<stock unit=\"ell\"/>") != "");
}

TEST_CASE("a sheet without a price among others with one is an error at its line") {
  const std::string priced =
      "<stock>\n<board name=\"Oat\">\n"
      "<sheet id=\"a\" width=\"32\" height=\"40\" price=\"12\"/>\n";
  CHECK(first_problem(priced + "<sheet id=\"b\" width=\"40\" height=\"60\"/>\n</board></stock>") ==
        "shop.xml:4:1: error: sheet \"b\" has no price, but others have one; expected a price "
        "(price=\"0\" says that it costs nothing) [stock-no-price]");
  // One that is given away, and an off-cut, may cost nothing.
  const std::string free = priced +
                           "<sheet id=\"b\" width=\"40\" height=\"60\" price=\"0\"/>\n"
                           "<offcut id=\"c\" width=\"10\" height=\"10\"/></board></stock>";
  const auto stock = parse_stock(free, "shop.xml");
  REQUIRE(stock);
  CHECK(parse_stock(write_stock(*stock), "shop.xml"));
}

TEST_CASE("what is wrong with a stock file is said with its place and a near name") {
  CHECK(first_problem(with_sheet("id=\"a\" widht=\"32\" height=\"40\"")).find("shop.xml:3:") == 0);
  CHECK(first_problem(with_sheet("id=\"a\" width=\"32\" height=\"40\" on-hnd=\"2\"")) ==
        "shop.xml:3:38: error: unknown attribute \"on-hnd\" in <sheet>; did you mean \"on-hand\"? "
        "[stock-unknown-attribute]");
  CHECK(first_problem(with_sheet("id=\"a\" width=\"32\" height=\"40\" price=\"1.234\"")) ==
        "shop.xml:3:38: error: found price=\"1.234\" in <sheet>; expected a price such as 12.50, "
        "up to 1000000.00 [stock-bad-price]");
  CHECK(first_problem("<job/>") ==
        "shop.xml:1:1: error: found <job> at the top of the file; expected <stock> "
        "[stock-unknown-element]");
  CHECK(first_problem("<stock><board name=\"A\"><sheet id=\"a\" width=\"3\" height=\"3\"/>"
                      "<sheet id=\"a\" width=\"3\" height=\"3\"/></board></stock>")
            .find("expected an id that no other piece has") != std::string::npos);
  CHECK(first_problem(with_sheet("id=\"a\" width=\"32\" height=\"40\" trim=\"16\""))
            .find("the damaged edges of piece \"a\" leave nothing of it") != std::string::npos);
  CHECK(first_problem("<!DOCTYPE stock><stock/>").find("stock-doctype") != std::string::npos);
}

TEST_CASE("prices that are not decimals with up to two places are refused") {
  for (const char* price :
       {"", "-1", "1,50", "1.", ".5", "1e3", "12345678901234567890", "1000001"}) {
    INFO(price);
    CHECK(first_problem(
              with_sheet("id=\"a\" width=\"2\" height=\"4\" price=\"" + std::string(price) + "\""))
              .find("stock-bad-price") != std::string::npos);
  }
  CHECK(first_problem(with_sheet("id=\"a\" width=\"2\" height=\"4\" price=\"1000000\"")).empty());
}

TEST_CASE("prices are printed with two places and the currency") {
  CHECK(format_price(1250, "EUR") == "12.50 EUR");
  CHECK(format_price(5, "") == "0.05");
}
