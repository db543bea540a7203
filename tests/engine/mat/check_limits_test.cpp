// Each check just where it speaks, and beside it where it just does not.

#include <catch2/catch.hpp>
#include <set>

#include "engine/mat/rect.h"
#include "tests/engine/mat/mats.h"

using namespace mullion;
using namespace test;

namespace {

// Two prints of 4 x 4 in side by side; the openings are 3 3/4 in wide.
std::string row(const std::string& gap, const std::string& grooves = "") {
  return R"(<pictures><picture id="a" width="4" height="4"/><picture id="b" width="4" height="4"/>
    </pictures><layers><layer board="Oat"/></layers><borders all="3"/><arrange>)" +
         grooves + "<row gap=\"" + gap +
         R"("><opening picture="a"/><opening picture="b"/></row></arrange>)";
}

struct Piece {
  std::string picture = R"(width="8" height="10")";
  std::string layers = R"(<layer board="Oat"/>)";
  std::string around = R"(<borders all="3"/>)";
  std::string opening;
  std::string reveals;
};

std::string text(const Piece& piece) {
  return "<pictures><picture id=\"p\" " + piece.picture + "/></pictures><layers" + piece.reveals +
         ">" + piece.layers + "</layers>" + piece.around + "<arrange><opening picture=\"p\" " +
         piece.opening + "/></arrange>";
}

std::string with_picture(const std::string& size) {
  Piece piece;
  piece.picture = size;
  return text(piece);
}
// The corners of 6 x 8 in lie 5 in from the middle.
std::string floated_in_circle(const std::string& diameter) {
  Piece piece;
  piece.picture = R"(width="6" height="8" float="1/2")";
  piece.opening = "shape=\"circle\" width=\"" + diameter + "\" height=\"" + diameter + "\"";
  return text(piece);
}
std::string with_layers(const std::string& layers, const std::string& reveals = "") {
  Piece piece;
  piece.layers = layers;
  piece.reveals = reveals;
  return text(piece);
}
std::string with_borders(const std::string& borders, const std::string& opening = "") {
  Piece piece;
  piece.around = borders;
  piece.opening = opening;
  return text(piece);
}
std::string with_opening(const std::string& opening) {
  return with_borders(R"(<borders all="3"/>)", opening);
}
// Borders of 4 1/16 in.
std::string with_lip(const std::string& lip) {
  return with_borders(
      R"(<borders all="4 1/16"/><frame rabbet-width="16" rabbet-height="18" lip=")" + lip + "\"/>");
}
std::string with_groove(const std::string& distance) {
  return row("2", "<groove distance=\"" + distance + "\" width=\"1/16\"/>");
}
std::string with_reveal(const std::string& reveal, const std::string& reading = "seen") {
  return with_layers(R"(<layer board="Oat"/><layer board="Slate" reveal=")" + reveal + "\"/>",
                     " reveal-is=\"" + reading + "\"");
}
std::string of_board(const std::string& outer) {
  Piece piece;
  piece.picture = R"(width="30" height="30")";
  piece.around = outer;
  return text(piece);
}

struct Limit {
  std::string code, speaks, silent;
};

const std::string slate = R"(<layer board="Slate" reveal="1/4")";

