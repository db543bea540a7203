#include "mats.h"

#include <algorithm>
#include <cmath>

#include "engine/mat/parallel.h"
#include "engine/mat/rect.h"
#include "engine/mat/shape.h"
#include "likeness.h"

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
  for (const mullion::Window& window : layer.windows) {
    if (moves_side_by_side(window.shape.kind)) out.push_back(polygon(window.*edge));
  }
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
  layer.board.spacer = false;
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
  out.start_lead = start_lead(cutter);
  out.pulled = cutter.stroke == Stroke::pull;
  out.line_from_rail = cutter.line_from_rail.value_or(Length());
  out.reach = cutter.reach;
  out.kerf = cutter.kerf;
  return out;
}

namespace {

// Cut with the guide alone, so exactly.
bool is_exact(const mullion::Window& window) {
  return moves_side_by_side(window.shape.kind);
}

// The window that the ellipse is stated for: the smallest that serves the opening.
Rect sight_of(const Mat& mat, int opening) {
  std::optional<Rect> sight;
  for (const MatLayer& layer : mat.layers) {
    for (const mullion::Window& window : layer.windows) {
      if (window.shape.kind != ShapeKind::ellipse || !serves(window, opening)) continue;
      if (!sight || window.back.width() < sight->width()) sight = window.back;
    }
  }
  return sight.value();
}

double loose_for(const Mat& mat, const mullion::Window& window) {
  if (window.shape.kind != ShapeKind::ellipse) return whole_ticks;
  return whole_ticks + ellipse_off_parallel(window.back, sight_of(mat, window.openings.front()));
}

// A spacer's windows are cut as rectangles, whatever their shape. On its own blank.
std::vector<simulator::Polygon> boxes(const MatLayer& layer, const simulator::CutLayer& cut,
                                      const Rect& outer) {
  const Length by = half_rounded_down(outer.width() - cut.blank_width);
  std::vector<simulator::Polygon> out;
  for (const mullion::Window& window : layer.windows) {
    const Rect& b = window.back;
    out.push_back(
        polygon(mullion::rectangle({b.left - by, b.top - by, b.right - by, b.bottom - by})));
  }
  std::sort(out.begin(), out.end());
  return out;
}

bool alike(Length a, Length b, Length slack) {
  return a - b <= slack && b - a <= slack;
}

bool alike(const std::vector<simulator::Polygon>& a, const std::vector<simulator::Polygon>& b,
           Length slack) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(), [&](const auto& p, const auto& q) {
    return std::equal(p.begin(), p.end(), q.begin(), q.end(), [&](const auto& s, const auto& t) {
      return alike(s.x, t.x, slack) && alike(s.y, t.y, slack);
    });
  });
}

struct Span {
  Length least, most;
};

Span span(Length a, Length b) {
  return {std::min(a, b), std::max(a, b)};
}

// A side of a window: a blade goes from corner to corner, whichever edge's lies farther out.
struct Side {
  bool level = true;
  Length back, face;  // where it lies across
  Span reach;
};

Side side_between(const Point& a, const Point& b, const Point& face_a, const Point& face_b) {
  const bool level = a.y == b.y;
  const auto along = [&](const Point& p) { return level ? p.x : p.y; };
  const auto across = [&](const Point& p) { return level ? p.y : p.x; };
  const Span back = span(along(a), along(b)), face = span(along(face_a), along(face_b));
  return {level,
          across(a),
          across(face_a),
          {std::min(back.least, face.least), std::max(back.most, face.most)}};
}

std::vector<Side> sides_of(const mullion::Window& window) {
  std::vector<Side> out;
  Point back = window.back_edge.start, face = window.face_edge.start;
  for (std::size_t i = 0; i < window.back_edge.segments.size(); ++i) {
    const Point to = window.back_edge.segments[i].to, face_to = window.face_edge.segments[i].to;
    out.push_back(side_between(back, to, face, face_to));
    back = to;
    face = face_to;
  }
  return out;
}

