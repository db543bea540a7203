#include <catch2/catch.hpp>

#include "tests/engine/mat/mats.h"

using namespace mullion;
using namespace test;

namespace {

Sides even(Length length) {
  return {length, length, length, length};
}

const std::string one_picture = R"(<pictures><picture id="p" width="8" height="10"/></pictures>)";
const std::string one_opening = R"(<arrange><opening picture="p"/></arrange>)";

std::string triple(const std::string& reading) {
  return one_picture + R"(
    <layers reveal-is=")" +
         reading + R"(">
      <layer board="Oat"/>
      <layer board="Slate" reveal="1/8"/>
      <layer board="Brick" reveal="1/4"/>
    </layers>
    <borders all="2"/>)" +
         one_opening;
}

}  // namespace

// "Measuring for a mat", a frame workshop's leaflet,
// framersworkshop.com/SpecialtyMats/matmeasuring.html: an 8 x 10 in picture less 1/8 in a side.
TEST_CASE("an 8 x 10 in picture is held by a window of 7 3/4 x 9 3/4 in") {
  const Built b = built(one_picture + R"(<layers><layer board="Oat"/></layers>)" + one_opening);
  const Window& window = b.window(1, 1);
  CHECK(window.back.width() == sixty_fourths(7 * 64 + 48));
  CHECK(window.back.height() == sixty_fourths(9 * 64 + 48));
  CHECK(window.face.width() == window.back.width() + sixty_fourths(8));
  CHECK(b.mat.pictures[0].sight == window.back);
  CHECK(b.mat.pictures[0].rect.left == window.back.left - sixty_fourths(8));
  CHECK(b.mat.pictures[0].rect.width() == inches(8));
}

// kombat.org/framemaking/step7.html: board 476 x 413 mm, document 216 x 279 mm, 2 mm covered on
// each edge: window of the back mat 212 x 275 mm.
TEST_CASE("a document of 216 x 279 mm covered by 2 mm shows 212 x 275 mm in the back mat") {
  const Built b = built(R"(
    <pictures><picture id="p" width="216" height="279" overlap="2"/></pictures>
    <layers><layer board="Oat"/><layer board="Slate" reveal="6"/></layers>
    <outer width="413" height="476"/>
    <arrange><opening picture="p"/></arrange>)",
                        R"(unit="mm" increment="0.5")");
  CHECK(b.window(2, 1).back.width() == millimetres(212));
  CHECK(b.window(2, 1).back.height() == millimetres(275));
  CHECK(b.window(1, 1).back.width() > millimetres(212 + 2 * 6));
}

// A framers' forum, answer on triple mats; common practice: top border 2 in, middle reveal 1/8,
// bottom reveal 1/4 in: the middle mat's line 1/8 in inside the top mat's, the bottom mat's 3/8 in
// inside it. These figures neglect the bevel's run.
TEST_CASE("read from line to line, the lines of a triple mat lie 1/8 and 3/8 in inside") {
  const Built b = built(triple("lines"));
  CHECK(b.layout.borders == even(inches(2)));
  CHECK(b.inset(2, 1) == even(sixty_fourths(8)));
  CHECK(b.inset(3, 1) == even(sixty_fourths(24)));
}

TEST_CASE("seen by the eye, the same reveals put the lines one and two bevels deeper") {
  const Built b = built(triple("seen"));
  CHECK(b.inset(2, 1) == even(sixty_fourths(8 + 4)));
  CHECK(b.inset(3, 1) == even(sixty_fourths(8 + 4 + 16 + 4)));
  // From the upper back edge to this face edge: the reveals as stated.
  CHECK(b.window(2, 1).face.left - b.window(1, 1).back.left == sixty_fourths(8));
  CHECK(b.window(3, 1).face.left - b.window(2, 1).back.left == sixty_fourths(16));
}

