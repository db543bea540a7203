// V-grooves and the blanks of under-mats as the files show them: in the PDF by MuPDF, in the SVG by
// librsvg, in the DXF by ezdxf, on corner sheets and where layers are overlaid.

#include <algorithm>
#include <catch2/catch.hpp>
#include <sstream>

#include "engine/mat/rect.h"
#include "tests/oracle/drawn_page.h"
#include "tests/oracle/pdf_layers.h"
#include "tests/oracle/program.h"
#include "tests/render/template/lines_of_layer.h"
#include "tests/render/template/made.h"

using namespace mullion;
using namespace made;
using oracle::DrawnPage;

namespace {

// One opening of 9 3/4 x 7 3/4 in, 3 1/8 in from the edges, with a groove 1/8 in wide whose middle
// lies 1 3/32 in outside it. On board 1/16 in thick the blade comes out of the face half the width,
// 1/16 in, farther out, and enters the back the run less, 1/16 in: right below the middle, 2 1/32
// in from the edges.
const char* grooved_job = R"(<job version="1" reference="V-1" unit="in" increment="1/16">
  <layers><layer name="Top mat" board="Oat" thickness="1/16"/></layers><borders all="3 1/8"/>
  <arrange><opening id="w" width="9 3/4" height="7 3/4"><groove distance="1 3/32" width="1/8"/>
  </opening></arrange></job>)";

std::string grooved(const std::string& folder) {
  const std::string path = folder + "/groove.xml";
  oracle::write_file(path, grooved_job);
  return path;
}

struct Worked {
  Mat mat;
  Rect back, face;
};

Worked worked(const std::string& job) {
  Worked out{mat_of(job), {}, {}};
  const Rect opening = out.mat.layers[0].windows.at(0).back;
  out.back = outset(opening, sixty_fourths(70));
  out.face = outset(out.back, sixty_fourths(4));
  return out;
}

void check_page(const DrawnPage& page, const Worked& worked) {
  const Cuts cuts = cuts_of(worked.mat);
  const BoardCuts& layer = cuts.layers.at(0);
  const BoardBehind board(page, layer);
  // Each line runs past its corners by 1/16 in, and no farther.
  CHECK(shows_straight_cuts(page, board, worked.back, sixty_fourths(4)));
  CHECK_FALSE(shows_straight_cuts(page, board, worked.back, sixty_fourths(6)));
  CHECK(straying(oracle::NearestInk(page, true), board, rectangle(worked.face)) < hundredth_mm);
  const std::string text = oracle::text_of(page);
  if (text.empty()) return;  // librsvg draws letters as outlines
  CHECK(text.find("V-groove, 1/8 in wide") != std::string::npos);
  CHECK(text.find("V-groove (dimensions with V)") != std::string::npos);
  CHECK(text.find("V 2 1/32") != std::string::npos);  // 3 1/8 - 1 3/32
}

}  // namespace

TEST_CASE("a V-groove is drawn, measured and named where its panel is cut on the back") {
  const std::string folder = oracle::scratch_folder("groove");
  const std::string job = grooved(folder);
  const Worked it = worked(job);
  check_page(oracle::drawn_pages(template_of(job, folder + "/a.pdf")).at(0), it);
  check_page(oracle::drawn_svg(template_of(job, folder + "/a.svg")), it);
  const auto names = oracle::pdf_layers(folder + "/a.pdf");
  CHECK(std::count(names.begin(), names.end(), "Layer 1: V-grooves, cut on the back") == 1);
}

TEST_CASE("nothing is drawn at the middle of a groove's face where that is not what is cut") {
  const std::string folder = oracle::scratch_folder("groove-middle");
  std::string xml = grooved_job;
  xml.replace(xml.find("width=\"1/8\""), 11, "width=\"3/8\"");  // enters 1/8 in outside its middle
  const std::string job = folder + "/wide.xml";
  oracle::write_file(job, xml);
  const Mat mat = mat_of(job);
  const Cuts cuts = cuts_of(mat);
  const DrawnPage page = oracle::drawn_pages(template_of(job, folder + "/a.pdf")).at(0);
  const BoardBehind board(page, cuts.layers.at(0));
  const Outline& middle = mat.grooves.at(0).line;
  CHECK(straying(oracle::NearestInk(page, true), board, middle) > 5);
  CHECK(shows_straight_cuts(page, board, outset(bounding_box(middle), sixty_fourths(8)),
                            sixty_fourths(4)));
  CHECK_FALSE(shows_straight_cuts(page, board, bounding_box(middle), Length()));
}

TEST_CASE("every corner of a groove's panel has a piece of the corner sheets") {
  const std::string folder = oracle::scratch_folder("groove-corners");
  const std::string job = grooved(folder);
  std::string text;
  for (const DrawnPage& page :
       oracle::drawn_pages(template_of(job, folder + "/corners.pdf", {"--corners"}))) {
    text += oracle::text_of(page);
  }
  for (const char* name : {"V1a", "V1b", "V1c", "V1d"}) CHECK(text.find(name) != std::string::npos);
}

