#include <catch2/catch.hpp>

#include "engine/mat/rect.h"
#include "engine/mat/svg_file.h"
#include "engine/mat/svg_transform.h"
#include "tests/engine/mat/mats.h"
#include "tests/engine/mat/measure.h"
#include "tests/oracle/program.h"

using namespace mullion;
using namespace test;

namespace {

// A leaf of our own drawing.
const std::string leaf = "M50 0 C90 30 90 80 50 120 C10 80 10 30 50 0 Z";

std::string svg(const std::string& inside) {
  return "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 100 120\">\n" + inside +
         "\n</svg>\n";
}

std::string why_not(const std::string& bytes, const std::string& id = "") {
  const auto path = find_svg_path(bytes, id, "leaf.svg");
  return path ? std::string() : to_string(path.error().front());
}

}  // namespace

TEST_CASE("an opening takes its outline from an SVG file beside the job file") {
  const std::string folder = oracle::scratch_folder("free-outline");
  oracle::write_file(folder + "/leaf.svg", svg("<path id=\"leaf\" d=\"" + leaf + "\"/>"));
  const std::string lines = R"(
    <pictures><picture id="p" width="6" height="9"/></pictures>
    <layers><layer board="Oat"/><layer board="Slate" reveal="1/4"/></layers>
    <arrange><opening picture="p" shape="outline" file="leaf.svg"/></arrange>)";
  Job job = job_of(lines);
  job.file = folder + "/job.xml";
  const Layout layout = lay_out(job).value();
  const auto mat = build_mat(job, layout);
  REQUIRE(mat);
  const Window& lower = mat->layers[1].windows[0];
  const Window& upper = mat->layers[0].windows[0];
  CHECK(lower.back == inset(layout.openings[0].rect,
                            reveal_stack(job, *std::get_if<Opening>(&job.arrangement.what))));
  // The leaf's points are mitred, so they reach beyond the rectangle that the layout placed.
  CHECK(upper.back.top < layout.openings[0].rect.top);
  CHECK(upper.back.left == layout.openings[0].rect.left);
  const Polyline sight = sampled(lower.back_edge, 1'000);
  const double line = static_cast<double>(sixty_fourths(16 + 4).ticks());
  for (Vector p : sampled(upper.back_edge, 10)) {
    if (p.y < static_cast<double>(lower.back.top.ticks()) ||
        p.y > static_cast<double>(lower.back.bottom.ticks())) {
      continue;
    }
    CHECK(std::abs(distance_to(sight, p) - line) < 8);
  }
}

TEST_CASE("slender strips of board and far points of a drawn outline are found") {
  const std::string folder = oracle::scratch_folder("outline-checks");
  const auto findings = [&](const std::string& path, const std::string& below = "") {
    oracle::write_file(folder + "/form.svg", svg("<path d=\"" + path + "\"/>"));
    Job job = job_of(R"(<layers><layer board="Oat"/>)" + below + R"(</layers><borders all="3"/>
      <arrange><opening width="8" height="10" shape="outline" file="form.svg"/></arrange>)");
    job.file = folder + "/job.xml";
    const Layout layout = lay_out(job).value();
    return findings_of({job, layout, build_mat(job, layout).value()});
  };
  // In parts of 8 in wide and 10 in high: a strip 1/4 in wide, one of 1/2 in, an eyelet that
  // hangs on 1/4 in, a pointed notch.
  CHECK(findings("M0 0 H32 V40 H16.5 V10 H15.5 V40 H0 Z") == "check-bar-thin");
  CHECK(findings("M0 0 H32 V40 H17 V10 H15 V40 H0 Z").empty());
  CHECK(findings("M0 0 H32 V40 H16.5 V30 H22 V10 H10 V30 H15.5 V40 H0 Z") == "check-bar-thin");
  CHECK(findings("M0 0 H32 V40 H20 L16 25 L12 40 H0 Z").empty());
  const std::string gable = "M16 0 L32 12 V40 H0 V12 Z", cross =
                                                             "M10 0 H22 V12 H32 V24 H22 V40 "
                                                             "H10 V24 H0 V12 H10 Z";
  const std::string under = R"(<layer board="Slate" reveal="1/4"/>)";
  CHECK(findings(gable).empty());
  CHECK(findings(gable, under) == "check-outline-point");
  CHECK(findings(cross, under).empty());
}

