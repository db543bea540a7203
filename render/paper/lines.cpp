// What becomes of a path as straight lines: chords of its curves, what a box leaves of it,
// hatching.

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "render/paper/path.h"

namespace mullion::paper {
namespace {

constexpr double flatness = 0.05;  // points

void add_curve(std::vector<Edge>& edges, Spot a, Spot b, Spot c, Spot d) {
  // The second difference bounds the distance of a Bezier from its chords (n pieces: bend / n^2).
  const double bend = std::max(std::hypot(a.x - 2 * b.x + c.x, a.y - 2 * b.y + c.y),
                               std::hypot(b.x - 2 * c.x + d.x, b.y - 2 * c.y + d.y));
  const int pieces =
      std::clamp(static_cast<int>(std::ceil(std::sqrt(0.75 * bend / flatness))), 1, 500);
  Spot last = a;
  for (int i = 1; i <= pieces; ++i) {
    const double t = static_cast<double>(i) / pieces, u = 1 - t;
    const double wa = u * u * u, wb = 3 * u * u * t, wc = 3 * u * t * t, wd = t * t * t;
    const Spot next{wa * a.x + wb * b.x + wc * c.x + wd * d.x,
                    wa * a.y + wb * b.y + wc * c.y + wd * d.y};
    edges.push_back({last, next});
    last = next;
  }
}

// What of a line lies in the box, by the method of Liang and Barsky (1984).
std::optional<Edge> part_inside(Spot from, Spot to, const Box& box) {
  const double dx = to.x - from.x, dy = to.y - from.y;
  const std::array<std::array<double, 2>, 4> sides{{{-dx, from.x - box.x},
                                                    {dx, box.x + box.width - from.x},
                                                    {-dy, from.y - box.y},
                                                    {dy, box.y + box.height - from.y}}};
  double start = 0, end = 1;
  for (const auto& [outward, room] : sides) {
    if (outward == 0) {
      if (room < 0) return std::nullopt;
    } else if (outward < 0) {
      start = std::max(start, room / outward);
    } else {
      end = std::min(end, room / outward);
    }
  }
  if (start > end) return std::nullopt;
  const auto at = [&](double t) { return Spot{from.x + t * dx, from.y + t * dy}; };
  return Edge{start > 0 ? at(start) : from, end < 1 ? at(end) : to};
}

bool same(Spot a, Spot b) {
  return a.x == b.x && a.y == b.y;
}

// What of a polygon lies on the inner side of a line, where `depth` is not negative; by the method
// of Sutherland and Hodgman (1974).
template <class Depth>
std::vector<Spot> on_inner_side(const std::vector<Spot>& corners, const Depth& depth) {
  std::vector<Spot> kept;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const Spot from = corners[i], to = corners[(i + 1) % corners.size()];
    const double here = depth(from), there = depth(to);
    if (here >= 0) kept.push_back(from);
    if ((here < 0) != (there < 0)) {
      const double t = here / (here - there);
      kept.push_back({from.x + t * (to.x - from.x), from.y + t * (to.y - from.y)});
    }
  }
  return kept;
}

Box bounds_of(const std::vector<Spot>& spots) {
  const auto [left, right] = std::minmax_element(
      spots.begin(), spots.end(), [](const Spot& a, const Spot& b) { return a.x < b.x; });
  const auto [top, bottom] = std::minmax_element(
      spots.begin(), spots.end(), [](const Spot& a, const Spot& b) { return a.y < b.y; });
  return {left->x, top->y, right->x - left->x, bottom->y - top->y};
}

std::vector<Spot> polygon_inside(const std::vector<Spot>& corners, const Box& box) {
  if (corners.empty()) return {};
  const Box bounds = bounds_of(corners);
  if (!overlap(bounds, box)) return {};
  if (contains(box, bounds)) return corners;
  auto inside = on_inner_side(corners, [&](Spot s) { return s.x - box.x; });
  inside = on_inner_side(inside, [&](Spot s) { return box.x + box.width - s.x; });
  inside = on_inner_side(inside, [&](Spot s) { return s.y - box.y; });
  return on_inner_side(inside, [&](Spot s) { return box.y + box.height - s.y; });
}

}  // namespace

std::vector<Edge> flattened(const Path& path) {
  std::vector<Edge> edges;
  Spot start, last;
  for (const Path::Step& step : path.steps()) {
    switch (step.kind) {
      case Path::Kind::move:
        start = step.to;
        break;
      case Path::Kind::line:
        edges.push_back({last, step.to});
        break;
      case Path::Kind::curve:
        add_curve(edges, last, step.control1, step.control2, step.to);
        break;
      case Path::Kind::close:
        edges.push_back({last, start});
        break;
    }
    last = step.kind == Path::Kind::close ? start : step.to;
  }
  return edges;
}

bool has_curves(const Path& path) {
  return std::any_of(path.steps().begin(), path.steps().end(),
                     [](const Path::Step& step) { return step.kind == Path::Kind::curve; });
}

Path lines_inside(const Path& path, const Box& box) {
  Path result;
  std::optional<Spot> pen;  // where the result ends
  for (const Edge& edge : flattened(path)) {
    const std::optional<Edge> part = part_inside(edge.from, edge.to, box);
    if (!part) continue;
    if (!pen || !same(*pen, part->from)) result.move_to(part->from);
    result.line_to(part->to);
    pen = part->to;
  }
  return result;
}

Path area_inside(const Path& path, const Box& box) {
  Path result;
  std::vector<Spot> corners;
  const auto keep = [&] {
    const std::vector<Spot> inside = polygon_inside(corners, box);
    if (!inside.empty()) result.append(polyline(inside).close());
    corners.clear();
  };
  for (const Path::Step& step : path.steps()) {
    if (step.kind == Path::Kind::move) keep();
    if (step.kind != Path::Kind::close) corners.push_back(step.to);
  }
  keep();
  return result;
}

Path hatching(const Path& region, double spacing, double degrees) {
  // Turned so that the hatching lies level: line number n is y = n * spacing.
  const Transform level = turned(degrees), back = turned(-degrees);
  struct Crossing {
    int row;
    double x;
  };
  std::vector<Crossing> crossings;
  for (const Edge& edge : flattened(region)) {
    const Spot a = level(edge.from), b = level(edge.to);
    const double low = std::min(a.y, b.y), high = std::max(a.y, b.y);
    // Half-open, so that a corner on a line counts once.
    for (int row = static_cast<int>(std::ceil(low / spacing)); row * spacing < high; ++row) {
      const double t = (row * spacing - a.y) / (b.y - a.y);
      crossings.push_back({row, a.x + t * (b.x - a.x)});
    }
  }
  std::sort(crossings.begin(), crossings.end(), [](const Crossing& a, const Crossing& b) {
    return a.row != b.row ? a.row < b.row : a.x < b.x;
  });
  Path lines;
  for (std::size_t i = 0; i + 1 < crossings.size(); i += 2) {
    const double y = crossings[i].row * spacing;
    lines.move_to(back({crossings[i].x, y})).line_to(back({crossings[i + 1].x, y}));
  }
  return lines;
}

}  // namespace mullion::paper