TEST_CASE("ezdxf finds grooves on a layer of their own, and the blank of each layer") {
  const std::string script = R"(
import ezdxf, sys
for path in sys.argv[1:]:
    drawing = ezdxf.readfile(path)
    boxes = {}
    for e in drawing.modelspace():
        if e.dxftype() == 'TEXT': continue
        for x, y, *more in e.get_points():
            b = boxes.setdefault(e.dxf.layer, [1e9, 1e9, -1e9, -1e9])
            b[:] = [min(b[0], x), min(b[1], y), max(b[2], x), max(b[3], y)]
    print(len(drawing.audit().errors), *('%s %.2f %.2f' % (n, boxes[n][2] - boxes[n][0], boxes[n][3] - boxes[n][1]) for n in sorted(boxes)))
)";
  const std::string folder = oracle::scratch_folder("groove-dxf");
  const std::string grooves = template_of(grooved(folder), folder + "/groove.dxf");
  const std::string under =
      template_of(oracle::gallery("double-mat.xml"), folder + "/under.dxf", {"--layer", "2"});
  const std::string apart = template_of(oracle::gallery("double-mat.xml"), folder + "/apart.dxf",
                                        {"--layer", "2", "--separate"});
  const std::string trimmed = template_of(oracle::gallery("double-mat.xml"), folder + "/trim.dxf",
                                          {"--layer", "2", "--trim", "1/2"});
  const oracle::Run run =
      oracle::run({"/usr/bin/python3", "-c", script, grooves, under, apart, trimmed});
  INFO(run.err);
  // 9 3/4 + 2 x 1 3/32 = 11 15/16 in by 9 15/16 in; 16 x 14 in less twice the trim.
  CHECK(run.out ==
        "0 LAYER_1_CUT 247.65 196.85 LAYER_1_GROOVE 303.21 252.41 LAYER_1_OUTLINE 406.40 355.60\n"
        "0 LAYER_2_CUT 247.65 196.85 LAYER_2_OUTLINE 400.05 349.25\n"
        "0 LAYER_2_CUT 247.65 196.85 LAYER_2_OUTLINE 406.40 355.60\n"
        "0 LAYER_2_CUT 247.65 196.85 LAYER_2_OUTLINE 381.00 330.20\n");
}

TEST_CASE(
    "overlaid layers have the top mat's edge as their frame, and the under-mat's blank in it") {
  const std::string folder = oracle::scratch_folder("overlaid-blanks");
  for (const auto& [words, less] :
       {std::pair(std::vector<std::string>{"--overlaid"}, sixty_fourths(8)),
        {{"--overlaid", "--trim", "1/4"}, sixty_fourths(16)}}) {
    const auto page = oracle::drawn_pages(template_of(oracle::gallery("double-mat.xml"),
                                                      folder + "/all.pdf", words))
                          .at(0);
    const auto top = oracle::find_rectangle(page, 16 * 72, 14 * 72, hundredth_mm);
    const auto under = oracle::find_rectangle(page, 16 * 72 - 2 * to_points(less),
                                              14 * 72 - 2 * to_points(less), hundredth_mm);
    REQUIRE(top);
    REQUIRE(under);
    CHECK(under->x - top->x == Approx(to_points(less)).margin(hundredth_mm));
    CHECK(under->y - top->y == Approx(to_points(less)).margin(hundredth_mm));
    // Dimensions are from the top mat's edges.
    CHECK(oracle::text_of(page).find("3 1/8") != std::string::npos);
  }
}

TEST_CASE("an under-mat's dimensions are from the edges of its own blank") {
  const std::string folder = oracle::scratch_folder("under-dimensions");
  const auto text = [&](const std::vector<std::string>& words) {
    std::vector<std::string> all{"--layer", "2"};
    all.insert(all.end(), words.begin(), words.end());
    return oracle::text_of(oracle::drawn_pages(template_of(oracle::gallery("double-mat.xml"),
                                                           folder + "/under.pdf", all))
                               .at(0));
  };
  // The window lies 3 1/8 in from the mat's edges (tests/data, double mat): 2 13/16 + 1/4 + 1/16.
  const std::string taped = text({}), apart = text({"--separate"}), less = text({"--trim", "1/2"});
  CHECK(taped.find("\n3\n") != std::string::npos);
  CHECK(taped.find("15 3/4 in x 13 3/4 in") != std::string::npos);
  CHECK(taped.find("taped behind the top mat: 1/8 in smaller on each side") != std::string::npos);
  CHECK(apart.find("\n3 1/8\n") != std::string::npos);
  CHECK(apart.find("taped") == std::string::npos);
  CHECK(less.find("\n2 5/8\n") != std::string::npos);
}
