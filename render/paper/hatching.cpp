#include <algorithm>
#include <cmath>

#include "render/paper/path.h"

namespace mullion::paper {
namespace {

struct Edge {
  Spot from, to;
};

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

std::vector<Edge> edges_of(const Path& path) {
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

}  // namespace

Path hatching(const Path& region, double spacing, double degrees) {
  // Turned so that the hatching lies level: line number n is y = n * spacing.
  const Transform level = turned(degrees), back = turned(-degrees);
  struct Crossing {
    int row;
    double x;
  };
  std::vector<Crossing> crossings;
  for (const Edge& edge : edges_of(region)) {
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
