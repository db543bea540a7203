// What is drawn, measured in the file: strokes by MuPDF, words by Poppler, dots by librsvg.

#include "render/paper/drawing.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <pugixml.hpp>

#include "engine/mat/shape.h"
#include "render/paper/document.h"
#include "tests/oracle/drawn_page.h"
#include "tests/oracle/program.h"
#include "tests/oracle/raster.h"

using namespace mullion;
using namespace mullion::paper;

namespace {

constexpr double hundredth_mm = 0.01 / 25.4 * 72;
constexpr double mm = 72 / 25.4;

std::string file_of(Format format, const std::string& name, const Drawing& drawing) {
  const std::string path = oracle::scratch_folder("drawing-" + name) + "/page";
  oracle::write_file(path, write(format, {{{inches(8), inches(6)}, "", drawing}}, {name, ""}));
  return path;
}

oracle::DrawnPage page_of(const std::string& name, const Drawing& drawing) {
  return oracle::drawn_pages(file_of(Format::pdf, name, drawing)).at(0);
}

oracle::Raster raster_of(const std::string& name, const Drawing& drawing) {
  return oracle::rasterise_svg(file_of(Format::svg, name, drawing), 72);
}

struct Word {
  std::string text;
  double left, top, right, bottom;
};

// Poppler's words with their boxes.
std::vector<Word> words_of(const std::string& pdf) {
  const std::string html = oracle::run({"pdftotext", "-bbox", pdf, "-"}).out;
  pugi::xml_document document;
  REQUIRE(document.load_buffer(html.data(), html.size()));
  std::vector<Word> words;
  for (const auto& found : document.select_nodes("//word")) {
    const pugi::xml_node w = found.node();
    words.push_back({w.child_value(), w.attribute("xMin").as_double(),
                     w.attribute("yMin").as_double(), w.attribute("xMax").as_double(),
                     w.attribute("yMax").as_double()});
  }
  return words;
}

Outline circle(Length diameter) {
  const Rect box{{}, {}, diameter, diameter};
  return shape_outline({ShapeKind::ellipse, {}, {}, {}, {}}, box, {}).value();
}

}  // namespace

// Where an outline lies on the page, at that scale.
Path placed(const Outline& outline, Spot origin, double scale = 1) {
  return transformed(trace(outline), {scale, 0, 0, scale, origin.x, origin.y});
}

constexpr const char* caution =
    "Fresh blade, backing sheet under bevel cuts, cut away from your hands, test cut on scrap.";

TEST_CASE("a text is as wide as it was measured") {
  const TextStyle style{10};
  const TextStyle strong{10, true};
  const double measured = text_width("Quillfeather", style);
  const double bold = text_width("Quillfeather", strong);
  Drawing drawing;
  drawing.text("Quillfeather", {50, 100}, style).text("Quillfeather", {50, 130}, strong);
  const std::vector<Word> words = words_of(file_of(Format::pdf, "width", drawing));
  REQUIRE(words.size() == 2);
  CHECK(words[0].left == Approx(50).margin(0.1));
  CHECK(words[0].right - words[0].left == Approx(measured).margin(0.1));
  CHECK(words[1].right - words[1].left == Approx(bold).margin(0.1));
  CHECK(bold > measured);
  CHECK(words[0].top < 100);
  CHECK(words[0].bottom > 100);
}

TEST_CASE("a text starts, is centred or ends at its spot") {
  Drawing drawing;
  for (const Anchor anchor : {Anchor::left, Anchor::centre, Anchor::right}) {
    drawing.text("Driftwood", {288, 50 + 50 * static_cast<double>(anchor)},
                 {12, false, {}, anchor, 0});
  }
  const std::vector<Word> words = words_of(file_of(Format::pdf, "anchor", drawing));
  REQUIRE(words.size() == 3);
  CHECK(words[0].left == Approx(288).margin(0.1));
  CHECK((words[1].left + words[1].right) / 2 == Approx(288).margin(0.1));
  CHECK(words[2].right == Approx(288).margin(0.1));
}

