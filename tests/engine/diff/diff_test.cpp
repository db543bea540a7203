#include "engine/diff/diff.h"

#include <catch2/catch.hpp>

#include "engine/job/read.h"

namespace {

using namespace mullion;

std::string job(const std::string& borders, const std::string& layers, const std::string& picture) {
  return R"(<job version="1" reference="D-1" unit="in"><customer name="Ada Fenn"/>
  <pictures><picture id="dune" width="10" height="8")" +
         picture + "/></pictures><layers><layer board=\"Oat\"/>" + layers + "</layers><borders " +
         borders + "/><arrange><opening picture=\"dune\"/></arrange></job>";
}

std::vector<std::string> compare(const std::string& before, const std::string& after) {
  const Job a = parse_job(before, "a.xml").value(), b = parse_job(after, "b.xml").value();
  const Layout la = lay_out(a).value(), lb = lay_out(b).value();
  return differences({a, la}, {b, lb});
}

TEST_CASE("a job does not differ from itself") {
  const std::string same = job("all=\"3\"", "<layer board=\"Ink\"/>", "");
  CHECK(compare(same, same).empty());
}

TEST_CASE("a larger bottom border is told with what follows from it") {
  CHECK(compare(job("all=\"3\"", "", ""), job("all=\"3\" bottom=\"3 1/2\"", "", "")) ==
        std::vector<std::string>{
            "the height of the mat grew from 13 3/4 in to 14 1/4 in",
            "the bottom border grew from 3 in to 3 1/2 in",
        });
}

TEST_CASE("another board and another reveal are told by the layer's name") {
  const auto found =
      compare(job("all=\"3\"", "<layer name=\"Under-mat\" board=\"Ink\"/>", ""),
              job("all=\"3\"", "<layer name=\"Under-mat\" board=\"Slate\" reveal=\"3/8\"/>", ""));
  CHECK(std::find(found.begin(), found.end(),
                  "the board of \"Under-mat\" is now Slate instead of Ink") != found.end());
  CHECK(std::find(found.begin(), found.end(),
                  "the reveal of \"Under-mat\" grew from 1/4 in to 3/8 in") != found.end());
}

TEST_CASE("a layer that is gone and a crop that changed are told") {
  const auto found = compare(job("all=\"3\"", "<layer name=\"Under-mat\" board=\"Ink\"/>", ""),
                             job("all=\"3\"", "", " image=\"dune.png\" zoom=\"1.5\""));
  CHECK(std::find(found.begin(), found.end(), "the layer Under-mat of Ink was taken away") !=
        found.end());
  CHECK(std::find(found.begin(), found.end(), "the crop of picture dune changed") != found.end());
}

TEST_CASE("an opening that moved is told with its direction") {
  const auto found =
      compare(job("all=\"3\"", "", ""), job("all=\"3\" left=\"3 1/4\" top=\"2 1/2\"", "", ""));
  CHECK(std::find(found.begin(), found.end(),
                  "opening 1 (dune) moved 1/4 in to the right and 1/2 in up from the mat's upper "
                  "left corner") != found.end());
}

// Side by side on a proof, sizes and boards are told by each choice itself.
TEST_CASE("what is told of a choice is its shapes and pictures, not its sizes and boards") {
  const auto look = [](const std::string& first, const std::string& other) {
    return differences_in_look(parse_job(first, "a.xml").value(),
                               parse_job(other, "b.xml").value());
  };
  const std::string image = " image=\"dune.png\"";
  const std::string plain = job("all=\"3\"", "<layer board=\"Ink\"/>", image);
  CHECK(look(plain, job("all=\"4\"", "<layer board=\"Slate\" reveal=\"3/8\"/>", image)).empty());
  CHECK(look(plain, job("all=\"3\"", "<layer board=\"Ink\"/>", image + " zoom=\"2\"")) ==
        std::vector<std::string>{"the crop of picture dune changed"});
  std::string round = plain;
  round.insert(round.find("<opening ") + 9, "shape=\"ellipse\" ");
  const auto told = look(plain, round);
  REQUIRE(told.size() == 1);
  CHECK(told.front().find("the shape of opening") != std::string::npos);
}

}  // namespace
