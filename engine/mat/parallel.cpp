#include "engine/mat/parallel.h"

#include <algorithm>
#include <polyclipping/clipper.hpp>

#include "engine/locale/locale.h"
#include "engine/mat/fit.h"

namespace mullion {
namespace {

constexpr double chord_tolerance = 1;
constexpr double fitting_tolerance = 4;
// Chords of curves stay well below the length from which an edge of the parallel is a line.
constexpr double longest_chord = 600, shortest_line = 2000;
constexpr std::size_t most_corners = 30'000;
constexpr std::size_t most_crossings = 50'000;
constexpr double grid = 64;  // whole steps per tick while offsetting
constexpr double mitre_limit = 6;

// Corners close enough for the curve and for its parallels; at most one more than most_corners.
std::vector<Vector> dense_corners(const Outline& outline) {
  std::vector<Vector> out;
  const auto add = [&out](Vector v) {
    if (out.empty() || norm(v - out.back()) > 0) out.push_back(v);
  };
  const std::vector<Cubic> curves = curves_of(outline);
  for (std::size_t i = 0; i < curves.size(); ++i) {
    const Cubic& curve = curves[i];
    add(curve.start);
    if (!outline.segments[i].curved) continue;
    const double reach = norm(curve.control1 - curve.start) +
                         norm(curve.control2 - curve.control1) + norm(curve.end - curve.control2);
    const std::size_t steps = std::max(steps_for(curve, chord_tolerance),
                                       static_cast<std::size_t>(reach / longest_chord) + 1);
    for (std::size_t k = 1; k < steps && out.size() <= most_corners; ++k) {
      add(place(curve, static_cast<double>(k) / static_cast<double>(steps)));
    }
  }
  while (out.size() > 1 && norm(out.back() - out.front()) == 0) out.pop_back();
  return out;
}

// On one line, and side by side on more of it than rounding to ticks makes.
bool run_along_each_other(Vector a, Vector b, Vector c, Vector d) {
  constexpr double rounding = 8;
  const Vector along = b - a;
  if (cross(along, c - a) != 0 || cross(along, d - a) != 0) return false;
  const double length = norm(along);
  const auto [from, to] = std::minmax({dot(along, c - a), dot(along, d - a)});
  return std::min(length, to / length) - std::max(0.0, from / length) > rounding;
}

struct Edge {
  Vector a, b;
  double left, right, top, bottom;
};

Edge edge(Vector a, Vector b) {
  return {a, b, std::min(a.x, b.x), std::max(a.x, b.x), std::min(a.y, b.y), std::max(a.y, b.y)};
}

// How many pairs meet as `meet` says, or `limit` where there are more.
template <class Meet>
std::size_t meetings(std::vector<Edge> edges, std::size_t limit, Meet meet) {
  std::sort(edges.begin(), edges.end(),
            [](const Edge& e, const Edge& f) { return e.left < f.left; });
  std::size_t count = 0;
  for (std::size_t i = 0; i < edges.size(); ++i) {
    const Edge& e = edges[i];
    for (std::size_t j = i + 1; j < edges.size() && edges[j].left <= e.right; ++j) {
      const Edge& f = edges[j];
      if (f.top > e.bottom || e.top > f.bottom || !meet(e.a, e.b, f.a, f.b)) continue;
      if (++count >= limit) return count;
    }
  }
  return count;
}

bool crosses_itself(const std::vector<Vector>& corners) {
  std::vector<Edge> edges;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    edges.push_back(edge(corners[i], corners[(i + 1) % corners.size()]));
  }
  return meetings(std::move(edges), 1, [](Vector a, Vector b, Vector c, Vector d) {
           return cross_each_other(a, b, c, d) || run_along_each_other(a, b, c, d);
         }) > 0;
}

// Whether the edges, each moved outward by itself and joined to the next, cross so often that
// sorting them out would take seconds: detail far finer than the distance.
bool is_too_fine(const std::vector<Vector>& corners, double outward) {
  std::vector<Vector> ends;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const Vector a = corners[i], b = corners[(i + 1) % corners.size()], along = unit(b - a);
    const Vector away = Vector{along.y, -along.x} * outward;  // outside of a clockwise edge
    ends.push_back(a + away);
    ends.push_back(b + away);
  }
  std::vector<Edge> moved;
  for (std::size_t i = 0; i < ends.size(); ++i) {
    moved.push_back(edge(ends[i], ends[(i + 1) % ends.size()]));
  }
  return meetings(std::move(moved), most_crossings, cross_each_other) >= most_crossings;
}

