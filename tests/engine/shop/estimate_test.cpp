#include "engine/shop/estimate.h"

#include <catch2/catch.hpp>

#include "engine/job/read.h"

namespace {

using namespace mullion;
using price::Line;

// A double mat of 16 x 14 in for one picture, framed.
const char* framed_job = R"(<job version="1" reference="P-1" quantity="%" unit="in">
  <pictures><picture id="boat" width="10" height="8"/></pictures>
  <layers>
    <layer board="Oat" ply="4"/>
    <layer name="Under-mat" board="Ink" ply="4" reveal="1/4"/>
  </layers>
  <frame rabbet-width="16 1/8" rabbet-height="14 1/8" moulding="Ash 12" face="3/4"/>
  <arrange><opening picture="boat"/></arrange>
</job>)";

const char* book = R"(<prices version="1" currency="EUR" unit="in">
  <board name="Oat" by="united-inch" price="0.425" cost="0.11"/>
  <board by="sheet" sheet-width="32" sheet-height="40" price="14.50" cost="7.25"/>
  <opening price="4" cost="0"/>
  <extra-layer price="3.50" cost="0"/>
  <moulding name="Ash 12" by="foot" price="6.80" cost="2.10" waste-percent="10"/>
  <glazing name="Clear" by="square-foot" price="9" cost="3" least="15"/>
  <labour price="0.80" cost="0.45"/>
  <discount from-quantity="3" percent="5"/>
  <discount from-quantity="10" percent="12.5"/>
  <tax name="VAT" percent="20"/>
</prices>)";

struct Loaded {
  Job job;
  Mat mat;
};

Loaded load(const std::string& quantity) {
  std::string xml = framed_job;
  xml.replace(xml.find('%'), 1, quantity);
  Loaded out;
  out.job = parse_job(xml, "job.xml").value();
  out.mat = build_mat(out.job, lay_out(out.job).value()).value();
  return out;
}

price::Estimate estimate(const Loaded& loaded, const std::string& prices,
                         const price::Choices& choices = {}) {
  return price::estimate(loaded.job, cuts_of(loaded.mat),
                         price::parse_book(prices, "prices.xml").value(), choices)
      .value();
}

const Line& line(const price::Estimate& estimate, const std::string& what) {
  for (const Line& found : estimate.lines) {
    if (found.what == what) return found;
  }
  FAIL("no line " << what);
  throw 0;
}

std::string with(const std::string& entry) {
  std::string out = book;
  out.insert(out.find("</prices>"), entry);
  return out;
}

TEST_CASE("each line of an estimate is worked out as by hand") {
  const auto found = estimate(load("1"), book, {.glazing = "", .glazed = true, .minutes = 25});
  // 30 united inches at 0.425
  CHECK(line(found, "Mat board Oat").price.units == 1275);
  CHECK(line(found, "Mat board Oat").how == "16 + 14 = 30 united inches at 0.425");
  CHECK(line(found, "Mat board Oat").cost->units == 330);
  // The under-mat is taped behind, 1/8 in smaller on each side. 15 3/4 x 13 3/4 from 32 x 40: 2 x 2
  // = 4 upright, 2 x 2 = 4 turned (13 3/4 into 32, 15 3/4 into 40)
  CHECK(line(found, "Mat board Ink").price.units == 363);  // 14.50 / 4 = 3.625, half up
  CHECK(line(found, "Mat board Ink").how ==
        "1 of 4 blanks of 15 3/4 × 13 3/4 in from a sheet of 32 × 40 in at 14.50");
  CHECK(line(found, "Further layers").price.units == 350);
  CHECK(line(found, "Openings cut").price.units == 800);
  // 2 x (16 1/8 + 14 1/8) + 8 x 3/4 = 66 1/2 in; with 10 % 73.15 in = 6.0958 ft at 6.80
  CHECK(line(found, "Moulding Ash 12").price.units == 4145);
  // 16 x 14 in = 1.5556 square feet at 9 = 14.00, so the least charge
  CHECK(line(found, "Glazing Clear").price.units == 1500);
  CHECK(line(found, "Labour").price.units == 2000);
  // 12.75 + 3.63 + 3.50 + 8.00 + 41.45 + 15.00 + 20.00 = 104.33; VAT 20.866
  CHECK(line(found, "VAT 20 %").price.units == 2087);
  CHECK(found.total.units == 12520);
}

