#include <catch2/catch.hpp>

#include "engine/cuts/refusal.h"
#include "engine/job/read.h"

using namespace mullion;

namespace {

Problems findings_on(const CutterProfile& cutter, const std::string& width,
                     const std::string& height, const std::string& shape = "rectangle") {
  const std::string xml =
      R"(<job version="1" reference="C" unit="in" increment="1/16">
      <layers><layer name="Top mat" board="Oat"/></layers><borders all="4"/>
      <arrange><opening id="w" width=")" +
      width + "\" height=\"" + height + "\" shape=\"" + shape + "\"/></arrange></job>";
  const Job job = parse_job(xml, "cutter.xml").value();
  const Layout layout = lay_out(job).value();
  const Mat mat = build_mat(job, layout).value();
  return check_on_cutter(job, layout, cuts_of(mat, cutter));
}

Problems findings(const std::string& width, const std::string& height,
                  const std::string& shape = "rectangle", int reach = 0) {
  CutterProfile cutter = default_cutter();
  if (reach > 0) cutter.reach = inches(reach);
  return findings_on(cutter, width, height, shape);
}

}  // namespace

// The generic cutter's own figures: boards to 60 in across its rail, cuts to 48 in; its over-cut on
// board 1/16 in thick is 1/16 in at each end.
TEST_CASE("a board wider than the cutter takes is found, and one as wide is not") {
  CHECK(findings("47", "47", "rectangle", 60).empty());
  const Problems wide = findings("47", "53", "rectangle", 60);
  REQUIRE(wide.size() == 2);
  CHECK(wide[0].code == "check-cutter-wide");
  CHECK(wide[0].severity == Severity::warning);
  CHECK(wide[0].message == "the board is 61 in across the rail; the cutter \"bench\" takes 60 in");
}

TEST_CASE("a cut longer than the rail is found with its over-cuts, and one as long is not") {
  CHECK(findings("47 7/8", "20", "rectangle", 60).empty());
  const Problems along = findings("48", "20", "rectangle", 60);
  REQUIRE(along.size() == 1);
  CHECK(along[0].code == "check-cutter-long");
  CHECK(along[0].message ==
        "layer 1 \"Top mat\" needs a cut of 48 1/8 in, over-cuts included; the cutter \"bench\" "
        "cuts at most 48 in");
}

// The border is 4 in: a line of 43 15/16 in ends 47 15/16 in from the arm, and its over-cut at 48.
TEST_CASE("a cut that lies beyond the rail's reach is found, and one as far is not") {
  CHECK(findings("43 15/16", "20").empty());
  const Problems beyond = findings("44", "20");
  REQUIRE(beyond.size() == 1);
  CHECK(beyond[0].code == "check-cutter-reach");
  CHECK(beyond[0].message ==
        "layer 1 \"Top mat\" needs a cut that lies 48 1/16 in from the squaring arm, over-cut "
        "included; the cutter \"bench\" reaches 48 in");
}

TEST_CASE("board that does not go under the rail is found, and board as thick is not") {
  CutterProfile cutter = default_cutter();
  cutter.thickest_board = sixty_fourths(4);
  CHECK(findings_on(cutter, "10", "8").empty());
  cutter.thickest_board = sixty_fourths(3);
  const Problems thick = findings_on(cutter, "10", "8");
  REQUIRE(thick.size() == 1);
  CHECK(thick[0].code == "check-cutter-thick");
  CHECK(
      thick[0].message ==
      "layer 1 \"Top mat\" is 1/16 in thick; under the rail of the cutter \"bench\" goes board of "
      "3/64 in");
}

TEST_CASE("board that the blade does not cut through, in two passes where it may, is found") {
  CutterProfile cutter = default_cutter();
  cutter.deepest_cut = sixty_fourths(4);
  CHECK(findings_on(cutter, "10", "8").empty());
  cutter.deepest_cut = cutter.deepest_in_two = sixty_fourths(3);
  const Problems deep = findings_on(cutter, "10", "8");
  REQUIRE(deep.size() == 1);
  CHECK(deep[0].code == "check-cutter-deep");
  cutter.deepest_in_two = sixty_fourths(4);
  CHECK(findings_on(cutter, "10", "8").empty());
}

TEST_CASE("an oval asks nothing of the rail") {
  CHECK(findings("50", "53", "ellipse").empty());
}
