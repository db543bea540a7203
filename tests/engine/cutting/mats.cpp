#include "mats.h"

#include <algorithm>
#include <cmath>

#include "engine/mat/rect.h"
#include "engine/mat/shape.h"

namespace mats {

using namespace mullion;

namespace {

mullion::Window rectangle(const Rect& back, Length run, int number) {
  mullion::Window window;
  window.openings = {number};
  window.back = back;
  window.face = outset(back, run);
  window.back_edge = shape_outline({}, window.back, Length()).value();
  window.face_edge = shape_outline({}, window.face, Length()).value();
  return window;
}

int pick(std::mt19937& random, int least, int most) {
  return least + static_cast<int>(random() % static_cast<unsigned>(most - least + 1));
}

simulator::Polygon polygon(const Outline& outline) {
  simulator::Polygon out;
  for (const Segment& segment : outline.segments) out.push_back({segment.to.x, segment.to.y});
  std::sort(out.begin(), out.end());
  return out;
}

template <class Edge>
std::vector<simulator::Polygon> polygons(const MatLayer& layer, Edge edge) {
  std::vector<simulator::Polygon> out;
  for (const mullion::Window& window : layer.windows) out.push_back(polygon(window.*edge));
  std::sort(out.begin(), out.end());
  return out;
}

// Cuts `whole` into `parts` bands with bars between them; returns the bands.
std::vector<std::pair<Length, Length>> bands(std::mt19937& random, Length whole, int parts) {
  std::vector<std::pair<Length, Length>> out;
  const Length part = Length::from_ticks(whole.ticks() / parts);
  for (int i = 0; i < parts; ++i) {
    const bool odd = random() % 4 == 0;
    const Length low = part * i + sixty_fourths(pick(random, 64, 100)) +
                       Length::from_ticks(odd ? pick(random, 0, 600) : 0);
    const Length high = part * (i + 1) - sixty_fourths(pick(random, 64, 100));
    out.push_back({low, high});
  }
  return out;
}

}  // namespace

Mat single(Length width, Length height, const std::vector<Window>& borders) {
  Mat mat;
  mat.outer = {Length(), Length(), width, height};
  MatLayer layer;
  layer.number = 1;
  layer.board.name = "Top mat";
  layer.run = layer.board.thickness;
  layer.outer = mat.outer;
  int number = 0;
  for (const Window& b : borders) {
    layer.windows.push_back(
        rectangle({b.left, b.top, width - b.right, height - b.bottom}, layer.run, ++number));
  }
  mat.layers.push_back(layer);
  return mat;
}

Mat even(Length width, Length height, Length border) {
  return single(width, height, {{border, border, border, border}});
}

void set_thickness(MatLayer& layer, Length thickness) {
  layer.board.thickness = layer.run = thickness;
  for (mullion::Window& window : layer.windows) {
    window = rectangle(window.back, thickness, window.openings.front());
  }
}

void add_layer(Mat& mat, const Sides& reveal, Length thickness) {
  MatLayer layer = mat.layers.back();
  ++layer.number;
  layer.board.name = "Under-mat";
  layer.board.reveal = reveal;
  for (mullion::Window& window : layer.windows) {
    window.back = inset(window.back, {reveal.left + thickness, reveal.top + thickness,
                                      reveal.right + thickness, reveal.bottom + thickness});
  }
  set_thickness(layer, thickness);
  mat.layers.push_back(layer);
}

std::vector<simulator::Polygon> backs(const MatLayer& layer) {
  return polygons(layer, &mullion::Window::back_edge);
}

std::vector<simulator::Polygon> faces(const MatLayer& layer) {
  return polygons(layer, &mullion::Window::face_edge);
}

simulator::Cutter ideal(const CutterProfile& cutter) {
  simulator::Cutter out;
  out.guide_on_left = cutter.side == GuideSide::left;
  out.tip_to_guide = cutter.lean == BladeLean::to_guide;
  if (cutter.guide) out.guide_zero = cutter.guide->zero;
  if (cutter.near_stop) out.near_zero = cutter.near_stop->zero;
  if (cutter.far_stop) out.far_zero = cutter.far_stop->zero;
  out.arm_zero = cutter.arm_zero;
  out.mark_lead = cutter.mark_lead;
  out.kerf = cutter.kerf;
  return out;
}

std::string difference(const Mat& mat, const std::string& plan_json,
                       const simulator::Cutter& cutter) {
  const simulator::Outcome outcome = simulator::play(plan_json, cutter);
  if (!outcome.faults.empty()) return outcome.faults.front();
  std::vector<const simulator::CutLayer*> cut;
  for (const auto& layer : outcome.layers) {
    if (layer.kind == "layer") cut.push_back(&layer);
  }
  if (cut.size() != mat.layers.size()) return "the number of layers";
  for (std::size_t i = 0; i < cut.size(); ++i) {
    const std::string name = "layer " + std::to_string(i + 1);
    if (cut[i]->back != backs(mat.layers[i])) return "the back edges of " + name;
    if (cut[i]->face != faces(mat.layers[i])) return "the face edges of " + name;
    if (cut[i]->longest_overrun != Length()) return "an over-cut seen on the face of " + name;
  }
  return "";
}

namespace {

struct Line {
  double ax, ay, bx, by;
};

// How far the cut goes past the edge at its nearer end, in ticks; nothing if it is not its line.
std::optional<double> overrun(const Line& cut, const Line& edge) {
  const double length = std::hypot(cut.bx - cut.ax, cut.by - cut.ay);
  const double dx = (cut.bx - cut.ax) / length, dy = (cut.by - cut.ay) / length;
  const auto along = [&](double x, double y) { return (x - cut.ax) * dx + (y - cut.ay) * dy; };
  const auto off = [&](double x, double y) {
    return std::abs((x - cut.ax) * dy - (y - cut.ay) * dx);
  };
  constexpr double rounding = 1.5;  // corners of outlines are whole ticks
  if (off(edge.ax, edge.ay) > rounding || off(edge.bx, edge.by) > rounding) return std::nullopt;
  const double low = std::min(along(edge.ax, edge.ay), along(edge.bx, edge.by));
  const double high = std::max(along(edge.ax, edge.ay), along(edge.bx, edge.by));
  if (low < -rounding || high > length + rounding) return std::nullopt;
  return std::max(low, length - high);
}

double ticks(Length a) {
  return static_cast<double>(a.ticks());
}

template <class Cut>
bool all_cut(const Outline& outline, const std::vector<simulator::Slit>& slits, Cut line,
             double loose) {
  Point at = outline.start;
  for (const Segment& segment : outline.segments) {
    const Line edge{ticks(at.x), ticks(at.y), ticks(segment.to.x), ticks(segment.to.y)};
    at = segment.to;
    const bool cut = std::any_of(slits.begin(), slits.end(), [&](const simulator::Slit& slit) {
      const auto past = overrun(line(slit), edge);
      return past && *past <= loose;
    });
    if (!cut && std::hypot(edge.bx - edge.ax, edge.by - edge.ay) > 0) return false;
  }
  return true;
}

}  // namespace

std::string uncut_edge(const MatLayer& layer, const simulator::CutLayer& cut, Length loose) {
  for (const mullion::Window& window : layer.windows) {
    const auto back = [](const simulator::Slit& s) { return Line{s.ax, s.ay, s.bx, s.by}; };
    const auto face = [](const simulator::Slit& s) {
      return Line{s.face_ax, s.face_ay, s.face_bx, s.face_by};
    };
    if (!all_cut(window.back_edge, cut.slits, back, 1e9)) return "the back edge";
    if (!all_cut(window.face_edge, cut.slits, face, ticks(loose))) return "the face edge";
  }
  return "";
}

Mat random_mat(std::mt19937& random) {
  const Length width = sixty_fourths(pick(random, 10 * 64, 40 * 64));
  const Length height = sixty_fourths(pick(random, 10 * 64, 40 * 64));
  const int columns = pick(random, 1, std::max(1, static_cast<int>(to_inches(width) / 6)));
  const int rows = pick(random, 1, std::max(1, static_cast<int>(to_inches(height) / 6)));
  const auto down = bands(random, height, std::min(rows, 3));
  Mat mat = single(width, height, {});
  MatLayer& top = mat.layers.front();
  for (const auto& [y0, y1] : down) {
    const bool shared = random() % 2 == 0;
    for (const auto& [x0, x1] : bands(random, width, std::min(columns, 4))) {
      const Length y = shared ? y0 : y0 + sixty_fourths(pick(random, 0, 16));
      top.windows.push_back(
          rectangle({x0, y, x1, y1}, top.run, static_cast<int>(top.windows.size()) + 1));
    }
  }
  set_thickness(top, Length::from_ticks(pick(random, 1500, 2600)));
  for (int layers = pick(random, 0, 2); layers > 0; --layers) {
    const Length even = sixty_fourths(pick(random, 4, 20));
    const Length other = random() % 3 == 0 ? sixty_fourths(pick(random, 4, 20)) : even;
    add_layer(
        mat, {even, even, even, other},
        random() % 2 == 0 ? top.board.thickness : Length::from_ticks(pick(random, 1500, 2600)));
  }
  return mat;
}

CutterProfile random_cutter(std::mt19937& random) {
  CutterProfile out = generic_cutters()[random() % 3];
  out.side = random() % 2 == 0 ? GuideSide::left : GuideSide::right;
  out.lean = random() % 4 == 0 ? BladeLean::from_guide : BladeLean::to_guide;
  const auto error = [&] { return Length::from_ticks(pick(random, -2000, 2000)); };
  if (out.guide) {
    out.guide->zero = error();
    out.guide->board_over_bar = random() % 2 == 0;
    out.guide->most = inches(pick(random, 5, 20));
  }
  if (out.near_stop) out.near_stop->zero = error();
  if (out.far_stop) out.far_stop->zero = error();
  if (random() % 4 == 0) out.far_stop.reset();
  if (random() % 8 == 0) out.near_stop.reset();
  out.mark_lead = Length::from_ticks(pick(random, 0, 4000));
  out.arm_zero = error();
  out.kerf = Length::from_ticks(pick(random, 0, 40));
  return out;
}

}  // namespace mats