// Every kind of entry once, in metres, worked by hand.
TEST_CASE("an estimate with every kind of line is worked out as by hand") {
  Loaded loaded;
  loaded.job = parse_job(R"(<job version="1" reference="P-2" quantity="2" unit="mm">
    <pictures><picture id="moth" width="300" height="200"/></pictures>
    <layers>
      <layer board="Oat" thickness="1.4"/>
      <layer name="Under-mat" board="Ink" thickness="1.4" reveal="6"/>
    </layers>
    <frame rabbet-width="503" rabbet-height="403" moulding="Ash 20" face="20"/>
    <arrange><opening picture="moth" shape="ellipse"><groove distance="12" width="3"/></opening>
    </arrange></job>)",
                         "job.xml")
                   .value();
  loaded.mat = build_mat(loaded.job, lay_out(loaded.job).value()).value();
  const auto found =
      estimate(loaded, R"(<prices version="1" currency="EUR" unit="mm" round-to="0.50">
    <board name="Oat" by="square-metre" price="30"/>
    <board by="united-inch" price="0.20"/>
    <opening price="4"/>
    <extra-layer price="3"/>
    <groove price="6"/>
    <shaped-opening shape="ellipse" price="2.50"/>
    <moulding name="Ash 20" by="metre" price="15" waste-percent="10"/>
    <glazing name="Clear" by="square-metre" price="60"/>
    <labour price="0.50"/>
    <least-charge price="100.20"/>
    <discount from-quantity="2" percent="5"/>
    <tax name="VAT" percent="20"/>
  </prices>)",
               {.glazing = "Clear", .glazed = true, .minutes = 30});
  const std::pair<const char*, std::int64_t> by_hand[] = {
      {"Mat board Oat", 600},     // 0.5 x 0.4 = 0.2 square metres at 30
      {"Mat board Ink", 699},     // taped, 3 mm off each side: 888 / 25.4 = 34.961 united inches at
                                  // 0.20
      {"Further layers", 300},    // 1 at 3
      {"Openings cut", 800},      // 1 in each of 2 layers at 4
      {"Shaped openings", 500},   // 2 at 2.50 more
      {"V-grooves", 600},         // 1 at 6
      {"Moulding Ash 20", 3254},  // 2 x (503 + 403) + 8 x 20 = 1972 mm; and 10 % 2.1692 m at 15
      {"Glazing Clear", 1200},    // 0.2 square metres at 60
      {"Labour", 1500},           // 30 minutes at 0.50
      {"Least charge", 567},      // the lines so far are 94.53; 100.20 - 94.53
      {"Rounding", -20},          // 100.20 to the nearest 0.50
      {"One piece", 10000},
      {"2 pieces", 20000},
      {"Discount", -1000},  // 5 % of 200
      {"VAT 20 %", 3800},   // 20 % of 190
      {"Total", 22800}};
  REQUIRE(found.lines.size() == std::size(by_hand));
  for (std::size_t i = 0; i < found.lines.size(); ++i) {
    INFO(found.lines[i].what);
    CHECK(found.lines[i].what == by_hand[i].first);
    CHECK(found.lines[i].price.units == by_hand[i].second);
  }
}

TEST_CASE("the discount is that of the largest quantity reached") {
  // 84.33 a piece without labour
  const auto three = estimate(load("3"), book);
  CHECK(line(three, "One piece").price.units == 8433);
  CHECK(line(three, "3 pieces").price.units == 25299);
  CHECK(line(three, "Discount").price.units == -1265);  // 12.6495
  CHECK(line(three, "VAT 20 %").price.units == 4807);   // of 240.34
  CHECK(three.total.units == 28841);
  CHECK(line(estimate(load("10"), book), "Discount").price.units == -10541);  // 105.4125
}

TEST_CASE("tax that the prices hold is shown and not added") {
  std::string prices = book;
  prices.replace(prices.find("percent=\"20\""), 12, "percent=\"20\" included=\"yes\"");
  const auto found = estimate(load("1"), prices);
  CHECK(found.total.units == 8433);
  CHECK(line(found, "of which VAT 20 %").price.units == 1406);  // 84.33 / 6 = 14.055
}

TEST_CASE("a piece costs at least the least charge, then goes to a round price") {
  const auto found = estimate(load("1"), with("<least-charge price=\"90.02\"/>"));
  CHECK(line(found, "Least charge").price.units == 569);
  std::string prices = with("<least-charge price=\"90.02\"/>");
  prices.replace(prices.find("unit=\"in\""), 9, "unit=\"in\" round-to=\"0.50\"");
  CHECK(line(estimate(load("1"), prices), "Rounding").price.units == -2);
}

TEST_CASE("the lines add up to the total") {
  const auto found = estimate(load("1"), book, {.glazing = "", .glazed = true, .minutes = 7});
  price::Money sum;
  for (const Line& each : found.lines) {
    if (each.kind == Line::Kind::item || each.kind == Line::Kind::adjustment) {
      sum = sum + each.price;
    }
  }
  CHECK(sum == found.total);
}

TEST_CASE("a board without a price stops the estimate at the board's place") {
  std::string prices = book;
  prices.replace(prices.find("<board by"), 9, "<board name=\"Inc\" by");
  const Loaded loaded = load("1");
  const auto found = price::estimate(loaded.job, cuts_of(loaded.mat),
                                     price::parse_book(prices, "prices.xml").value());
  REQUIRE_FALSE(found.has_value());
  CHECK(to_string(found.error().front()) ==
        "job.xml:5:5: error: found no price for the board \"Ink\" in prices.xml; did you mean "
        "\"Inc\"? [price-missing]");
}

TEST_CASE("the customer sees no cost, no reckoning and no minutes") {
  const auto found = estimate(load("1"), book, {.glazing = "", .glazed = true, .minutes = 25});
  const std::string customer = price::customer_text(found), shop = price::cost_sheet_text(found);
  CHECK(customer.find("3.30") == std::string::npos);
  CHECK(customer.find("minutes") == std::string::npos);
  CHECK(customer.find("Total") != std::string::npos);
  CHECK(shop.find("3.30 EUR") != std::string::npos);
  CHECK(shop.find("25 minutes at 0.80") != std::string::npos);
}

TEST_CASE("a price book says where it is wrong") {
  const auto bad = price::parse_book(R"(<prices version="1" currency="EUR">
  <board by="sheets" price="12,50"/>
  <glasing name="Clear" by="each" price="1"/>
</prices>)",
                                     "prices.xml");
  REQUIRE_FALSE(bad.has_value());
  std::string all;
  for (const Problem& problem : bad.error()) all += to_string(problem) + "\n";
  INFO(all);
  CHECK(all.find("prices.xml:2:10: error") != std::string::npos);
  CHECK(all.find("prices.xml:2:22: error") != std::string::npos);
  CHECK(all.find("did you mean \"glazing\"?") != std::string::npos);
  CHECK(all.find("[prices-bad-amount]") != std::string::npos);
}

}  // namespace
