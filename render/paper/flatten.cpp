#include <algorithm>
#include <cmath>

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

}  // namespace mullion::paper
