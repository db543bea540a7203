#include <catch2/catch.hpp>
#include <pugixml.hpp>
#include <set>
#include <sstream>

#include "engine/locale/locale.h"
#include "tests/oracle/program.h"

// Against the Unicode Common Locale Data Repository, version 41: see tests/data/cldr/SOURCE.md.

using namespace mullion;

namespace {

std::set<std::string> territories(const char* element, const std::string& type) {
  pugi::xml_document data;
  REQUIRE(data.load_file(oracle::test_data("cldr/measurement.xml").c_str()));
  std::set<std::string> out;
  for (const pugi::xml_node& node : data.child("measurementData").children(element)) {
    if (node.attribute("type").value() != type || node.attribute("category")) continue;
    std::istringstream words(node.attribute("territories").value());
    for (std::string word; words >> word;) out.insert(word);
  }
  return out;
}

std::vector<std::string> all_codes() {
  std::vector<std::string> out;
  for (char a = 'A'; a <= 'Z'; ++a) {
    for (char b = 'A'; b <= 'Z'; ++b) out.push_back({a, b});
  }
  return out;
}

}  // namespace

TEST_CASE("Letter paper is used where CLDR says so, and A4 elsewhere") {
  const auto letter = territories("paperSize", "US-Letter");
  REQUIRE(letter.size() == 14);
  for (const std::string& code : all_codes()) {
    INFO(code);
    CHECK(uses_letter_paper(code) == letter.contains(code));
  }
}

TEST_CASE("a territory measures as CLDR says; Canada is left to the job, as its framers do") {
  const auto inches_there = territories("measurementSystem", "US");
  auto both = territories("measurementSystem", "UK");
  REQUIRE(inches_there.size() == 2);
  both.insert("CA");  // common practice, no source
  for (const std::string& code : all_codes()) {
    INFO(code);
    const Measure expected = inches_there.contains(code) ? Measure::inches
                             : both.contains(code)       ? Measure::unstated
                                                         : Measure::metric;
    CHECK(measure_in(code) == expected);
  }
}

TEST_CASE("the decimal mark of every German, French and Spanish locale is CLDR's") {
  std::istringstream lines(oracle::read_file(oracle::test_data("cldr/decimal.txt")));
  int count = 0;
  for (std::string language, territory, mark; lines >> language >> territory >> mark; ++count) {
    INFO(language << " " << territory);
    const auto locale = Locale::find(language + "_" + territory);
    REQUIRE(locale);
    CHECK(locale->number("1.5") == "1" + mark + "5");
  }
  CHECK(count == 80);
}
