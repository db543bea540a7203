#include "engine/mat/checks.h"

#include <catch2/catch.hpp>
#include <set>

#include "tests/engine/mat/mats.h"

using namespace mullion;
using namespace test;

namespace {

std::string pair_of_openings(const std::string& row, const std::string& more = "",
                             const std::string& shape = "") {
  return R"(<pictures><picture id="a" width="4" height="4"/><picture id="b" width="4" height="4"/>
    </pictures><layers><layer board="Oat"/></layers><borders all="3"/>)" +
         more + "<arrange><row " + row + "><opening picture=\"a\" " + shape +
         "/><opening picture=\"b\" " + shape + "/></row></arrange>";
}

std::string one(const std::string& picture, const std::string& layers, const std::string& rest,
                const std::string& opening = "") {
  return "<pictures><picture id=\"p\" " + picture + "/></pictures><layers>" + layers + "</layers>" +
         rest + "<arrange><opening picture=\"p\" " + opening + "/></arrange>";
}

const std::string plain = R"(width="8" height="10")";
const std::string oat = R"(<layer board="Oat"/>)";
const std::string wide = R"(<borders all="3"/>)";

}  // namespace

TEST_CASE("every check has a code of its own, a line and a reason") {
  std::set<std::string_view> codes;
  for (const Explanation& info : check_table()) {
    CHECK(codes.insert(info.code).second);
    CHECK_FALSE(info.summary.empty());
    CHECK(info.reason.size() > 20);
    CHECK(info.advice.size() > 15);
    CHECK(info.advice.back() == '.');
    CHECK(info.summary.back() != '.');
    CHECK(info.reason.back() == '.');
  }
}

TEST_CASE("a sound job has no findings") {
  CHECK(findings_of(built(one(plain, oat, wide))).empty());
  CHECK(findings_of(built(pair_of_openings(R"(gap="2")"))).empty());
}

TEST_CASE("a narrow bar is told by what is wrong with it") {
  CHECK(findings_of(built(pair_of_openings(R"(gap="3/8")"))).empty());
  CHECK(message_of(built(pair_of_openings(R"(gap="5/16")")), "check-bar-thin") ==
        "the bar between opening 1 \"a\" and opening 2 \"b\" of layer 1 \"Top mat\" is 5/16 in "
        "wide on board 1/16 in thick; at least 3/8 in is stiff enough");
  CHECK(message_of(built(pair_of_openings(R"(gap="3/16")")), "check-overcuts-meet")
            .find("over-cuts of about 1/16 in from both sides leave 1/16 in") != std::string::npos);
  CHECK(message_of(built(pair_of_openings(R"(gap="1/8")")), "check-bevels-meet")
            .find("the bevels take 1/8 in") != std::string::npos);
}

TEST_CASE("round windows have no over-cuts, and their bar is measured where it is narrowest") {
  Built b = built(pair_of_openings(R"(gap="3/16")", "", R"(shape="circle")"));
  CHECK(findings_of(b) == "check-pictures-overlap check-bar-thin");
  // Circles of 3 3/4 in with centres 3 in apart both ways are apart though their boxes overlap.
  std::vector<Window>& windows = b.mat.layers[0].windows;
  const auto move_second = [&](Length down) {
    windows[1].back_edge = translated(windows[0].back_edge, inches(3), down);
    windows[1].back = bounding_box(windows[1].back_edge);
  };
  move_second(inches(3));
  CHECK(findings_of(b) == "check-pictures-overlap");
  move_second(inches(2));
  CHECK(findings_of(b) == "check-overlapping check-pictures-overlap");
}

TEST_CASE("pictures that overlap behind a narrow bar are found") {
  CHECK(message_of(built(pair_of_openings(R"(gap="3/16")")), "check-pictures-overlap") ==
        "picture \"a\" and picture \"b\" overlap by 1/16 in behind the bar");
}