TEST_CASE("a text turned by -90 degrees climbs from its spot") {
  Drawing drawing;
  drawing.text("8 1/2", {100, 200}, {8, false, {}, Anchor::left, -90});
  const oracle::DrawnPage page = page_of("turned", drawing);
  REQUIRE(page.labels.size() == 1);
  CHECK(page.labels[0].text == "8 1/2");
  CHECK(page.labels[0].turn == Approx(-90));
  CHECK(page.labels[0].at.x == Approx(100).margin(0.01));
  CHECK(page.labels[0].at.y == Approx(200).margin(0.01));
  CHECK(page.labels[0].size == Approx(8));
}

TEST_CASE("letters stand apart by their tracking, and a family is the one that is asked for") {
  const TextStyle plain{.size = 10}, tracked{.size = 10, .tracking = 2};
  CHECK(text_width("PROOF", tracked) == Approx(text_width("PROOF", plain) + 4 * 2).margin(0.01));
  CHECK(text_width("Wider", {.size = 10, .family = "DejaVu Sans Mono"}) !=
        Approx(text_width("Wider", plain)).margin(0.1));
  Drawing drawing;
  drawing.text("PROOF", {50, 100}, tracked);
  const std::vector<Word> words = words_of(file_of(Format::pdf, "tracking", drawing));
  REQUIRE(words.size() == 1);
  CHECK(words[0].right - words[0].left == Approx(text_width("PROOF", tracked)).margin(2.1));
}

TEST_CASE("a text that is too long is cut between letters and ends in an ellipsis") {
  const TextStyle style{9};
  const std::string name = "Björn Ødegård";
  CHECK(fitted(name, 500, style) == name);
  CHECK(fitted(name, 0, style) == "");
  double before = 0;
  for (double width = 8; width < text_width(name, style); width += 1) {
    const std::string shown = fitted(name, width, style);
    INFO(shown);
    CHECK(text_width(shown, style) <= width);
    CHECK(text_width(shown, style) >= before);
    if (shown.empty()) continue;
    REQUIRE(shown.ends_with("\xE2\x80\xA6"));
    CHECK(name.starts_with(shown.substr(0, shown.size() - 3)));
    CHECK((static_cast<unsigned char>(name[shown.size() - 3]) & 0xC0) != 0x80);
    before = text_width(shown, style);
  }
  CHECK(before > 0);
}

TEST_CASE("a text of a million letters is fitted at once") {
  const std::string endless(1'000'000, 'n');
  const std::string shown = fitted(endless, 100, {9});
  CHECK(shown.size() > 10);
  CHECK(shown.size() < 30);
}

TEST_CASE("a text is set smaller to fit, down to a part of its size") {
  const TextStyle style{12};
  const double wide = text_width("Under-mat, 4-ply board", style);
  CHECK(narrowed("Under-mat, 4-ply board", wide + 1, style).size == 12);
  const TextStyle narrow = narrowed("Under-mat, 4-ply board", wide / 2, style);
  CHECK(text_width("Under-mat, 4-ply board", narrow) <= wide / 2);
  CHECK(narrow.size == Approx(6).margin(0.02));
  CHECK(narrowed("Under-mat, 4-ply board", wide / 2, style, 0.8).size == Approx(9.6));
}

TEST_CASE("lines are broken at the width and drawn one below the other") {
  const std::vector<std::string> lines = lines_of(caution, 120, {9});
  Drawing drawing;
  CHECK(draw_lines(drawing, caution, {40, 60}, 120, {9}, 12) == lines.size());
  const std::vector<Word> words = words_of(file_of(Format::pdf, "lines", drawing));
  REQUIRE(words.size() == 16);
  for (const Word& word : words) {
    INFO(word.text);
    CHECK(word.left >= 39.9);
    CHECK(word.right <= 160.1);
  }
  CHECK(words.front().bottom > 60);
  CHECK(words.back().bottom > 60 + 12 * static_cast<double>(lines.size() - 1));
  CHECK(words.back().top < 60 + 12 * static_cast<double>(lines.size() - 1));
  std::string joined;
  for (const std::string& line : lines) joined += (joined.empty() ? "" : " ") + line;
  CHECK(joined == caution);
}

TEST_CASE("a word that is too long is broken, a length that would fit is not") {
  const std::vector<std::string> parts = lines_of("Quillfeatherstonehaugh", 40, {9});
  CHECK(parts.size() > 2);
  for (const std::string& part : parts) CHECK(text_width(part, {9}) <= 40);
  for (double width = 45; width < 300; width += 1) {
    for (const std::string& line : lines_of("guide at 4 5/8 in, stop at 12 3/16 in", width, {9})) {
      INFO(width << ": " << line);
      CHECK_FALSE(line.starts_with("5/8"));
      CHECK_FALSE(line.starts_with("3/16"));
      CHECK_FALSE(line.starts_with("in"));
    }
  }
  CHECK(lines_of("", 40, {9}).empty());
}

