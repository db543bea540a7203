// The price book's published schema, read by xmllint (libxml2), and our reader accept and refuse
// the same files.

#include "engine/shop/book.h"

#include <catch2/catch.hpp>

#include "tests/oracle/program.h"

using namespace mullion;

namespace {

const std::string good = R"(<prices version="1" currency="SEK" symbol="kr" symbol-after="yes"
    decimals="2" unit="cm" rounding="half-even" round-to="0.5">
  <tax name="Moms" percent="25" included="yes"/>
  <board by="sheet" sheet-width="81 1/2" sheet-height="40 in" price="145" cost="70.125"/>
  <board name="Moss" by="united-inch" price="4.25"/>
  <moulding name="Larch 20" by="metre" price="68" waste-percent="12.5" sold-in="30 cm"/>
  <glazing name="Clear" by="square-metre" price="900" least="150"/>
  <glazing name="Matt" by="square-foot" price="110"/>
  <opening price="45"/>
  <extra-layer price="35"/>
  <groove price="50"/>
  <shaped-opening shape="ellipse" price="60"/>
  <shaped-opening shape="octagon" price="40"/>
  <labour price="8.000001"/>
  <least-charge price="250"/>
  <discount percent="2.5"/>
  <discount from-quantity="10" percent="100"/>
</prices>)";

bool xmllint_accepts(const std::string& xml) {
  const std::string path = oracle::scratch_folder("price-schema") + "/prices.xml";
  oracle::write_file(path, xml);
  const std::string schema = std::string(MULLION_SOURCE) + "/engine/shop/prices.xsd";
  return oracle::run({"xmllint", "--noout", "--schema", schema, path}).status == 0;
}

std::string with(const std::string& before, const std::string& after) {
  std::string out = good;
  REQUIRE(out.find(before) != std::string::npos);
  return out.replace(out.find(before), before.size(), after);
}

}  // namespace

TEST_CASE("a price book with every entry is read and accepted by xmllint") {
  const auto book = price::parse_book(good, "prices.xml");
  if (!book) FAIL(to_string(book.error().front()));
  CHECK(xmllint_accepts(good));
  CHECK(book->boards.front().sheet_width == Length::from_ticks(815 * ticks_per_mm));
  CHECK(book->boards.front().sheet_height == inches(40));
  CHECK(book->boards.front().rate.cost == price::Amount("561/8"));
  CHECK(book->mouldings.front().waste_percent == price::Amount("25/2"));
  CHECK(book->labour->price == price::Amount("8000001/1000000"));
  CHECK(book->round_to->units == 50);
  CHECK(book->discounts.front().from_quantity == 1);
  CHECK(book->tax->included);
}

TEST_CASE("a byte order mark before the declaration does a price book no harm") {
  const auto book = price::parse_book(
      "\xEF\xBB\xBF<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n" + good, "prices.xml");
  if (!book) FAIL(to_string(book.error().front()));
}

TEST_CASE("the price book of the gallery is read and accepted by xmllint") {
  const std::string path = oracle::gallery("shop/prices.xml");
  CHECK(price::read_book(path).has_value());
  CHECK(xmllint_accepts(oracle::read_file(path)));
}

TEST_CASE("what is wrong with a price book is refused by the reader and by xmllint") {
  struct Slip {
    std::string before, after, code;
  };
  const Slip slips[] = {
      {"version=\"1\"", "version=\"2\"", "prices-bad-number"},
      {"currency=\"SEK\"", "", "prices-missing-attribute"},
      {"\"SEK\"", "\"sek\"", "prices-bad-currency"},
      {"decimals=\"2\"", "decimals=\"5\"", "prices-bad-number"},
      {"unit=\"cm\"", "unit=\"foot\"", "prices-unknown-word"},
      {"half-even", "down", "prices-unknown-word"},
      {"round-to=\"0.5\"", "round-to=\"0\"", "prices-out-of-range"},
      {"price=\"45\"", "price=\"4,50\"", "prices-bad-amount"},
      {"price=\"45\"", "price=\"-45\"", "prices-bad-amount"},
      {"price=\"45\"", "price=\"1e3\"", "prices-bad-amount"},
      {"price=\"45\"", "price=\"45.\"", "prices-bad-amount"},
      {"price=\"45\"", "price=\"1000000000\"", "prices-bad-amount"},
      {"price=\"45\"", "price=\"0.0000001\"", "prices-bad-amount"},
      {"<opening price=\"45\"/>", "<opening/>", "prices-missing-attribute"},
      {"<opening", "<openning", "prices-unknown-element"},
      {"cost=\"70.125\"", "costs=\"70.125\"", "prices-unknown-attribute"},
      {"by=\"united-inch\"", "by=\"inch\"", "prices-unknown-word"},
      {"by=\"united-inch\"", "by=\"metre\"", "prices-unknown-word"},
      {"by=\"united-inch\"", "", "prices-missing-attribute"},
      {"81 1/2", "wide", "prices-bad-length"},
      {"12.5", "12.5555", "prices-bad-amount"},
      {"name=\"Clear\"", "", "prices-missing-attribute"},
      {"\"Matt\"", "\"Clear\"", "prices-repeated-element"},
      {"shape=\"ellipse\"", "shape=\"oval\"", "prices-unknown-word"},
      {"percent=\"100\"", "percent=\"100.5\"", "prices-out-of-range"},
      {"from-quantity=\"10\"", "from-quantity=\"0\"", "prices-bad-number"},
      {"from-quantity=\"10\"", "from-quantity=\"10001\"", "prices-bad-number"},
      {"included=\"yes\"", "included=\"true\"", "prices-unknown-word"},
      {"least-charge price=\"250\"", "least-charge price=\"0\"", "prices-out-of-range"},
      {"<opening", "soon <opening", "prices-stray-text"},
  };
  for (const Slip& slip : slips) {
    INFO(slip.before << " -> " << slip.after);
    const std::string bad = with(slip.before, slip.after);
    const auto book = price::parse_book(bad, "prices.xml");
    REQUIRE_FALSE(book.has_value());
    CHECK(book.error().front().code == slip.code);
    CHECK_FALSE(xmllint_accepts(bad));
  }
}

// XML Schema 1.0 has no words for these.
TEST_CASE("the reader refuses what would be read in two ways or not at all") {
  const std::pair<const char*, const char*> slips[] = {
      {"<groove price=\"50\"/>", "<groove price=\"50\"/><groove price=\"60\"/>"},
      {"<least-charge price=\"250\"/>", "<least-charge price=\"2\"/><least-charge price=\"3\"/>"},
      {"<discount percent", "<tax percent=\"6\"/><discount percent"},
      {"octagon", "circle"},
      {"name=\"Moss\"", ""},
      {"sheet-height=\"40 in\"", ""},
      {"round-to=\"0.5\"", "round-to=\"0.125\""},
  };
  for (const auto& [before, after] : slips) {
    INFO(before << " -> " << after);
    CHECK_FALSE(price::parse_book(with(before, after), "prices.xml").has_value());
  }
}