TEST_CASE("a picture that its opening does not cover is not held") {
  const auto opening = [](const std::string& size) { return built(one(plain, oat, wide, size)); };
  CHECK(message_of(opening(R"(width="8" height="9")"), "check-not-held") ==
        "picture \"p\" is not held in opening 1 \"p\": its edge lies on that of the mat");
  CHECK(message_of(opening(R"(width="8 1/2" height="9")"), "check-not-held")
            .find("1/4 in is open beside it") != std::string::npos);
  CHECK(message_of(opening(R"(width="7 7/8" height="9 3/4")"), "check-overlap-less") ==
        "the mat covers the edge of picture \"p\" by 1/16 in; 1/8 in is asked for");
  CHECK(message_of(opening(R"(width="6" height="9 3/4")"), "check-much-hidden").find("1 in") !=
        std::string::npos);
  CHECK(findings_of(built(one(plain + R"( overlap="1/32")", oat, wide))) == "check-overlap-small");
  CHECK(findings_of(built(one(plain + R"( float="1/16")", oat, wide))) == "check-float-small");
}

TEST_CASE("a floated picture shows its corners in an opening that is round enough for them") {
  const std::string floated = R"(width="6" height="8" float="1/2")";
  const auto in = [&](const std::string& shape) { return built(one(floated, oat, wide, shape)); };
  CHECK(findings_of(in("")).empty());
  CHECK(findings_of(in(R"(shape="rounded" corner="1/2")")).empty());
  // The corner of 6 x 8 in is 5 in from the middle, the circle's edge 4 1/2 in.
  CHECK(message_of(in(R"(shape="circle" width="9" height="9")"), "check-float-hidden") ==
        "the shape of opening 1 \"p\" hides edges of the floated picture \"p\", its corners by "
        "about 1/2 in");
  CHECK(message_of(in(R"(shape="circle" width="10 1/8")"), "check-float-small")
            .find("is about 1/16 in wide") != std::string::npos);
  CHECK(findings_of(in(R"(shape="circle" width="11")")).empty());
}

TEST_CASE("borders are held against lip, layers, weight and the course sheet") {
  const auto border = [](const std::string& borders, const std::string& lip = "1/4",
                         const std::string& layers = oat) {
    return built(
        one(plain, layers,
            borders + R"(<frame rabbet-width="16" rabbet-height="18" lip=")" + lip + "\"/>"));
  };
  CHECK(findings_of(border("")).empty());
  CHECK(message_of(border("", "2 1/2"), "check-under-lip").find("more than half of the") !=
        std::string::npos);
  // A border that is stated may lie behind the lip; a free one may not.
  CHECK(message_of(border(R"(<borders all="4 1/16"/>)", "4 1/8"), "check-behind-lip")
            .find("hides all of") != std::string::npos);
  CHECK(message_of(built(one(plain, oat, R"(<borders top="4" bottom="3" sides="3"/>)")),
                   "check-bottom-light") == "the bottom border is 3 in, the top one 4 in");
  CHECK(message_of(built(one(plain, oat, R"(<borders all="2 1/2"/>)")), "check-borders-least") ==
        "the left border is 2 1/2 in; a course sheet asks for 3 in on a board of this size");
  CHECK(findings_of(built(one(R"(width="5" height="7")", oat, R"(<borders all="2"/>)"))).empty());
  CHECK(findings_of(built(one(plain, oat + R"(<layer board="Slate" reveal="3"/>)", wide))) ==
        "check-border-stack");
  CHECK(
      findings_of(built(one(plain, oat, R"(<borders all="1/16"/>)"))).find("check-border-bevel") ==
      0);
}

TEST_CASE("reveals that are narrow or hidden by the bevel are found") {
  const auto reveal = [](const std::string& reading, const std::string& size) {
    return built("<pictures><picture id=\"p\" " + plain + "/></pictures><layers reveal-is=\"" +
                 reading + "\">" + oat + "<layer board=\"Slate\" reveal=\"" + size +
                 "\"/></layers>" + wide + R"(<arrange><opening picture="p"/></arrange>)");
  };
  CHECK(findings_of(reveal("seen", "1/8")).empty());
  CHECK(findings_of(reveal("seen", "1/16")) == "check-reveal-narrow");
  CHECK(message_of(reveal("lines", "1/16"), "check-reveal-hidden").find("bevel of 1/16 in") !=
        std::string::npos);
}