TEST_CASE("a missing outline file is named with the opening that asks for it") {
  const std::string told = refusal_of(R"(
    <pictures><picture id="p" width="6" height="9"/></pictures>
    <layers><layer board="Oat"/></layers>
    <arrange><opening picture="p" shape="outline" file="nowhere.svg"/></arrange>)");
  CHECK(told.find("nowhere.svg") != std::string::npos);
  CHECK(told.find("test.xml:4:14: note: that file has the outline of opening \"p\"") !=
        std::string::npos);
}

TEST_CASE("a path is found by its id, with the transforms around it") {
  const auto path = find_svg_path(
      svg("<path id=\"a\" d=\"M0 0 H1 V1 Z\"/><g transform=\"translate(5 6) scale(2,-3)\">"
          "<path id=\"b\" transform=\"matrix(0 1 -1 0 1 2)\" d=\"M0 0 H10 V20 Z\"/></g>"),
      "b", "two.svg");
  REQUIRE(path);
  // (10, 0): matrix gives (1, 12); scale (2, -36); translate (7, -30).
  CHECK((*path)[0].curve.end.x == Approx(7));
  CHECK((*path)[0].curve.end.y == Approx(-30));
  const auto turned = parse_transform("rotate(90, 1 2)");
  REQUIRE(turned);
  CHECK((*turned)({2, 2}).x == Approx(1));
  CHECK((*turned)({2, 2}).y == Approx(3));
  CHECK_FALSE(parse_transform("scale()"));
  CHECK_FALSE(parse_transform("turn(1)"));
  CHECK_FALSE(parse_transform("scale(1"));
  CHECK_FALSE(parse_transform("scale(1e300)"));
}

TEST_CASE("an SVG file without the one outline is refused at its place") {
  CHECK(why_not("<svg").find("leaf.svg:1:") == 0);
  CHECK(why_not(svg("<rect/>")).find("found no <path>") != std::string::npos);
  CHECK(why_not(svg("<path/>")).find("leaf.svg:2:1: error: the <path> has no d") == 0);
  CHECK(why_not(svg("<path id=\"a\" d=\"M0 0\"/>\n <path id=\"b\"/>"))
            .find("leaf.svg:3:2: error: found 2 paths; expected one, or a path named in the job, "
                  "such as path=\"a\" or \"b\"") == 0);
  CHECK(why_not(svg("<path id=\"leaf\" d=\"M0 0\"/>"), "laef").find("did you mean \"leaf\"?") !=
        std::string::npos);
  CHECK(why_not(svg("<path d=\"M0 0 L1 1 L1 x\"/>"))
            .find("leaf.svg:2:1: error: found \"x\"; expected a number (character 14 of the path's "
                  "d)") == 0);
  CHECK(
      why_not(svg("<g transform=\"spin(3)\"><path d=\"M0 0 H1 V1Z\"/></g>")).find("leaf.svg:2:1") ==
      0);
  CHECK(why_not(svg("<path d=\"" + leaf + "\"/>")).empty());
}

TEST_CASE("letters in an SVG file are refused as such, not as a missing path") {
  const std::string letters =
      "found letters in a <text>, which have no outline here; expected a "
      "<path> (a drawing program can turn text into paths";
  CHECK(why_not(svg("<g><text>1924</text></g>")).find("leaf.svg:2:4: error: " + letters) == 0);
  const std::string both = svg("<text id=\"year\">1924</text><path d=\"" + leaf + "\"/>");
  CHECK(why_not(both, "year").find(letters) != std::string::npos);
  CHECK(why_not(both).empty());
  CHECK(why_not(svg("<text id=\"a\">A</text><path id=\"a\" d=\"" + leaf + "\"/>"), "a").empty());
}

TEST_CASE("a deeply nested SVG file neither crashes nor hangs") {
  std::string bytes;
  for (int i = 0; i < 200'000; ++i) bytes += "<g>";
  CHECK_FALSE(why_not(bytes).empty());
  for (int i = 0; i < 200'000; ++i) bytes += "</g>";
  CHECK(why_not(bytes).find("found no <path>") != std::string::npos);
}
