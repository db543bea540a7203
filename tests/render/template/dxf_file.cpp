#include "tests/render/template/dxf_file.h"

#include <dxflib/dl_creationadapter.h>
#include <dxflib/dl_dxf.h>

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace dxf {

using oracle::Spot;

namespace {

class Collect : public DL_CreationAdapter {
 public:
  File file;

  void addPolyline(const DL_PolylineData& data) override {
    file.lines.push_back({getAttributes().getLayer(), (data.flags & 1) != 0, {}, {}, 0});
  }
  void addVertex(const DL_VertexData& data) override {
    file.lines.back().corners.push_back({{data.x, data.y}, data.bulge});
  }
  void addCircle(const DL_CircleData& data) override {
    file.lines.push_back({getAttributes().getLayer(), true, {}, {data.cx, data.cy}, data.radius});
  }
  void addText(const DL_TextData& data) override { file.texts.push_back(data.text); }
};

// The line as a polygon, fine enough for a thousandth of a millimetre at the sizes of the tests.
std::vector<Spot> flattened(const Line& line) {
  std::vector<Spot> spots;
  constexpr int steps = 400;
  if (line.radius > 0) {
    for (int i = 0; i <= 4 * steps; ++i) {
      const double angle = i * std::acos(-1.0) / (2 * steps);
      spots.push_back({line.centre.x + line.radius * std::cos(angle),
                       line.centre.y + line.radius * std::sin(angle)});
    }
    return spots;
  }
  const std::size_t parts = line.corners.size() - (line.closed ? 0 : 1);
  spots.push_back(line.corners.front().at);
  for (std::size_t i = 0; i < parts; ++i) {
    const Spot a = line.corners[i].at, b = line.corners[(i + 1) % line.corners.size()].at;
    const double bulge = line.corners[i].bulge, angle = 4 * std::atan(bulge);
    if (bulge != 0) {
      const double to_centre = (1 - bulge * bulge) / (4 * bulge);
      const Spot centre{(a.x + b.x) / 2 - (b.y - a.y) * to_centre,
                        (a.y + b.y) / 2 + (b.x - a.x) * to_centre};
      for (int k = 1; k < steps; ++k) {
        const double turn = angle * k / steps;
        const double x = a.x - centre.x, y = a.y - centre.y;
        spots.push_back({centre.x + x * std::cos(turn) - y * std::sin(turn),
                         centre.y + x * std::sin(turn) + y * std::cos(turn)});
      }
    }
    spots.push_back(b);
  }
  return spots;
}

}  // namespace

File read(const std::string& path) {
  Collect collect;
  DL_Dxf dxf;
  if (!dxf.in(path, &collect)) throw std::runtime_error(path + " cannot be read");
  return collect.file;
}

Extent extent_of(const Line& line) {
  Extent box{1e9, 1e9, -1e9, -1e9};
  for (const Spot& spot : flattened(line)) {
    box = {std::min(box.left, spot.x), std::min(box.low, spot.y), std::max(box.right, spot.x),
           std::max(box.high, spot.y)};
  }
  return box;
}

double length_of(const Line& line) {
  const std::vector<Spot> spots = flattened(line);
  double length = 0;
  for (std::size_t i = 0; i + 1 < spots.size(); ++i) {
    length += std::hypot(spots[i + 1].x - spots[i].x, spots[i + 1].y - spots[i].y);
  }
  return length;
}

double distance(const Line& line, Spot spot) {
  const std::vector<Spot> spots = flattened(line);
  double least = 1e9;
  for (std::size_t i = 0; i + 1 < spots.size(); ++i) {
    const double x = spots[i + 1].x - spots[i].x, y = spots[i + 1].y - spots[i].y;
    const double square = x * x + y * y;
    const double along =
        square == 0 ? 0
                    : std::clamp(((spot.x - spots[i].x) * x + (spot.y - spots[i].y) * y) / square,
                                 0.0, 1.0);
    least = std::min(least,
                     std::hypot(spots[i].x + along * x - spot.x, spots[i].y + along * y - spot.y));
  }
  return least;
}

bool encloses(const Line& closed, Spot spot) {
  const std::vector<Spot> spots = flattened(closed);
  bool inside = false;
  for (std::size_t i = 0; i + 1 < spots.size(); ++i) {
    const Spot a = spots[i], b = spots[i + 1];
    if ((a.y > spot.y) != (b.y > spot.y) &&
        spot.x < a.x + (b.x - a.x) * (spot.y - a.y) / (b.y - a.y)) {
      inside = !inside;
    }
  }
  return inside;
}

std::vector<PlannedLine> planned_lines(const mullion::Cuts& cuts) {
  using namespace mullion;
  std::vector<PlannedLine> lines;
  const Rect first = cuts.layers.front().blank;
  const auto box = [&](const Rect& rect) {
    return Extent{to_millimetres(first.right - rect.right),
                  to_millimetres(first.bottom - rect.bottom),
                  to_millimetres(first.right - rect.left), to_millimetres(first.bottom - rect.top)};
  };
  for (const BoardCuts& board : cuts.layers) {
    const std::string layer = "LAYER_" + std::to_string(board.layer->number) + "_";
    for (const Window& window : board.windows()) {
      lines.push_back(
          {layer + "CUT", box(window.back),
           window.shape.kind == ShapeKind::ellipse && window.back.width() == window.back.height()});
    }
    if (board.layer->number == 1 && cuts.grooves) {
      for (const Window& panel : cuts.grooves->panels) {
        lines.push_back({layer + "GROOVE", box(panel.back), false});
      }
    }
    lines.push_back({layer + "OUTLINE", box(board.blank), false});
  }
  return lines;
}

}  // namespace dxf
