// Plots for cutting machines, read back: SVG by librsvg, DXF by dxflib and by ezdxf.

#include <catch2/catch.hpp>
#include <cmath>
#include <sstream>

#include "tests/oracle/drawn_page.h"
#include "tests/oracle/program.h"
#include "tests/render/template/dxf_file.h"
#include "tests/render/template/made.h"

using namespace mullion;
using oracle::Spot;

namespace {

std::string written(const std::string& job, const std::string& file,
                    const std::vector<std::string>& words) {
  return made::template_of(job, oracle::scratch_folder("plot") + "/" + file, words);
}

}  // namespace

TEST_CASE("with a kerf, openings are plotted half of it smaller and the board half of it larger") {
  const std::string job = oracle::gallery("double-mat.xml");
  const Mat mat = made::mat_of(job);
  const Cuts cuts = cuts_of(mat);
  const BoardCuts& layer = cuts.layers.front();
  const oracle::DrawnPage page =
      oracle::drawn_svg(written(job, "kerf.svg", {"--plot", "--kerf", "0.4 mm"}));
  const double half = 0.2 / 25.4 * 72, tolerance = 0.01 / 25.4 * 72;
  const double width = to_points(layer.blank.width()), height = to_points(layer.blank.height());
  // The board's edge is the page's.
  CHECK(page.width == Approx(width + 2 * half).margin(tolerance));
  CHECK(page.height == Approx(height + 2 * half).margin(tolerance));
  CHECK_FALSE(oracle::find_rectangle(page, width, height, tolerance));
  for (const Window& window : layer.windows()) {
    const auto corner =
        oracle::find_rectangle(page, to_points(window.back.width()) - 2 * half,
                               to_points(window.back.height()) - 2 * half, tolerance);
    REQUIRE(corner);
    // Seen from behind, with the page's origin half a kerf outside the board's corner.
    CHECK(corner->x ==
          Approx(to_points(layer.blank.right - window.back.right) + 2 * half).margin(tolerance));
    CHECK(corner->y == Approx(to_points(window.back.top) + 2 * half).margin(tolerance));
  }
  CHECK(page.labels.empty());
}

TEST_CASE("a plot's lines are named groups of the SVG") {
  const std::string svg =
      oracle::read_file(written(oracle::gallery("title-and-three.xml"), "ids.svg", {"--plot"}));
  for (const char* id : {"opening-1", "opening-2", "opening-3", "opening-4", "outer-edge"}) {
    CHECK(svg.find("<g id=\"" + std::string(id) + "\">") != std::string::npos);
  }
}

TEST_CASE("a plot of several layers has a group for each, in one place") {
  const std::string svg =
      oracle::read_file(written(oracle::gallery("double-mat.xml"), "layers.svg", {"--plot"}));
  for (const char* id : {"layer-1", "layer-1-opening-1", "layer-1-outer-edge", "layer-2",
                         "layer-2-opening-1", "layer-2-outer-edge"}) {
    CHECK(svg.find("<g id=\"" + std::string(id) + "\">") != std::string::npos);
  }
}

// ezdxf and dxflib are Debian's. ezdxf audits the file against the format too.
TEST_CASE("ezdxf finds no fault in any job's DXF, millimetres, and each line where it is cut") {
  std::vector<std::string> command{"/usr/bin/python3", "-c", R"(
import ezdxf, sys
from ezdxf import bbox
for path in sys.argv[1:]:
    drawing = ezdxf.readfile(path)
    audit = drawing.audit()
    print(drawing.dxfversion, len(audit.errors), len(audit.fixes), drawing.header['$INSUNITS'])
    for e in drawing.modelspace():
        if e.dxftype() == 'TEXT': continue
        closed = e.dxftype() == 'CIRCLE' or e.closed
        box = bbox.extents([e], flatten=0.0005)
        print(e.dxf.layer, closed, *('%.2f' % v for v in (*box.extmin.vec2, *box.extmax.vec2)))
)"};
  const std::string folder = oracle::scratch_folder("plots");
  std::vector<std::vector<dxf::PlannedLine>> expected;
  for (const std::string& job : made::all_jobs()) {
    command.push_back(
        made::template_of(job, folder + "/" + std::to_string(command.size()) + ".dxf", {}));
    const Mat mat = made::mat_of(job);
    expected.push_back(dxf::planned_lines(cuts_of(mat)));
  }
  const oracle::Run run = oracle::run(command);
  INFO(run.err);
  CHECK(run.status == 0);
  std::istringstream found(run.out);
  std::string line;
  for (std::size_t i = 0; i < expected.size(); ++i) {
    INFO(command[i + 3]);
    REQUIRE(std::getline(found, line));
    REQUIRE(line == "AC1015 0 0 4");
    for (const dxf::PlannedLine& planned : expected[i]) {
      REQUIRE(std::getline(found, line));
      std::istringstream words(line);
      std::string layer, closed;
      double left = 0, low = 0, right = 0, high = 0;
      words >> layer >> closed >> left >> low >> right >> high;
      CHECK(layer == planned.layer);
      CHECK(closed == "True");
      CHECK(left == Approx(planned.box.left).margin(0.011));
      CHECK(low == Approx(planned.box.low).margin(0.011));
      CHECK(right == Approx(planned.box.right).margin(0.011));
      CHECK(high == Approx(planned.box.high).margin(0.011));
    }
  }
}