TEST_CASE("a bevel of another angle runs less the steeper it is") {
  CHECK(bevel_run(sixty_fourths(4), 45'000) == sixty_fourths(4));
  // tan 60 degrees = sqrt 3; 2540 / 1.7320508 = 1466.47.
  CHECK(bevel_run(sixty_fourths(4), 60'000) == Length::from_ticks(1466));
  CHECK(bevel_run(sixty_fourths(4), 90'000) == Length());
}

TEST_CASE("each side and each opening may have a reveal of its own") {
  const Built b = built(R"(
    <pictures><picture id="a" width="4" height="4"/><picture id="b" width="4" height="4"/></pictures>
    <layers><layer board="Oat"/><layer board="Slate" reveal="1/4" reveal-bottom="1/2"/></layers>
    <borders all="2"/>
    <arrange><row gap="2"><opening picture="a"/>
      <opening picture="b"><reveal layer="2" all="1/8"/></opening></row></arrange>)");
  const Length run = sixty_fourths(4);
  CHECK(b.inset(2, 1) == Sides{sixty_fourths(16) + run, sixty_fourths(16) + run,
                               sixty_fourths(16) + run, sixty_fourths(32) + run});
  CHECK(b.inset(2, 2) == even(sixty_fourths(8) + run));
  CHECK(b.window(2, 1).back.width() == b.window(2, 2).back.width());
}

TEST_CASE("a layer that is not cut for an opening stays behind the mat above it") {
  const Built b = built(R"(
    <pictures><picture id="a" width="4" height="4"/><picture id="b" width="4" height="4"/></pictures>
    <layers><layer board="Oat"/><layer board="Slate" reveal="1/4" only="a"/></layers>
    <borders all="2"/>
    <arrange><row gap="2"><opening picture="a"/><opening picture="b"/></row></arrange>)");
  CHECK(b.window(2, 1).seen);
  CHECK_FALSE(b.window(2, 2).seen);
  CHECK(b.inset(2, 2) == even(-sixty_fourths(16)));
  CHECK(b.window(1, 2).back.width() == inches(4) - sixty_fourths(16));
  CHECK(b.mat.pictures[1].sight == b.window(1, 2).back);
}

TEST_CASE("in a narrow bar a hidden window takes no more than a quarter of it") {
  const Built b = built(R"(
    <pictures><picture id="a" width="4" height="4"/><picture id="b" width="4" height="4"/></pictures>
    <layers><layer board="Oat"/><layer board="Foam" thickness="3/16" spacer="yes"/></layers>
    <borders all="2"/>
    <arrange><row gap="1/2"><opening picture="a"/><opening picture="b"/></row></arrange>)");
  CHECK(b.inset(2, 1) == even(-sixty_fourths(8)));
  CHECK(b.window(2, 2).back.left - b.window(2, 1).back.right == sixty_fourths(16));
}

TEST_CASE("a spacer moves no line of the layers below it") {
  const auto lines = [](const std::string& spacer) {
    return one_picture + R"(<layers><layer board="Oat"/>)" + spacer +
           R"(<layer board="Slate" reveal="1/4"/></layers><borders all="3"/>)" + one_opening;
  };
  const Built with = built(lines(R"(<layer board="Foam" thickness="3/16" spacer="yes"/>)"));
  const Built without = built(lines(""));
  CHECK(with.window(3, 1).back_edge == without.window(2, 1).back_edge);
  CHECK(with.mat.pictures[0].sight == without.mat.pictures[0].sight);
}

TEST_CASE("a floated picture shows board all around it") {
  const Built b = built(R"(
    <pictures><picture id="p" width="8" height="10" float="1/2"/></pictures>
    <layers><layer board="Oat"/><layer board="Slate" reveal="1/4"/></layers>)" +
                        one_opening);
  const MatPicture& picture = b.mat.pictures[0];
  CHECK(b.window(2, 1).back.width() == inches(9));
  CHECK(picture.rect.left - picture.sight.left == sixty_fourths(32));
  CHECK(picture.sight.bottom - picture.rect.bottom == sixty_fourths(32));
}

TEST_CASE("one window of the top mat shows an under-mat with several openings") {
  const Built b = built(R"(
    <pictures><picture id="a" width="4" height="4"/><picture id="b" width="4" height="4"/></pictures>
    <layers><layer board="Oat"/><layer board="Slate" reveal="1/4"/></layers>
    <borders all="2"/>
    <arrange><row gap="1" window="1"><opening picture="a"/><opening picture="b"/></row></arrange>)");
  REQUIRE(b.mat.layers[0].windows.size() == 1);
  REQUIRE(b.mat.layers[1].windows.size() == 2);
  const Window& joined = b.window(1, 2);
  CHECK(joined.openings == std::vector<int>{1, 2});
  CHECK(joined.back.left == inches(2));
  // The gap is the bar of the under-mat, and the reveal is seen around the whole group.
  CHECK(b.window(2, 2).back.left - b.window(2, 1).back.right == inches(1));
  const Length line = sixty_fourths(16 + 4);
  CHECK(b.inset(2, 1) == Sides{line, line, Length(), line});
  CHECK(b.inset(2, 2) == Sides{Length(), line, line, line});
  CHECK(b.window(2, 1).back.width() == inches(4) - sixty_fourths(16));
  CHECK(joined.back.width() == (inches(4) - sixty_fourths(16) + line) * 2 + inches(1));
}

TEST_CASE("an under-mat window joins several openings of the top mat") {
  const Built b = built(R"(
    <pictures><picture id="a" width="4" height="4"/><picture id="b" width="4" height="4"/></pictures>
    <layers><layer board="Oat"/><layer board="Slate" reveal="1/4"/></layers>
    <borders all="2"/>
    <arrange><row gap="1" window="2"><opening picture="a"/><opening picture="b"/></row></arrange>)");
  REQUIRE(b.mat.layers[1].windows.size() == 1);
  const Length line = sixty_fourths(16 + 4);
  const Window& joined = b.window(2, 1);
  CHECK(joined.back.left == b.window(1, 1).back.left + line);
  CHECK(joined.back.right == b.window(1, 2).back.right - line);
  CHECK(joined.face_edge.start.x == joined.back.left - sixty_fourths(4));
  // Beside the bar the top mat holds the picture, so its window is smaller there.
  CHECK(b.mat.pictures[0].sight.right == b.window(1, 1).back.right);
  CHECK(b.mat.pictures[0].sight.width() == inches(4) - sixty_fourths(16));
  CHECK(findings_of(b).find("check-not-held") == std::string::npos);
}

TEST_CASE("a spacer below a window that joins openings is open as wide as that window") {
  const Built b = built(R"(
    <pictures><picture id="a" width="4" height="4"/><picture id="b" width="4" height="4"/></pictures>
    <layers><layer board="Oat"/><layer board="Foam" spacer="yes"/>
      <layer board="Slate" reveal="1/4"/></layers>
    <borders all="2"/>
    <arrange><row gap="1" window="1"><opening picture="a"/>
      <opening picture="b" shape="circle"/></row></arrange>)");
  REQUIRE(b.mat.layers[1].windows.size() == 1);
  const Window& top = b.window(1, 1);
  CHECK_FALSE(b.window(2, 1).seen);
  CHECK(b.window(2, 1).back.left == top.back.left - sixty_fourths(16));
  CHECK(b.window(2, 1).back.bottom == top.back.bottom + sixty_fourths(16));
  CHECK(b.window(3, 2).back_edge.segments.at(0).curved);
}

TEST_CASE("windows may be joined at two depths") {
  const Built b = built(R"(
    <pictures><picture id="a" width="4" height="4"/><picture id="b" width="4" height="4"/>
      <picture id="c" width="4" height="4"/></pictures>
    <layers><layer board="Oat"/><layer board="Slate" reveal="1/4"/>
      <layer board="Brick" reveal="1/8"/></layers>
    <borders all="2"/>
    <arrange><row gap="1" window="1"><row gap="1" window="2"><opening picture="a"/>
      <opening picture="b"/></row><opening picture="c"/></row></arrange>)");
  CHECK(b.mat.layers[0].windows.size() == 1);
  CHECK(b.mat.layers[1].windows.size() == 2);
  CHECK(b.mat.layers[2].windows.size() == 3);
  for (int opening : {1, 2, 3}) {
    CHECK(b.window(3, opening).back.width() == inches(4) - sixty_fourths(16));
    CHECK(b.window(3, opening).back.height() == inches(4) - sixty_fourths(16));
  }
  CHECK(b.window(3, 2).back.left - b.window(3, 1).back.right == inches(1));
  CHECK(b.window(2, 3).back.left - b.window(2, 2).back.right == inches(1));
}

TEST_CASE("the edges of an oval double mat are parallels of the window that shows the picture") {
  const Built b = built(one_picture + R"(
    <layers><layer board="Oat"/><layer board="Slate" reveal="1/4"/></layers>
    <arrange><opening picture="p" shape="ellipse"/></arrange>)");
  const Length line = sixty_fourths(16 + 4);
  CHECK(b.inset(2, 1) == even(line));
  CHECK(bounding_box(b.window(1, 1).back_edge) == b.window(1, 1).back);
  CHECK(bounding_box(b.window(1, 1).face_edge) == b.window(1, 1).face);
  CHECK(signed_area(b.window(1, 1).face_edge) > signed_area(b.window(1, 1).back_edge));
}

TEST_CASE("stepped corners keep their steps with a reveal of its own on each side") {
  const Built b = built(one_picture + R"(
    <layers><layer board="Oat"/><layer board="Slate" reveal="1/4" reveal-bottom="1/2"/></layers>
    <arrange><opening picture="p" shape="stepped" corner="1/2"/></arrange>)");
  CHECK(b.window(1, 1).back_edge.segments.size() == 12);
  CHECK(bounding_box(b.window(1, 1).back_edge) == b.window(1, 1).back);
  CHECK(b.inset(2, 1).bottom == sixty_fourths(32 + 4));
}

TEST_CASE("the foot of an arch may have a reveal of its own; its round may not") {
  const auto arch = [](const std::string& reveals) {
    return one_picture + R"(<layers><layer board="Oat"/><layer board="Slate" )" + reveals +
           R"(/></layers><arrange><opening picture="p" shape="arch" rise="2"/></arrange>)";
  };
  const Built b = built(arch(R"(reveal="1/4" reveal-bottom="1/2")"));
  const Built plain = built(arch(R"(reveal="1/4")"));
  CHECK(b.inset(2, 1).bottom == sixty_fourths(32 + 4));
  CHECK(b.inset(2, 1).top == sixty_fourths(16 + 4));
  CHECK(bounding_box(b.window(1, 1).back_edge) == b.window(1, 1).back);
  CHECK(b.window(1, 1).shape.rise == plain.window(1, 1).shape.rise);
  CHECK(b.window(2, 1).back.height() == plain.window(2, 1).back.height());
  CHECK(refusal_of(arch(R"(reveal="1/4" reveal-left="1/2")")).find("only the foot of an arch") !=
        std::string::npos);
}

TEST_CASE("what cannot be cut is refused in words, at its place") {
  CHECK(refusal_of(one_picture + R"(
    <layers><layer board="Oat"/><layer board="Slate" reveal="1/4" reveal-bottom="1/2"/></layers>
    <arrange><opening picture="p" shape="ellipse"/></arrange>)")
            .find("test.xml:3:14: error: opening \"p\": the shape has curves or slanting edges") !=
        std::string::npos);
  CHECK(refusal_of(R"(
    <pictures><picture id="a" width="4" height="4"/><picture id="b" width="4" height="4"/></pictures>
    <layers><layer board="Oat" only="a"/></layers>
    <arrange><row gap="1"><opening picture="a"/><opening picture="b"/></row></arrange>)")
            .find("test.xml:3:13: error: the top layer has no window for opening \"b\"") !=
        std::string::npos);
  CHECK(refusal_of(R"(
    <pictures><picture id="a" width="4" height="4"/><picture id="b" width="4" height="4"/></pictures>
    <layers><layer board="Oat"/><layer board="Slate"/></layers>
    <arrange><row gap="1" window="2"><opening picture="a" shape="circle"/>
      <opening picture="b"/></row></arrange>)")
            .find("[mat-joined-shape]") != std::string::npos);
  CHECK(refusal_of(R"(
    <pictures><picture id="a" width="4" height="4"/><picture id="b" width="4" height="4"/></pictures>
    <layers><layer board="Oat"/><layer board="Slate" only="a"/></layers>
    <arrange><row gap="1" window="1"><opening picture="a"/><opening picture="b"/></row></arrange>)")
            .find("[mat-part-of-window]") != std::string::npos);
  CHECK(refusal_of(R"(
    <pictures><picture id="a" width="4" height="4"/><picture id="b" width="4" height="4"/></pictures>
    <layers><layer board="Oat"/><layer board="Slate" only="a"/></layers>
    <arrange><row gap="1" window="2"><opening picture="a"/><opening picture="b"/></row></arrange>)")
            .find("layer 2 leaves out opening \"b\", but it has one window for the row of it") !=
        std::string::npos);
  CHECK(refusal_of(R"(
    <pictures><picture id="a" width="4" height="4"/><picture id="b" width="4" height="4"/></pictures>
    <layers><layer board="Oat"/><layer board="Slate"/></layers>
    <arrange><row gap="1" window="1"><opening picture="a"><groove distance="1/2" width="1/16"/></opening>
      <opening picture="b"/></row></arrange>)")
            .find("[mat-groove-in-window]") != std::string::npos);
}
