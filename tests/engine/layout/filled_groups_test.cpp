// Groups whose parts are of free size or moved by a rule: who fills the group is part of the
// problem.

#include <algorithm>
#include <catch2/catch.hpp>
#include <map>

#include "tests/engine/layout/jobs.h"

using namespace mullion;

namespace {

std::map<std::string, Rect> rects_of(const Layout& layout) {
  std::map<std::string, Rect> out;
  for (const PlacedOpening& opening : layout.openings) out[opening.id] = opening.rect;
  return out;
}

const std::string layer = R"(<layers><layer board="Oat"/></layers>)";
const std::string squares = R"(<arrange><row gap="1"><opening id="a" width="4" height="4"/>
    <opening id="b" width="4" height="4"/></row></arrange>)";

// Rows of two free heights, of which one may be 8 in at most, the other 5 in.
std::string rows(int count) {
  std::string arrange = "<arrange><column gap=\"1\">", rules = "<rules>";
  for (int i = 1; i <= count; ++i) {
    const std::string a = "a" + std::to_string(i), b = "b" + std::to_string(i);
    arrange += "<row gap=\"1\"><opening id=\"" + a +
               "\" width=\"3\" height=\"free\"/><opening id=\"" + b +
               "\" width=\"3\" height=\"free\"/></row>";
    rules += "<at-most measure=\"" + a + ".height\" length=\"8\" strength=\"strong\"/>" +
             "<at-most measure=\"" + b + ".height\" length=\"5\" strength=\"medium\"/>";
  }
  const int height = 10 * count + count - 1 + 6;
  return "<outer height=\"" + std::to_string(height) + "\"/><borders all=\"3\"/>" + layer +
         arrange + "</column></arrange>" + rules + "</rules>";
}

}  // namespace

TEST_CASE("a strong wish is not broken for a medium one by who fills the row") {
  const Layout layout = lay_out(test::job_of(rows(1))).value();
  const auto at = rects_of(layout);
  CHECK(at.at("a1").height() <= inches(8));
  CHECK(at.at("b1").height() == inches(10));  // 16 in less borders of 3 in
}

// Every way to fill is looked at here by stating it: a part as high as its row.
TEST_CASE("of all ways to fill two rows the layout has one that no other is better than") {
  const Job job = test::job_of(rows(2));
  const auto at = rects_of(lay_out(job).value());
  const auto beyond = [](const std::map<std::string, Rect>& rects, const char* first,
                         const char* second, Length most) {
    Length sum;
    for (const char* id : {first, second}) {
      sum += std::max(rects.at(id).height() - most, Length());
    }
    return sum;
  };
  const Length strong = beyond(at, "a1", "a2", inches(8));
  const Length medium = beyond(at, "b1", "b2", inches(5));
  for (const std::string one : {"a1", "b1"}) {
    for (const std::string two : {"a2", "b2"}) {
      Job stated = job;
      for (const std::string& id : {one, two}) {
        Rule rule;
        rule.kind = Rule::Kind::at_least;
        rule.of = {id + ".height"};
        rule.value = at.at(id.back() == '1' ? "b1" : "b2").height();
        stated.rules.push_back(rule);
      }
      const auto other = lay_out(stated);
      if (!other) continue;
      const auto rects = rects_of(*other);
      const Length other_strong = beyond(rects, "a1", "a2", inches(8));
      CHECK(strong <= other_strong);
      if (strong == other_strong) CHECK(medium <= beyond(rects, "b1", "b2", inches(5)));
    }
  }
}

TEST_CASE("seven and more rows of that kind are laid out as six are") {
  for (const int count : {6, 7, 9}) {
    INFO(count);
    CHECK(lay_out(test::job_of(rows(count))).has_value());
  }
}

TEST_CASE("a fixed rule moves a part within its row, equal neighbours too") {
  const Job job = test::job_of(layer + squares + R"(<rules><fixed measure="a.top" length="3"/>
      <fixed measure="b.top" length="5"/></rules>)");
  const auto layout = lay_out(job);
  REQUIRE(layout.has_value());
  const auto at = rects_of(*layout);
  CHECK(at.at("a").top == inches(3));
  CHECK(at.at("b").top == inches(5));
  CHECK(layout->groups.front().rect.top == inches(3));  // the row is as large as its parts
  CHECK(layout->groups.front().rect.bottom == inches(9));
}

TEST_CASE("an align rule moves a part to the edge of one that is not in its row") {
  const Job job = test::job_of(
      layer + R"(<arrange><row gap="1"><column gap="1"><opening id="a" width="4" height="4"/>
      <opening id="b" width="4" height="4"/></column><row gap="1">
      <opening id="c" width="4" height="4"/><opening id="d" width="4" height="4"/></row></row>
      </arrange><rules><align of="a c" edge="top"/><align of="b d" edge="bottom"/></rules>)");
  const auto layout = lay_out(job);
  REQUIRE(layout.has_value());
  const auto at = rects_of(*layout);
  CHECK(at.at("a").top == at.at("c").top);
  CHECK(at.at("b").bottom == at.at("d").bottom);
  CHECK(at.at("d").top - at.at("c").top == inches(5));
}

TEST_CASE("a wish that is not met is told, with the amount and with what it gave way to") {
  const Job job = test::job_of(R"(<outer width="14"/><borders left="2"/>)" + layer +
                               R"(<arrange><opening id="a" width="8" height="6"/></arrange>
      <rules><fixed measure="border.left" length="3" strength="strong"/></rules>)");
  const Layout layout = lay_out(job).value();
  const Problems told = told_notes(layout, job);
  const auto note = std::find_if(told.begin(), told.end(),
                                 [](const Problem& one) { return one.code == "layout-gave-way"; });
  REQUIRE(note != told.end());
  INFO(note->message);
  CHECK(note->message.find("border.left at 3 in") != std::string::npos);
  CHECK(note->message.find("not met by 1 in") != std::string::npos);
  CHECK(note->message.find("gives way to the left border of 2 in") != std::string::npos);
  CHECK(note->place.line > 0);
}

TEST_CASE("a metric job's free gaps and borders are whole centimetres") {
  const Job job = test::job_of(layer + R"(<arrange><row><opening id="a" width="100" height="100"/>
      <opening id="b" width="100" height="100"/></row></arrange>)",
                               R"(unit="mm" increment="1")");
  const Layout layout = lay_out(job).value();
  const auto at = rects_of(layout);
  CHECK(at.at("b").left - at.at("a").right == millimetres(25));
  CHECK(layout.borders.left == millimetres(layout.width > millimetres(356) ? 75 : 50));
  CHECK(layout.borders.top == layout.borders.left);
}