bool lies_on(const simulator::NamedCut& cut, const Side& side, Length slack) {
  if ((cut.a.y == cut.b.y) != side.level) return false;
  const Span reach = side.level ? span(cut.a.x, cut.b.x) : span(cut.a.y, cut.b.y);
  return alike(side.level ? cut.a.y : cut.a.x, side.back, slack) &&
         alike(side.level ? cut.face_a.y : cut.face_a.x, side.face, slack) &&
         alike(reach.least, side.reach.least, slack) && alike(reach.most, side.reach.most, slack);
}

// Every cut that names a window's openings is one of its sides, and every side is cut.
std::string sides_difference(const mullion::Window& window, const simulator::CutLayer& cut,
                             Length slack) {
  std::vector<Side> sides = sides_of(window);
  for (const simulator::NamedCut& one : cut.straight) {
    if (one.openings != window.openings) continue;
    const auto side = std::find_if(sides.begin(), sides.end(),
                                   [&](const Side& s) { return lies_on(one, s, slack); });
    if (side == sides.end()) return "a cut beside every side of its window";
    sides.erase(side);
  }
  return sides.empty() ? "" : "a side that is not cut";
}

std::string difference(const Mat& mat, const MatLayer& layer, const simulator::CutLayer& cut,
                       Length slack) {
  const std::string name = "layer " + std::to_string(layer.number);
  if (layer.board.spacer) {
    return alike(cut.back, boxes(layer, cut, mat.outer), slack) ? "" : "the windows of " + name;
  }
  if (slack == Length()) {
    if (cut.back != backs(layer)) return "the back edges of " + name;
    if (cut.face != faces(layer)) return "the face edges of " + name;
    if (cut.longest_overrun != Length()) return "an over-cut seen on the face of " + name;
  }
  std::size_t sides = 0;
  for (const mullion::Window& window : layer.windows) {
    if (!is_exact(window)) continue;
    sides += window.back_edge.segments.size();
    const std::string what = sides_difference(window, cut, slack);
    if (!what.empty()) return what + " of a window in " + name;
  }
  const auto of_shape = std::count_if(
      cut.straight.begin(), cut.straight.end(),
      [&](const simulator::NamedCut& one) { return cut.tracks.contains(one.openings); });
  if (sides + static_cast<std::size_t>(of_shape) != cut.straight.size()) {
    return "a cut for no opening in " + name;
  }
  std::size_t shaped = 0;
  for (const mullion::Window& window : layer.windows) {
    if (is_exact(window)) continue;
    ++shaped;
    const auto tracks = cut.tracks.find(window.openings);
    if (tracks == cut.tracks.end()) return "a shape that is not cut in " + name;
    const std::string what =
        unlike(window, tracks->second, loose_for(mat, window) + static_cast<double>(slack.ticks()));
    if (!what.empty()) return what + " of a shape in " + name;
  }
  return shaped == cut.tracks.size() ? "" : "a shape too many in " + name;
}

}  // namespace

std::string difference(const Mat& mat, const std::string& plan_json,
                       const simulator::Cutter& cutter, unsigned lie, Length slack) {
  const simulator::Outcome outcome = simulator::play(plan_json, cutter, lie, slack);
  if (!outcome.faults.empty()) return outcome.faults.front();
  std::vector<const simulator::CutLayer*> cut;
  for (const auto& layer : outcome.layers) {
    if (layer.kind != "groove") cut.push_back(&layer);
  }
  if (cut.size() != mat.layers.size()) return "the number of layers";
  for (std::size_t i = 0; i < cut.size(); ++i) {
    const std::string what = difference(mat, mat.layers[i], *cut[i], slack);
    if (!what.empty()) return what;
  }
  return "";
}

