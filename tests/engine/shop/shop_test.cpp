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

namespace {

const std::string finishes =
    "<shop version=\"1\" name=\"Fern and Rule\">\n  <finishes>\n"
    "    <finish name=\"Oat over slate\">\n"
    "      <layer name=\"Top mat\" board=\"Oat\" colour=\"#ece5d4\" thickness=\"1/16\"/>\n"
    "      <layer board=\"Slate\" reveal=\"1/4\" ply=\"4\" spacer=\"no\"/>\n"
    "      <frame moulding=\"Ash\" colour=\"#c9b18a\" face=\"1\" lip=\"1/4 in\"/>\n"
    "    </finish>\n"
    "    <finish name=\"Bare\" unit=\"mm\"><layer core=\"#000000\" thickness=\"2.5\"/></finish>\n"
    "  </finishes>\n  <address>1 Row</address>\n</shop>\n";

}  // namespace

TEST_CASE("the finishes of a shop are read in their words, with their unit") {
  const Shop shop = parse_shop(finishes, "shop.xml").value();
  CHECK(xmllint_accepts(finishes));
  REQUIRE(shop.finishes.size() == 2);
  const Finish& oat = shop.finishes[0];
  CHECK(oat.name == "Oat over slate");
  CHECK(oat.unit == Unit::inch);
  CHECK(oat.place.line == 3);
  CHECK(oat.layers[1] ==
        Finish::Words{{"board", "Slate"}, {"ply", "4"}, {"reveal", "1/4"}, {"spacer", "no"}});
  CHECK(oat.frame.size() == 4);
  CHECK(shop.finishes[1].unit == Unit::millimetre);
  CHECK(shop.finishes[1].frame.empty());
  CHECK(shop.address == std::vector<std::string>{"1 Row"});
}

TEST_CASE("what is wrong with a finish is told where it stands, and xmllint refuses it too") {
  struct Slip {
    std::string before, after, code, found;
  };
  const Slip slips[] = {
      {"colour=\"#ece5d4\"", "colour=\"oat\"", "shop-bad-colour", "oat"},
      {"reveal=\"1/4\"", "reveal=\"wide\"", "shop-bad-length", "wide"},
      {"ply=\"4\"", "ply=\"65\"", "shop-bad-number", "65"},
      {"spacer=\"no\"", "spacer=\"maybe\"", "shop-unknown-word", "maybe"},
      {"ply=\"4\"", "plies=\"4\"", "shop-unknown-attribute", "plies"},
      {"ply=\"4\"", "only=\"a\"", "shop-unknown-attribute", "only"},
      {"<frame moulding", "<frame rabbet-width=\"9\" moulding", "shop-unknown-attribute", "rabbet"},
      {"face=\"1\"", "face=\"-1\"", "shop-out-of-range", "-1"},
      {"unit=\"mm\"", "unit=\"ft\"", "shop-unknown-word", "ft"},
      {"name=\"Bare\"", "name=\"Oat over slate\"", "shop-repeated-id", "Oat over slate"},
      {"name=\"Bare\"", "name=\"\"", "shop-out-of-range", "name"},
      {" name=\"Bare\"", "", "shop-missing-attribute", "name"},
      {"<layer core=\"#000000\" thickness=\"2.5\"/>", "", "shop-missing-element", "layer"},
      {"</finish>\n    <finish name=\"Bare\"", "<layer/></finish>\n    <finish name=\"Bare\"",
       "shop-unknown-element", "<layer> after <frame>"},
      {"</finish>\n    <finish name=\"Bare\"", "<frame/></finish>\n    <finish name=\"Bare\"",
       "shop-repeated-element", "<frame> twice"},
      {"<finishes>", "<finishes/><finishes>", "shop-repeated-element", "<finishes> twice"},
      {"<finishes>", "<finishes><board/>", "shop-unknown-element", "board"},
  };
  for (const Slip& slip : slips) {
    INFO(slip.before << " -> " << slip.after);
    std::string bad = finishes;
    REQUIRE(bad.find(slip.before) != std::string::npos);
    bad.replace(bad.find(slip.before), slip.before.size(), slip.after);
    const auto shop = parse_shop(bad, "shop.xml");
    REQUIRE_FALSE(shop.has_value());
    INFO(to_string(shop.error().front()));
    CHECK(shop.error().front().code == slip.code);
    CHECK(shop.error().front().message.find(slip.found) != std::string::npos);
    CHECK(shop.error().front().place.line > 0);
    CHECK_FALSE(xmllint_accepts(bad));
  }
  // The schema cannot say that the top mat has no reveal.
  std::string bad = finishes;
  bad.replace(bad.find("thickness"), 0, "reveal=\"1\" ");
  CHECK(parse_shop(bad, "shop.xml").error().front().code == "shop-reveal-unseen");
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