TEST_CASE("dxflib finds the same lines, circles as circles, and a line that names each layer") {
  int circles = 0;
  for (const std::string& job : made::all_jobs()) {
    INFO(job);
    const Mat mat = made::mat_of(job);
    const Cuts cuts = cuts_of(mat);
    const dxf::File file = dxf::read(written(job, "all.dxf", {}));
    const std::vector<dxf::PlannedLine> planned = dxf::planned_lines(cuts);
    REQUIRE(file.lines.size() == planned.size());
    for (std::size_t i = 0; i < planned.size(); ++i) {
      const dxf::Line& line = file.lines[i];
      CHECK(line.layer == planned[i].layer);
      CHECK(line.closed);
      const dxf::Extent box = dxf::extent_of(line);
      CHECK(box.left == Approx(planned[i].box.left).margin(0.006));
      CHECK(box.low == Approx(planned[i].box.low).margin(0.006));
      CHECK(box.right == Approx(planned[i].box.right).margin(0.006));
      CHECK(box.high == Approx(planned[i].box.high).margin(0.006));
      CHECK((line.radius > 0) == planned[i].circle);
      circles += planned[i].circle ? 1 : 0;
    }
    REQUIRE(file.texts.size() == mat.layers.size());
    for (const std::string& text : file.texts) {
      CHECK(text.find("seen from behind") != std::string::npos);
    }
  }
  CHECK(circles > 2);
}

TEST_CASE("from the front, a plot is not mirrored and has the lines of the face") {
  const std::string job = oracle::test_data("worked/asymmetric.xml");
  const Mat mat = made::mat_of(job);
  const dxf::File file = dxf::read(written(job, "front.dxf", {"--front", "--layer", "1"}));
  const std::vector<Window>& windows = mat.layers.front().windows;
  REQUIRE(file.lines.size() == windows.size() + 1);
  for (std::size_t i = 0; i < windows.size(); ++i) {
    const dxf::Extent box = dxf::extent_of(file.lines[i]);
    CHECK(box.left == Approx(to_millimetres(windows[i].face.left)).margin(0.01));
    CHECK(box.right == Approx(to_millimetres(windows[i].face.right)).margin(0.01));
    CHECK(box.high ==
          Approx(to_millimetres(mat.outer.height() - windows[i].face.top)).margin(0.01));
  }
  CHECK(file.texts.at(0).find("seen from the front") != std::string::npos);
}

// Lengths along the drawn way are measured on what dxflib read.
TEST_CASE("a tool comes from the waste at a right angle, and runs over its start") {
  for (const char* name : {"worked/shapes.xml", "worked/asymmetric.xml"}) {
    const std::string job = oracle::test_data(name);
    const dxf::File whole = dxf::read(written(job, "whole.dxf", {}));
    const dxf::File led =
        dxf::read(written(job, "led.dxf", {"--lead-in", "2 mm", "--over-cut", "7 mm"}));
    REQUIRE(led.lines.size() == whole.lines.size());
    for (std::size_t i = 0; i < led.lines.size(); ++i) {
      INFO(name << ", line " << i << " of " << led.lines[i].layer);
      const dxf::Line& line = led.lines[i];
      CHECK_FALSE(line.closed);
      CHECK(dxf::length_of(line) == Approx(dxf::length_of(whole.lines[i]) + 9).margin(0.01));
      const bool outer = line.layer.ends_with("OUTLINE");
      const Spot first = line.corners.at(0).at, start = line.corners.at(1).at;
      CHECK(std::hypot(first.x - start.x, first.y - start.y) == Approx(2).margin(1e-5));
      CHECK(dxf::encloses(whole.lines[i], first) != outer);
      CHECK(dxf::distance(whole.lines[i], first) == Approx(2).margin(0.01));
      CHECK(dxf::distance(whole.lines[i], line.corners.back().at) == Approx(0).margin(0.01));
    }
  }
  const oracle::Run run =
      oracle::mullion({"template", oracle::test_data("worked/shapes.xml"), "-o",
                       oracle::scratch_folder("plot") + "/no-room.dxf", "--lead-in", "50 mm"});
  CHECK(run.status == 2);
  CHECK(run.err.find("no room in the waste for the lead-in") != std::string::npos);
}