namespace {

// A heart: two curves that meet in a hollow above and in a point below.
Outline heart(const Rect& box) {
  const auto at = [&](double x, double y) {
    return nearest_point(
        {static_cast<double>(box.left.ticks()) + x * static_cast<double>(box.width().ticks()),
         static_cast<double>(box.top.ticks()) + y * static_cast<double>(box.height().ticks())});
  };
  Outline out;
  out.start = at(0.5, 0.2);
  out.segments = {{true, at(0.65, -0.15), at(1.25, 0.1), at(0.9, 0.5)},
                  {false, {}, {}, at(0.5, 1)},
                  {true, at(0.3, 0.85), at(0.15, 0.7), at(0.1, 0.5)},
                  {true, at(-0.25, 0.1), at(0.35, -0.15), at(0.5, 0.2)}};
  return out;
}

Outline edge_at(const ShapeSpec& shape, const Rect& sight, Length outward) {
  if (shape.kind == ShapeKind::outline) return parallel(heart(sight), outward).value();
  return shape_outline(shape, sight, outward).value();
}

ShapeSpec random_shape(std::mt19937& random, const Rect& sight) {
  constexpr ShapeKind kinds[] = {ShapeKind::ellipse, ShapeKind::arch,    ShapeKind::rounded,
                                 ShapeKind::stepped, ShapeKind::octagon, ShapeKind::outline};
  const Length side = std::min(sight.width(), sight.height());
  ShapeSpec shape;
  shape.kind = kinds[random() % 6];
  // The point of a narrower heart is so sharp that its mitre is cut off, which no blade does.
  const bool narrow = sight.height() > sight.width() * 4;
  if (narrow && shape.kind == ShapeKind::outline) shape.kind = ShapeKind::arch;
  shape.corner = Length::from_ticks(side.ticks() * pick(random, 5, 30) / 100);
  const bool half_round = random() % 2 == 0;
  if (!half_round) {
    const Length most = std::min(half_rounded_down(sight.width()), sight.height());
    shape.rise = Length::from_ticks(most.ticks() * pick(random, 30, 99) / 100);
  } else if (sight.height() * 2 < sight.width()) {
    shape.rise = half_rounded_down(sight.height());
  }
  return shape;
}

}  // namespace

void give_shape(Mat& mat, std::size_t index, const ShapeSpec& shape) {
  const Rect sight = mat.layers.back().windows[index].back;
  for (MatLayer& layer : mat.layers) {
    mullion::Window& window = layer.windows[index];
    const Length outward = sight.left - window.back.left;
    window.shape = shape_at(shape, sight, outward);
    window.back_edge = edge_at(shape, sight, outward);
    window.face_edge = edge_at(shape, sight, outward + layer.run);
    window.back = bounding_box(window.back_edge);
    window.face = bounding_box(window.face_edge);
  }
}

namespace {

// Shapes need reveals that are the same on all sides; a spacer's windows are cut as rectangles.
bool may_reshape(const Mat& mat) {
  return std::all_of(mat.layers.begin() + 1, mat.layers.end(), [](const MatLayer& layer) {
    const Sides& reveal = layer.board.reveal;
    return reveal.left == reveal.bottom && !layer.board.spacer;
  });
}

}  // namespace

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
  const Length thickness = top.board.thickness;
  for (int layers = pick(random, 0, 2); layers > 0; --layers) {
    const Length even = sixty_fourths(pick(random, 4, 20));
    const Length other = random() % 3 == 0 ? sixty_fourths(pick(random, 4, 20)) : even;
    add_layer(mat, {even, even, even, other},
              random() % 2 == 0 ? thickness : Length::from_ticks(pick(random, 1500, 2600)));
    mat.layers.back().board.spacer = layers > 1 && random() % 6 == 0;
  }
  if (!may_reshape(mat)) return mat;
  for (std::size_t i = 0; i < mat.layers.front().windows.size(); ++i) {
    if (random() % 12 != 0) continue;
    give_shape(mat, i, random_shape(random, mat.layers.back().windows[i].back));
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
  if (random() % 3 == 0) out.stroke = Stroke::push;
  out.mark_lead = Length::from_ticks(pick(random, -1000, 4000));
  if (random() % 2 == 0) out.own_start_lead = Length::from_ticks(pick(random, -1000, 4000));
  if (random() % 2 == 0) out.line_from_rail = Length::from_ticks(pick(random, -12000, 12000));
  if (random() % 3 == 0) out.reach.reset();
  out.farther_first = random() % 4 != 0;
  out.arm_zero = error();
  out.kerf = Length::from_ticks(pick(random, 0, 40));
  return out;
}