std::string flaw_of_corners(const std::vector<Vector>& corners) {
  if (corners.size() > most_corners) return mark("the outline is too intricate to cut");
  if (corners.size() < 3) return mark("the outline has no area");
  if (crosses_itself(corners))
    return mark("the outline crosses itself or goes along one line twice");
  return {};
}

ClipperLib::Path to_grid(const std::vector<Vector>& corners) {
  ClipperLib::Path out;
  for (Vector v : corners) {
    out.emplace_back(static_cast<ClipperLib::cInt>(std::llround(v.x * grid)),
                     static_cast<ClipperLib::cInt>(std::llround(v.y * grid)));
  }
  return out;
}

ClipperLib::Paths moved(const ClipperLib::Path& path, double outward) {
  ClipperLib::ClipperOffset offset(mitre_limit);
  offset.AddPath(path, ClipperLib::jtMiter, ClipperLib::etClosedPolygon);
  ClipperLib::Paths found;
  offset.Execute(found, outward * grid);
  return found;
}

// Clockwise as seen.
std::vector<Vector> from_grid(const ClipperLib::Path& path) {
  std::vector<Vector> out;
  for (const ClipperLib::IntPoint& p : path) {
    const Vector v{static_cast<double>(p.X) / grid, static_cast<double>(p.Y) / grid};
    if (out.empty() || norm(v - out.back()) > 0.1) out.push_back(v);
  }
  while (out.size() > 1 && norm(out.back() - out.front()) <= 0.1) out.pop_back();
  if (ClipperLib::Area(path) < 0) std::reverse(out.begin(), out.end());
  return out;
}

}  // namespace

std::string flaw_of(const Outline& outline) {
  return flaw_of_corners(dense_corners(outline));
}

// What is narrower is gone once the outline has moved out by half the width and back again.
bool has_narrow_board(const Outline& outline, Length width) {
  const std::vector<Vector> corners = dense_corners(outline);
  const double half = static_cast<double>(width.ticks()) / 2;
  if (!flaw_of_corners(corners).empty() || is_too_fine(corners, half)) return false;
  try {
    const ClipperLib::Path edge = to_grid(corners);
    const ClipperLib::Paths out = moved(edge, half);
    if (out.size() != 1) return true;
    const ClipperLib::Paths back = moved(out.front(), -half);
    if (back.size() != 1) return false;
    const double filled =
        std::abs(ClipperLib::Area(back.front())) - std::abs(ClipperLib::Area(edge));
    return filled > std::pow(2 * half * grid, 2);
  } catch (const std::exception&) {
    return false;
  }
}

tl::expected<Outline, std::string> parallel(const Outline& any_way_round, Length outward) {
  const Outline outline = signed_area(any_way_round) < 0 ? reversed(any_way_round) : any_way_round;
  const std::vector<Vector> corners = dense_corners(outline);
  if (std::string flaw = flaw_of_corners(corners); !flaw.empty()) {
    return tl::unexpected(std::move(flaw));
  }
  if (outward == Length()) return outline;
  if (is_too_fine(corners, static_cast<double>(outward.ticks()))) {
    return tl::unexpected(
        std::string(mark("the outline has detail too fine for its bevel or reveal")));
  }
  ClipperLib::Paths found;
  try {
    found = moved(to_grid(corners), static_cast<double>(outward.ticks()));
  } catch (const std::exception&) {  // coordinates beyond the library's range
    return tl::unexpected(std::string(mark("the outline is too large to cut")));
  }
  if (found.size() != 1) {
    return tl::unexpected(std::string(
        mark("the outline comes so near to itself that its bevel would leave a loose island")));
  }
  return fit_polygon(from_grid(found.front()), shortest_line, fitting_tolerance);
}

}  // namespace mullion