TEST_CASE("an under-mat's lines off the rule are told, with one of them") {
  const Built b =
      built(one(plain, oat + R"(<layer board="Slate" reveal="1/4" thickness="3/64"/>)", wide));
  CHECK(message_of(b, "check-off-rule").find("is 3 19/64 in from the edge") != std::string::npos);
  const Built steep = built(one(plain, oat + R"(<layer board="Slate" thickness="0.05"/>)", wide));
  CHECK(message_of(steep, "check-off-rule").find("is 3.3 in from") != std::string::npos);
  const Built metric =
      built(one(plain, oat + R"(<layer board="Slate" thickness="1.3 mm"/>)", wide));
  CHECK(message_of(metric, "check-off-rule").find("is about 3 19/64 in") != std::string::npos);
}

TEST_CASE("boards are held against sheets, blades and their own core") {
  CHECK(message_of(built(one(R"(width="50" height="38")", oat, wide)), "check-board-large") ==
        "the board is 55 3/4 in x 43 3/4 in; the largest usual sheet is 40 in x 60 in");
  CHECK(findings_of(built(one(plain, R"(<layer board="Snow" colour="#fbfbfb"/>)", wide))) ==
        "check-core-alike");
  CHECK(findings_of(built(one(plain, R"(<layer board="Oat" thickness="3/16"/>)", wide))) ==
        "check-board-thick");
}

TEST_CASE("a window that is larger than the one above it is an error") {
  Built b = built(one(plain, oat + R"(<layer board="Slate" reveal="1/4"/>)", wide));
  std::swap(b.mat.layers[0].windows, b.mat.layers[1].windows);
  CHECK(message_of(b, "check-layer-order").find("reaches 5/16 in beyond the window above it") !=
        std::string::npos);
}

TEST_CASE("an opening beyond the board is an error") {
  Built b = built(one(plain, oat, wide));
  b.mat.layers[0].windows[0].back.left = -inches(1);
  CHECK(message_of(b, "check-beyond-board").find("reaches 1 in beyond the edge of layer 1") !=
        std::string::npos);
  Built picture = built(one(plain, oat, R"(<borders all="1/8"/>)"));
  picture.mat.pictures[0].rect.left -= inches(1);
  CHECK(findings_of(picture).find("check-picture-beyond") != std::string::npos);
}

TEST_CASE("grooves stay on the face of the board") {
  const auto grooved = [](const std::string& groove) {
    std::string lines = pair_of_openings(R"(gap="2")");
    return built(lines.insert(lines.find("<arrange>") + 9, groove));
  };
  CHECK(findings_of(grooved(R"(<groove distance="1/2" width="1/16"/>)")).empty());
  CHECK(findings_of(grooved(R"(<groove distance="1/16" width="1/16"/>)")) == "check-groove-bevel");
  CHECK(findings_of(grooved(R"(<groove distance="3" width="1/16"/>)")) == "check-groove-beyond");
  CHECK(findings_of(grooved(R"(<groove distance="1/2" width="1/16"/>
    <groove distance="17/32" width="1/16"/>)")) == "check-grooves-cross");
}

TEST_CASE("a picture in no opening is found, and no other") {
  const std::string both = R"(<pictures><picture id="p" width="8" height="10"/>
    <picture id="q" width="5" height="7"/></pictures><layers><layer board="Oat"/></layers>
    <borders all="3"/><arrange>)";
  const std::string p = R"(<opening picture="p"/>)", q = R"(<opening picture="q"/>)";
  CHECK(message_of(built(both + p + "</arrange>"), "check-picture-unused") ==
        "picture \"q\" is in no opening");
  CHECK(findings_of(built(both + "<row gap=\"2\">" + p + q + "</row></arrange>")).empty());
}

TEST_CASE("a top layer that lists its openings is told that the list changes nothing") {
  const auto listed = [](const std::string& top, const std::string& under) {
    return built(
        one(plain, "<layer board=\"Oat\"" + top + "/><layer board=\"Slate\"" + under + "/>", wide));
  };
  CHECK(findings_of(listed(R"( only="p")", "")) == "check-top-only");
  CHECK(findings_of(listed("", R"( only="p")")).empty());
}

TEST_CASE("a stated window larger than its picture is found; one left to the picture is not") {
  CHECK(findings_of(built(one(plain, oat, wide, R"(width="8 1/4" height="9")"))) ==
        "check-not-held");
  CHECK(findings_of(built(one(plain, oat, wide))).empty());
}