std::optional<Way> random_way(std::mt19937& random, const CutterProfile& cutter) {
  const Way way = all_ways[random() % std::size(all_ways)];
  if (random() % 2 == 0) return std::nullopt;
  const int needed = way < Way::one_stop ? 0 : way == Way::one_stop ? 1 : 2;
  if (stops(cutter) < needed) return std::nullopt;
  if (!cutter.guide && (way == Way::guide_marked || way == Way::gauges)) return std::nullopt;
  return way;
}

std::string random_job(std::mt19937& random) {
  const bool metric = random() % 2 == 0;
  const auto size = [&](int least, int most) {
    const int steps = static_cast<int>(random() % 9);
    return metric ? std::to_string(25 * least + steps * (most - least) * 3)
                  : std::to_string(least) + " " + std::to_string(steps) + "/16";
  };
  std::string arrange, all;
  const int rows = 1 + static_cast<int>(random() % 2);
  const int layers = 1 + static_cast<int>(random() % 3);
  for (int row = 0; row < rows; ++row) {
    const bool joined = layers > 1 && random() % 3 == 0;
    arrange += "<row gap=\"" + size(1, 2) + "\"" +
               (joined ? " window=\"" + std::to_string(layers) + "\"" : std::string()) + ">";
    const std::string height = size(3, 5);
    const int columns = 1 + static_cast<int>(random() % 3);
    for (int column = 0; column < columns; ++column) {
      const std::string id = "o" + std::to_string(row) + std::to_string(column);
      all += (all.empty() ? "" : " ") + id;
      arrange +=
          "<opening id=\"" + id + "\" width=\"" + size(3, 6) + "\" height=\"" + height + "\"/>";
    }
    arrange += "</row>";
  }
  std::string boards = "<layer name=\"Top mat\" board=\"Oat\"/>";
  for (int layer = 2; layer <= layers; ++layer) {
    boards += "<layer name=\"Under " + std::to_string(layer) + "\" board=\"Slate\"";
    if (layer == layers && random() % 4 == 0) {
      boards += " spacer=\"yes\"";
    } else {
      boards += std::string(" reveal=\"") + (metric ? "6" : "1/4") + "\"";
      if (random() % 4 == 0) boards += " only=\"o00\"";
    }
    boards += "/>";
  }
  return std::string("<job version=\"1\" reference=\"R\" unit=\"") + (metric ? "mm" : "in") +
         "\" increment=\"" + (metric ? "1" : "1/16") + "\"><layers>" + boards +
         "</layers><borders all=\"" + size(2, 4) + "\"/><arrange><column gap=\"" + size(1, 2) +
         "\">" + arrange + "</column></arrange></job>";
}

std::optional<Mat> mat_at(Job job, int degrees) {
  job.bevel_millidegrees = degrees * 1000;
  const auto layout = lay_out(job);
  if (!layout) return std::nullopt;
  auto mat = build_mat(job, *layout);
  return mat ? std::optional(std::move(*mat)) : std::nullopt;
}

PlanOptions random_options(std::mt19937& random, const CutterProfile& cutter) {
  PlanOptions options;
  options.stacked = random() % 2 == 0;
  options.quantity = random() % 3 == 0 ? 12 : 1;
  options.way = random_way(random, cutter);
  return options;
}

Mat double_mat() {
  const Length b = inches(3), far = inches(13);
  Mat mat = single(inches(24), inches(16), {{b, b, far, b}, {far, b, b, inches(4)}});
  const Length r = sixty_fourths(16);
  add_layer(mat, {r, r, r, r}, sixty_fourths(4));
  return mat;
}

}  // namespace mats
