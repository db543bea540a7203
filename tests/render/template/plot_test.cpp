// Plots for cutting machines, read back: SVG by librsvg, DXF by a reader of its group codes
// (AutoCAD Release 12 interchange format: a code on one line, its value on the next).

#include <catch2/catch.hpp>
#include <cmath>
#include <map>
#include <sstream>

#include "tests/oracle/drawn_page.h"
#include "tests/oracle/program.h"
#include "tests/render/template/made.h"

using namespace mullion;
using oracle::Spot;

namespace {

struct Entity {
  std::string kind, layer;
  std::map<int, double> values;
  Spot first() const { return end(50, 10); }
  Spot last() const { return end(51, 11); }

  // The ends, and for an arc the points furthest left, right, up and down that lie on it.
  std::vector<Spot> outermost() const {
    std::vector<Spot> spots{first(), last()};
    for (int quarter = 0; kind == "ARC" && quarter < 8; ++quarter) {
      const double angle = 90.0 * quarter, from = values.at(50), to = values.at(51);
      if (angle < from || angle > (to < from ? to + 360 : to)) continue;
      spots.push_back({values.at(10) + values.at(40) * std::cos(angle * std::acos(-1.0) / 180),
                       values.at(20) + values.at(40) * std::sin(angle * std::acos(-1.0) / 180)});
    }
    return spots;
  }

 private:
  Spot end(int angle_code, int line_code) const {
    if (kind == "LINE") return {values.at(line_code), values.at(line_code + 10)};
    const double angle = values.at(angle_code) * std::acos(-1.0) / 180;
    return {values.at(10) + values.at(40) * std::cos(angle),
            values.at(20) + values.at(40) * std::sin(angle)};
  }
};

std::vector<Entity> read_dxf(const std::string& text) {
  std::vector<Entity> entities;
  std::istringstream in(text);
  std::string code, value;
  bool inside = false;
  while (std::getline(in, code) && std::getline(in, value)) {
    if (code == "2" && value == "ENTITIES") inside = true;
    if (!inside) continue;
    if (code == "0") entities.push_back({value, {}, {}});
    if (entities.empty()) continue;
    if (code == "8") entities.back().layer = value;
    const int number = std::stoi(code);
    if (number >= 10 && number < 60) entities.back().values[number] = std::stod(value);
  }
  REQUIRE(entities.size() > 2);
  CHECK(entities.back().kind == "EOF");
  entities.resize(entities.size() - 2);  // ENDSEC, EOF
  return entities;
}

bool meet(Spot a, Spot b) {
  return std::hypot(a.x - b.x, a.y - b.y) < 0.001;
}

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

// ezdxf (Debian's, of Debian's Python) audits the file against the format and counts what it
// understands.
TEST_CASE("a DXF reader that we did not write finds the same lines and arcs and no fault") {
  std::vector<std::string> command{"/usr/bin/python3", "-c", R"(
import ezdxf, sys
for path in sys.argv[1:]:
    drawing = ezdxf.readfile(path)
    found = {}
    for entity in drawing.modelspace():
        key = entity.dxf.layer + ' ' + entity.dxftype()
        length = ((entity.dxf.end - entity.dxf.start).magnitude if entity.dxftype() == 'LINE' else entity.dxf.radius)
        count, sum = found.get(key, (0, 0))
        found[key] = (count + 1, sum + length)
    print(drawing.dxfversion, len(drawing.audit().errors),
          *('%s %d %.3f' % (key, *found[key]) for key in sorted(found)))
)"};
  const std::string folder = oracle::scratch_folder("plots");
  std::string expected;
  for (const std::string& job : made::all_jobs()) {
    command.push_back(
        made::template_of(job, folder + "/" + std::to_string(command.size()) + ".dxf", {}));
    std::map<std::string, std::pair<int, double>> found;
    for (const Entity& entity : read_dxf(oracle::read_file(command.back()))) {
      auto& [count, sum] = found[entity.layer + " " + entity.kind];
      ++count;
      sum += entity.kind == "LINE" ? std::hypot(entity.last().x - entity.first().x,
                                                entity.last().y - entity.first().y)
                                   : entity.values.at(40);
    }
    expected += "AC1009 0";
    for (const auto& [key, sums] : found) {
      char text[96];
      std::snprintf(text, sizeof text, " %s %d %.3f", key.c_str(), sums.first, sums.second);
      expected += text;
    }
    expected += "\n";
  }
  const oracle::Run run = oracle::run(command);
  INFO(run.err);
  CHECK(run.status == 0);
  CHECK(run.out == expected);
}

TEST_CASE("a DXF holds every opening as a closed chain in millimetres, mirrored") {
  for (const std::string& job : made::all_jobs()) {
    INFO(job);
    const Mat mat = made::mat_of(job);
    const Cuts cuts = cuts_of(mat);
    const BoardCuts& layer = cuts.layers.front();
    const std::vector<Entity> entities = read_dxf(oracle::read_file(written(job, "all.dxf", {})));
    double left = 1e9, right = -1e9, low = 1e9, high = -1e9;
    std::map<std::string, int> ends;
    for (const Entity& entity : entities) {
      const bool known = entity.kind == "LINE" || entity.kind == "ARC";
      CHECK(known);
      int met = 0;
      for (const Entity& other : entities) {
        if (&other == &entity || other.layer != entity.layer) continue;
        for (const Spot& end : {other.first(), other.last()}) {
          met += meet(end, entity.first()) ? 1 : 0;
          met += meet(end, entity.last()) ? 1 : 0;
        }
      }
      CHECK(met == 2);
      if (entity.layer != "OPENINGS") continue;
      for (const Spot& end : entity.outermost()) {
        left = std::min(left, end.x);
        right = std::max(right, end.x);
        low = std::min(low, end.y);
        high = std::max(high, end.y);
      }
    }
    Rect all = layer.windows().front().back;
    for (const Window& window : layer.windows()) {
      all = {std::min(all.left, window.back.left), std::min(all.top, window.back.top),
             std::max(all.right, window.back.right), std::max(all.bottom, window.back.bottom)};
    }
    CHECK(left == Approx(to_millimetres(layer.blank.right - all.right)).margin(0.01));
    CHECK(right == Approx(to_millimetres(layer.blank.right - all.left)).margin(0.01));
    CHECK(high == Approx(to_millimetres(layer.blank.bottom - all.top)).margin(0.01));
    CHECK(low == Approx(to_millimetres(layer.blank.bottom - all.bottom)).margin(0.01));
  }
}