const std::vector<Limit> limits{
    {"check-border-bevel", with_borders(R"(<borders all="1/16"/>)"),
     with_borders(R"(<borders all="1/8"/>)")},
    {"check-bevels-meet", row("1/8"), row("3/16")},
    {"check-not-held", with_opening(R"(width="8" height="9")"),
     with_opening(R"(width="7 7/8" height="9")")},
    {"check-behind-lip", with_lip("4 1/16"), with_lip("4")},
    {"check-groove-bevel", with_groove("1/16"), with_groove("1/8")},
    {"check-groove-beyond", with_groove("3"), with_groove("2 15/16")},
    {"check-picture-beyond", with_borders(R"(<borders all="3/4"/>)", R"(width="6" height="8")"),
     with_borders(R"(<borders all="1"/>)", R"(width="6" height="8")")},
    {"check-pictures-overlap", row("3/16"), row("1/4")},
    {"check-overlap-less", with_opening(R"(width="7 7/8" height="9 3/4")"),
     with_opening(R"(width="7 3/4" height="9 3/4")")},
    {"check-overlap-small", with_picture(R"(width="8" height="10" overlap="1/32")"),
     with_picture(R"(width="8" height="10" overlap="1/16")")},
    {"check-float-small", with_picture(R"(width="8" height="10" float="1/16")"),
     with_picture(R"(width="8" height="10" float="1/8")")},
    {"check-float-hidden", floated_in_circle("10"), floated_in_circle("10 1/8")},
    {"check-overcuts-meet", row("3/16"), row("1/4")},
    {"check-bar-thin", row("5/16"), row("3/8")},
    {"check-border-stack", with_reveal("3"), with_reveal("2 7/8")},
    {"check-under-lip", with_lip("2 1/16"), with_lip("2")},
    {"check-reveal-hidden", with_reveal("1/16", "lines"), with_reveal("1/8", "lines")},
    {"check-grooves-cross",
     row("2", R"(<groove distance="1/2" width="1/16"/><groove distance="9/16" width="1/16"/>)"),
     row("2", R"(<groove distance="1/2" width="1/16"/><groove distance="5/8" width="1/16"/>)")},
    {"check-bottom-light", with_borders(R"(<borders sides="3" top="3 1/16" bottom="3"/>)"),
     with_borders(R"(<borders sides="3" top="3" bottom="3"/>)")},
    {"check-board-large", of_board(R"(<outer width="60" height="40 1/16"/>)"),
     of_board(R"(<outer width="60" height="40"/>)")},
    {"check-board-large", of_board(R"(<outer width="60 1/16" height="40"/>)"),
     of_board(R"(<outer width="40" height="60"/>)")},
    {"check-top-only", with_layers(R"(<layer board="Oat" only="p"/>)"),
     with_layers(R"(<layer board="Oat"/>)" + slate + R"( only="p"/>)")},
    {"check-much-hidden", with_opening(R"(width="6 15/16" height="9 3/4")"),
     with_opening(R"(width="7" height="9 3/4")")},
    {"check-reveal-narrow", with_reveal("1/16"), with_reveal("1/8")},
    {"check-off-rule", with_layers(R"(<layer board="Oat"/>)" + slate + R"( thickness="3/64"/>)"),
     with_layers(R"(<layer board="Oat"/>)" + slate + R"( thickness="1/16"/>)")},
    {"check-borders-least", with_borders(R"(<borders all="2 15/16"/>)"),
     with_borders(R"(<borders all="3"/>)")},
    {"check-core-alike", with_layers(R"(<layer board="Snow" core="#ffffff" colour="#f3ffff"/>)"),
     with_layers(R"(<layer board="Snow" core="#ffffff" colour="#f2ffff"/>)")},
    {"check-board-thick", with_layers(R"(<layer board="Oat" thickness="9/64"/>)"),
     with_layers(R"(<layer board="Oat" thickness="1/8"/>)")},
};

bool has(const Built& built, const std::string& code) {
  return (findings_of(built) + " ").find(code + " ") != std::string::npos;
}

// Two openings in one layer, the second moved until this much is between them.
Built two_apart(Length bar) {
  Built b = built(row("2"));
  std::vector<Window>& windows = b.mat.layers[0].windows;
  const Rect& first = windows[0].back;
  windows[1].back_edge = translated(windows[0].back_edge, first.width() + bar, Length());
  windows[1].back = bounding_box(windows[1].back_edge);
  return b;
}

// A double mat whose lower window ends this far beyond the upper one on the left.
Built lower_beyond(Length reach) {
  Built b = built(with_reveal("1/4"));
  b.mat.layers[1].windows[0].back.left = b.mat.layers[0].windows[0].back.left - reach;
  return b;
}

Built beyond_board(Length reach) {
  Built b = built(with_opening(""));
  b.mat.layers[0].windows[0].back.left = -reach;
  return b;
}

constexpr Length step = sixty_fourths(4);

}  // namespace

TEST_CASE("each check speaks at its limit and is silent one step beside it") {
  for (const Limit& limit : limits) {
    INFO(limit.code);
    CHECK(has(built(limit.speaks), limit.code));
    CHECK_FALSE(has(built(limit.silent), limit.code));
  }
}

TEST_CASE("what no layout brings about is checked all the same, and its neighbour is let pass") {
  CHECK(has(two_apart(-step), "check-overlapping"));
  CHECK_FALSE(has(two_apart(Length()), "check-overlapping"));
  CHECK(has(lower_beyond(step), "check-layer-order"));
  CHECK_FALSE(has(lower_beyond(Length()), "check-layer-order"));
  CHECK(has(beyond_board(step), "check-beyond-board"));
  CHECK_FALSE(has(beyond_board(Length()), "check-beyond-board"));
}

TEST_CASE("a small board asks for borders of 2 in, one that is larger by a step for 3 in") {
  const auto board = [](const std::string& width) {
    Piece piece;
    piece.picture = "width=\"" + width + R"(" height="10")";
    piece.around = R"(<borders all="2"/>)";
    return built(text(piece));
  };
  // 7 1/4 - 1/4 + 4 = 11 in, 10 - 1/4 + 4 = 13 3/4 in
  CHECK_FALSE(has(board("7 1/4"), "check-borders-least"));
  CHECK(has(board("7 5/16"), "check-borders-least"));
}

TEST_CASE("a picture that is listed and in an opening is not called unused") {
  const std::string two = R"(<pictures><picture id="p" width="8" height="10"/>
    <picture id="q" width="5" height="7"/></pictures><layers><layer board="Oat"/></layers>
    <borders all="3"/><arrange>)";
  const std::string p = R"(<opening picture="p"/>)", q = R"(<opening picture="q"/>)";
  CHECK(has(built(two + p + "</arrange>"), "check-picture-unused"));
  CHECK_FALSE(
      has(built(two + "<row gap=\"2\">" + p + q + "</row></arrange>"), "check-picture-unused"));
}

TEST_CASE("every check of the table stands among the limits of this file") {
  // Tested where they are found: above, with the layout, the cutters and the free outlines.
  std::set<std::string> tested{"layout-moved",         "layout-gave-way",     "check-cutter-wide",
                               "check-cutter-long",    "check-cutter-trim",   "check-cutter-groove",
                               "check-overlapping",    "check-layer-order",   "check-beyond-board",
                               "check-picture-unused", "check-outline-point", "check-cutter-reach",
                               "check-cutter-thick",   "check-cutter-deep"};
  for (const Limit& limit : limits) tested.insert(limit.code);
  for (const Explanation& check : check_table()) {
    INFO(check.code);
    CHECK(tested.contains(std::string(check.code)));
  }
}