TEST_CASE("a circle of 100 mm is 100 mm across everywhere, to 0.01 mm") {
  Drawing drawing;
  drawing.stroke(placed(circle(millimetres(100)), {100, 80}));
  const oracle::DrawnPage page = page_of("circle", drawing);
  const oracle::Spot middle{100 + 50 * mm, 80 + 50 * mm};
  REQUIRE(page.strokes.size() > 50);
  for (const oracle::Stroke& stroke : page.strokes) {
    CHECK(std::hypot(stroke.to.x - middle.x, stroke.to.y - middle.y) ==
          Approx(50 * mm).margin(hundredth_mm).epsilon(0));
  }
}

TEST_CASE("an outline at a scale of 1 : 4 is a quarter as large") {
  Drawing drawing;
  drawing.stroke(placed(rectangle({inches(1), inches(1), inches(9), inches(5)}), {36, 36}, 0.25));
  const oracle::DrawnPage page = page_of("scale", drawing);
  const auto corner = oracle::find_rectangle(page, 144, 72, 0.01);
  REQUIRE(corner);
  CHECK(corner->x == Approx(54).margin(0.01));
  CHECK(corner->y == Approx(54).margin(0.01));
}

TEST_CASE("strokes keep the width, the colour and the dashes of the pen") {
  Drawing drawing;
  drawing.stroke(line({10, 10}, {200, 10}), {0.8, {0x2f, 0x64, 0x70}, {}, 1})
      .stroke(line({10, 20}, {200, 20}), {0.25, {0, 0, 0}, {4, 3}, 1});
  const oracle::DrawnPage page = page_of("pen", drawing);
  REQUIRE(page.strokes.size() == 2);
  CHECK(page.strokes[0].width == Approx(0.8));
  CHECK(page.strokes[0].colour == "#2f6470");
  CHECK_FALSE(page.strokes[0].dashed);
  CHECK(page.strokes[1].width == Approx(0.25));
  CHECK(page.strokes[1].dashed);
}

TEST_CASE("hatching fills the outline and stays inside it") {
  Drawing drawing;
  drawing.stroke(hatching(placed(circle(inches(4)), {72, 72}), 7), {1, {0, 0, 0}, {}, 1});
  const oracle::Raster raster = raster_of("hatch", drawing);
  int inside = 0, outside = 0;
  for (int y = 0; y < raster.height; ++y) {
    for (int x = 0; x < raster.width; ++x) {
      const double from_middle = std::hypot(x + 0.5 - 216, y + 0.5 - 216);
      if (from_middle > 146 && raster.at(x, y) < 255) ++outside;
      if (from_middle < 142 && raster.at(x, y) < 200) ++inside;
    }
  }
  CHECK(outside == 0);
  // Lines 1 wide and 7 apart cover about 1 / 7 of the circle.
  CHECK(inside > 6000);
  CHECK(inside < 20000);
}

TEST_CASE("a clip holds for its group, and the ring between two outlines leaves its middle free") {
  const Fill black{{0, 0, 0}, 1};
  Drawing clipped, drawing;
  clipped.fill(rectangle(Box{0, 0, 300, 300}), black);
  drawing.clipped(clipped, Box{100, 100, 50, 50})
      .fill(rectangle(Box{200, 100, 20, 20}), black)
      .fill(placed(rectangle({{}, {}, inches(2), inches(2)}), {300, 200})
                .append(placed(rectangle({sixty_fourths(32), sixty_fourths(32), sixty_fourths(96),
                                          sixty_fourths(96)}),
                               {300, 200})),
            black);
  const oracle::Raster raster = raster_of("clip", drawing);
  CHECK(raster.at(98, 120) == 255);
  CHECK(raster.at(101, 120) == 0);
  CHECK(raster.at(148, 148) == 0);
  CHECK(raster.at(152, 120) == 255);
  CHECK(raster.at(210, 110) == 0);
  CHECK(raster.at(310, 210) == 0);
  CHECK(raster.at(372, 272) == 255);
  CHECK(raster.at(440, 340) == 0);
}
