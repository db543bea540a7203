// What is drawn, measured in the file: strokes by MuPDF, words by Poppler, dots by librsvg.

#include "render/paper/canvas.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <functional>
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
using Drawing = std::function<void(Canvas&)>;

std::string file_of(Format format, const std::string& name, const Drawing& drawing) {
  Document document(format, {name, "", 150});
  drawing(document.add_page({inches(8), inches(6)}, ""));
  const std::string path = oracle::scratch_folder("canvas-" + name) + "/page";
  oracle::write_file(path, document.finish());
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

TEST_CASE("a text is as wide as it was measured") {
  double measured = 0, bold = 0;
  const std::string pdf = file_of(Format::pdf, "width", [&](Canvas& canvas) {
    const TextStyle style{10};
    const TextStyle strong{10, true};
    measured = canvas.text_width("Quillfeather", style);
    bold = canvas.text_width("Quillfeather", strong);
    canvas.text("Quillfeather", {50, 100}, style);
    canvas.text("Quillfeather", {50, 130}, strong);
  });
  const std::vector<Word> words = words_of(pdf);
  REQUIRE(words.size() == 2);
  CHECK(words[0].left == Approx(50).margin(0.1));
  CHECK(words[0].right - words[0].left == Approx(measured).margin(0.1));
  CHECK(words[1].right - words[1].left == Approx(bold).margin(0.1));
  CHECK(bold > measured);
  CHECK(words[0].top < 100);
  CHECK(words[0].bottom > 100);
}

TEST_CASE("a text starts, is centred or ends at its spot") {
  const std::string pdf = file_of(Format::pdf, "anchor", [](Canvas& canvas) {
    for (const Anchor anchor : {Anchor::left, Anchor::centre, Anchor::right}) {
      canvas.text("Driftwood", {288, 50 + 50 * static_cast<double>(anchor)},
                  {12, false, {}, anchor, 0});
    }
  });
  const std::vector<Word> words = words_of(pdf);
  REQUIRE(words.size() == 3);
  CHECK(words[0].left == Approx(288).margin(0.1));
  CHECK((words[1].left + words[1].right) / 2 == Approx(288).margin(0.1));
  CHECK(words[2].right == Approx(288).margin(0.1));
}

TEST_CASE("a text turned by -90 degrees climbs from its spot") {
  const oracle::DrawnPage page = page_of("turned", [](Canvas& canvas) {
    canvas.text("8 1/2", {100, 200}, {8, false, {}, Anchor::left, -90});
  });
  REQUIRE(page.labels.size() == 1);
  CHECK(page.labels[0].text == "8 1/2");
  CHECK(page.labels[0].turn == Approx(-90));
  CHECK(page.labels[0].at.x == Approx(100).margin(0.01));
  CHECK(page.labels[0].at.y == Approx(200).margin(0.01));
  CHECK(page.labels[0].size == Approx(8));
}

TEST_CASE("a text that is too long is cut between letters and ends in an ellipsis") {
  page_of("fitted", [](Canvas& canvas) {
    const TextStyle style{9};
    const std::string name = "Björn Ødegård";
    CHECK(canvas.fitted(name, 500, style) == name);
    CHECK(canvas.fitted(name, 0, style) == "");
    double before = 0;
    for (double width = 8; width < canvas.text_width(name, style); width += 1) {
      const std::string shown = canvas.fitted(name, width, style);
      INFO(shown);
      CHECK(canvas.text_width(shown, style) <= width);
      CHECK(canvas.text_width(shown, style) >= before);
      if (shown.empty()) continue;
      REQUIRE(shown.ends_with("\xE2\x80\xA6"));
      CHECK(name.starts_with(shown.substr(0, shown.size() - 3)));
      CHECK((static_cast<unsigned char>(name[shown.size() - 3]) & 0xC0) != 0x80);
      before = canvas.text_width(shown, style);
    }
    CHECK(before > 0);
  });
}

TEST_CASE("a paragraph breaks its lines at the width and says how high it is") {
  double height = 0;
  const std::string pdf = file_of(Format::pdf, "paragraph", [&](Canvas& canvas) {
    height = canvas.paragraph(
        "Fresh blade, backing sheet under bevel cuts, cut away from your hands, test cut on scrap.",
        {40, 60}, 120, {9});
  });
  const std::vector<Word> words = words_of(pdf);
  REQUIRE(words.size() == 16);
  for (const Word& word : words) {
    INFO(word.text);
    CHECK(word.left >= 39.9);
    CHECK(word.right <= 160.1);
    CHECK(word.top >= 59);
    CHECK(word.bottom <= 60 + height + 1);
  }
  CHECK(words.back().bottom > 60 + height - 6);
}

TEST_CASE("a circle of 100 mm is 100 mm across everywhere, to 0.01 mm") {
  const oracle::DrawnPage page = page_of("circle", [](Canvas& canvas) {
    canvas.outline(circle(millimetres(100)), {100, 80}, 1, {});
  });
  const oracle::Spot middle{100 + 50 * mm, 80 + 50 * mm};
  REQUIRE(page.strokes.size() > 50);
  for (const oracle::Stroke& stroke : page.strokes) {
    CHECK(std::hypot(stroke.to.x - middle.x, stroke.to.y - middle.y) ==
          Approx(50 * mm).margin(hundredth_mm).epsilon(0));
  }
}

TEST_CASE("an outline at a scale of 1 : 4 is a quarter as large") {
  const oracle::DrawnPage page = page_of("scale", [](Canvas& canvas) {
    canvas.outline(rectangle({inches(1), inches(1), inches(9), inches(5)}), {36, 36}, 0.25, {});
  });
  const auto corner = oracle::find_rectangle(page, 144, 72, 0.01);
  REQUIRE(corner);
  CHECK(corner->x == Approx(54).margin(0.01));
  CHECK(corner->y == Approx(54).margin(0.01));
}

TEST_CASE("strokes keep the width, the colour and the dashes of the pen") {
  const oracle::DrawnPage page = page_of("pen", [](Canvas& canvas) {
    canvas.line({10, 10}, {200, 10}, {0.8, {0x2f, 0x64, 0x70}, {}, 1});
    canvas.line({10, 20}, {200, 20}, {0.25, {0, 0, 0}, {4, 3}, 1});
  });
  REQUIRE(page.strokes.size() == 2);
  CHECK(page.strokes[0].width == Approx(0.8));
  CHECK(page.strokes[0].colour == "#2f6470");
  CHECK_FALSE(page.strokes[0].dashed);
  CHECK(page.strokes[1].width == Approx(0.25));
  CHECK(page.strokes[1].dashed);
}

TEST_CASE("hatching fills the outline and stays inside it") {
  const oracle::Raster raster = raster_of("hatch", [](Canvas& canvas) {
    canvas.hatch(circle(inches(4)), {72, 72}, 1, 10, {1, {0, 0, 0}, {}, 1});
  });
  int inside = 0, outside = 0;
  for (int y = 0; y < raster.height; ++y) {
    for (int x = 0; x < raster.width; ++x) {
      const double from_middle = std::hypot(x + 0.5 - 216, y + 0.5 - 216);
      if (from_middle > 146 && raster.at(x, y) < 255) ++outside;
      if (from_middle < 142 && raster.at(x, y) < 200) ++inside;
    }
  }
  CHECK(outside == 0);
  // Lines 1 wide and 10 / sqrt(2) apart cover about 1 / 7 of the circle.
  CHECK(inside > 6000);
  CHECK(inside < 20000);
}

TEST_CASE("a clip holds until it ends, and the ring between two outlines leaves its middle free") {
  const oracle::Raster raster = raster_of("clip", [](Canvas& canvas) {
    const Fill black{{0, 0, 0}, 1};
    canvas.clip(Box{100, 100, 50, 50});
    canvas.fill(Box{0, 0, 300, 300}, black);
    canvas.end_clip();
    canvas.fill(Box{200, 100, 20, 20}, black);
    canvas.fill_between(
        rectangle({{}, {}, inches(2), inches(2)}),
        rectangle({sixty_fourths(32), sixty_fourths(32), sixty_fourths(96), sixty_fourths(96)}),
        {300, 200}, 1, black);
  });
  CHECK(raster.at(98, 120) == 255);
  CHECK(raster.at(101, 120) == 0);
  CHECK(raster.at(148, 148) == 0);
  CHECK(raster.at(152, 120) == 255);
  CHECK(raster.at(210, 110) == 0);
  CHECK(raster.at(310, 210) == 0);
  CHECK(raster.at(372, 272) == 255);
  CHECK(raster.at(440, 340) == 0);
}
