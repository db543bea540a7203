// The shop file: what is read of it, and that its published schema, read by xmllint (libxml2), and
// our reader accept and refuse the same files.

#include "engine/shop/shop.h"

#include <catch2/catch.hpp>

#include "tests/oracle/program.h"

using namespace mullion;

namespace {

const std::string good =
    "<shop version=\"1\" name=\"Fern and Rule\" phone=\"555 0173\" email=\"hello@fern.example\"\n"
    "      logo=\"marks/fern.png\">\n"
    "  <address>\n    9 Tallow Lane\n    Nether  Wick\n\n  </address>\n</shop>\n";

std::string with(const std::string& before, const std::string& after) {
  std::string out = good;
  REQUIRE(out.find(before) != std::string::npos);
  return out.replace(out.find(before), before.size(), after);
}

bool xmllint_accepts(const std::string& xml) {
  const std::string path = oracle::scratch_folder("shop-schema") + "/shop.xml";
  oracle::write_file(path, xml);
  const std::string schema = std::string(MULLION_SOURCE) + "/engine/shop/shop.xsd";
  return oracle::run({"xmllint", "--noout", "--schema", schema, path}).status == 0;
}

}  // namespace

TEST_CASE("a shop's name, numbers, logo and lines of address are read") {
  const Shop shop = parse_shop(good, "here/shop.xml").value();
  CHECK(shop.name == "Fern and Rule");
  CHECK(shop.phone == "555 0173");
  CHECK(shop.email == "hello@fern.example");
  CHECK(shop.logo == "marks/fern.png");
  CHECK(shop.file == "here/shop.xml");
  CHECK(shop.address == std::vector<std::string>{"9 Tallow Lane", "Nether Wick"});
  CHECK(xmllint_accepts(good));
}

TEST_CASE("a name is all that a shop must have") {
  const std::string least = "<shop version=\"1\" name=\"Łódź &amp; Ørsted\"/>";
  const Shop shop = parse_shop(least, "shop.xml").value();
  CHECK(shop.name == "Łódź & Ørsted");
  CHECK(shop.address.empty());
  CHECK(shop.logo.empty());
  CHECK(xmllint_accepts(least));
}

TEST_CASE("the shop file of the gallery is read and accepted by xmllint") {
  const std::string path = oracle::gallery("shop/shop.xml");
  CHECK(read_shop(path).has_value());
  CHECK(xmllint_accepts(oracle::read_file(path)));
}

TEST_CASE("what is wrong with a shop file is refused by the reader and by xmllint") {
  struct Slip {
    std::string before, after, code;
  };
  const Slip slips[] = {
      {"version=\"1\"", "version=\"2\"", "shop-bad-number"},
      {" name=\"Fern and Rule\"", "", "shop-missing-attribute"},
      {"Fern and Rule", " ", "shop-out-of-range"},
      {"Fern and Rule", std::string(201, 'x'), "shop-too-long"},
      {"phone", "fone", "shop-unknown-attribute"},
      {"hello@fern.example", "hello", "shop-bad-email"},
      {"hello@fern.example", "a@b@c", "shop-bad-email"},
      {"hello@fern.example", "a@b c", "shop-bad-email"},
      {"marks/fern.png", "../fern.png", "shop-bad-path"},
      {"marks/fern.png", "/fern.png", "shop-bad-path"},
      {"marks/fern.png", "marks\\fern.png", "shop-bad-path"},
      {"marks/fern.png", "", "shop-bad-path"},
      {"<address>", "<address/><address>", "shop-repeated-element"},
      {"9 Tallow Lane", "<line>9</line>", "shop-unknown-element"},
      {"<address>", "<note/><address>", "shop-unknown-element"},
      {"<address>", "open late <address>", "shop-stray-text"},
  };
  for (const Slip& slip : slips) {
    INFO(slip.before << " -> " << slip.after);
    const std::string bad = with(slip.before, slip.after);
    const auto shop = parse_shop(bad, "shop.xml");
    REQUIRE_FALSE(shop.has_value());
    CHECK(shop.error().front().code == slip.code);
    CHECK(shop.error().front().file == "shop.xml");
    CHECK(shop.error().front().place.line > 0);
    CHECK_FALSE(xmllint_accepts(bad));
  }
}

TEST_CASE("a file of another kind is told apart from a shop file") {
  const auto shop = parse_shop("<job version=\"1\"/>", "job.xml");
  REQUIRE_FALSE(shop.has_value());
  CHECK(shop.error().front().message.find("expected <shop>") != std::string::npos);
  CHECK_FALSE(read_shop("/no/such/shop.xml").has_value());
}
