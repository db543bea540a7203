// What would have fitted where nothing does.

#include "engine/suggest/near_misses.h"

#include <catch2/catch.hpp>
#include <regex>

#include "engine/job/read.h"
#include "engine/length/format.h"
#include "engine/suggest/suggest.h"

using namespace mullion;
using namespace mullion::suggest;

namespace {

// Two portraits and a landscape.
Job siblings(const std::string& rest) {
  return parse_job(R"(<job version="1" reference="N" unit="in" increment="1/16"><pictures>
      <picture id="anna" width="8" height="10"/><picture id="ben" width="8" height="10"/>
      <picture id="meadow" width="12" height="8"/></pictures>)" +
                       rest + "</job>",
                   "siblings.xml", Need::pictures)
      .value();
}

std::string refusal(const Job& job, const Wishes& wishes) {
  const auto found = suggest_collages(job, wishes);
  REQUIRE_FALSE(found.has_value());
  CHECK(found.error().front().code == "suggest-nothing-fits");
  return found.error().front().message;
}

// The lengths in a message that match the groups of the pattern.
std::vector<Length> lengths(const std::string& message, const std::string& pattern) {
  std::smatch found;
  INFO(message);
  REQUIRE(std::regex_search(message, found, std::regex(pattern)));
  std::vector<Length> out;
  for (std::size_t i = 1; i < found.size(); ++i) {
    out.push_back(parse_length(found[i].str(), Unit::inch).value());
  }
  return out;
}

const std::string frame = R"(<frame rabbet-width="20" rabbet-height="24"/>)";
constexpr Length step = sixty_fourths(4);

}  // namespace

TEST_CASE("blocks that are larger both ways than another are not kept") {
  NearMisses misses;
  for (const auto& [width, height] : {std::pair{5, 5}, {6, 4}, {6, 6}, {4, 5}, {4, 6}}) {
    misses.add(inches(width), inches(height));
  }
  REQUIRE(misses.smallest().size() == 2);
  CHECK(misses.smallest()[0].width == inches(6));
  CHECK(misses.smallest()[1].width == inches(4));
}

TEST_CASE("where the frame is a little too small, the widest border that fits is said") {
  const Job job = siblings(frame);
  Wishes wishes;
  wishes.border = lengths(refusal(job, wishes), "; a border of (.*?) or a board").front();
  CHECK(wishes.border == sixty_fourths(27 * 4));
  CHECK(suggest_collages(job, wishes).has_value());
  wishes.border += step;
  CHECK_FALSE(suggest_collages(job, wishes).has_value());
}

TEST_CASE("a weighted bottom is counted in the border that would fit") {
  const Job job = siblings(R"(<borders bottom-extra="1/2"/>)" + frame);
  Wishes wishes;
  wishes.border = lengths(refusal(job, wishes), "; a border of (.*?) or a board").front();
  const auto found = suggest_collages(job, wishes);
  REQUIRE(found.has_value());
  const Sides borders = lay_out(found->best.front().job).value().borders;
  CHECK(borders.bottom - borders.top == sixty_fourths(32));
}

TEST_CASE("where no border is narrow enough, narrower gaps are said, and they fit") {
  const Job job = siblings(R"(<outer width="17" height="20"/>)");
  Wishes wishes;
  const auto fit =
      lengths(refusal(job, wishes), "; gaps of (.*?) and a border of (.*?) or a board");
  wishes.gap = fit[0];
  wishes.border = fit[1];
  CHECK(wishes.gap < inches(1));
  CHECK(suggest_collages(job, wishes).has_value());
}

TEST_CASE("the board that would do is the one nearest to the frame, and no narrower one does") {
  const std::string message = refusal(siblings(R"(<outer width="11" height="14"/>)"), {});
  CHECK(
      message ==
      "no arrangement of the pictures in rows and columns fits on 11 in x 14 in with a border of 2 "
      "in and gaps of 1 in; a board of 20 1/2 in x 22 1/2 in would fit");
  CHECK(suggest_collages(siblings(R"(<outer width="20 1/2" height="22 1/2"/>)"), {}).has_value());
  CHECK_FALSE(
      suggest_collages(siblings(R"(<outer width="20 7/16" height="22 1/2"/>)"), {}).has_value());
  CHECK_FALSE(
      suggest_collages(siblings(R"(<outer width="20 1/2" height="22 7/16"/>)"), {}).has_value());
}

TEST_CASE("a list of sizes that are all too small is called so") {
  Wishes wishes;
  wishes.stock = {{inches(11), inches(14)}, {inches(16), inches(20)}};
  CHECK(refusal(siblings(""), wishes).find("fits on any size of the list") != std::string::npos);
}

TEST_CASE("what would fit is said of many pictures too") {
  std::string xml = R"(<job version="1" reference="N" unit="in" increment="1/16"><pictures>)";
  for (int i = 0; i < 9; ++i) {
    xml += "<picture id=\"p" + std::to_string(i) + R"(" width="4" height="6"/>)";
  }
  // Three by three openings of 3 3/4 x 5 3/4 in with gaps of 1 in are 13 1/4 x 19 1/4 in.
  const Job job = parse_job(xml + R"(</pictures><outer width="16" height="22"/></job>)", "n.xml",
                            Need::pictures)
                      .value();
  CHECK(lengths(refusal(job, {}), "; a border of (.*?) or a board").front() ==
        sixty_fourths(88));  // (16 - 13 1/4) / 2 = (22 - 19 1/4) / 2 = 1 3/8 in
}
