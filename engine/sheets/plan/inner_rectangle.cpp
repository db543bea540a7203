#include "engine/sheets/plan/inner_rectangle.h"

#include <algorithm>
#include <cmath>

namespace mullion {
namespace {

constexpr Length chord_tolerance = Length::from_ticks(1);
constexpr int first_steps = 64;  // of the coarse grid
constexpr int finer_steps = 12;  // on each side of a found edge
constexpr std::size_t most_corners = 200;

struct Span {
  double from, to;
};
using Spans = std::vector<Span>;  // ascending, apart

struct Found {
  double left = 0, right = 0, top = 0, bottom = 0;
  double area() const { return (right - left) * (bottom - top); }
};

struct Edge {
  Vector a, b;  // a.x <= b.x
  bool to_right;
  double y_at(double x) const { return a.y + (b.y - a.y) * ((x - a.x) / (b.x - a.x)); }
  Span heights_between(double left, double right) const {
    const double from = a.x < left ? y_at(left) : a.y;
    const double to = b.x > right ? y_at(right) : b.y;
    return {std::min(from, to), std::max(from, to)};
  }
};

std::vector<Edge> edges_of(const std::vector<Vector>& corners) {
  std::vector<Edge> edges;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const Vector a = corners[i], b = corners[(i + 1) % corners.size()];
    edges.push_back(a.x <= b.x ? Edge{a, b, true} : Edge{b, a, false});
  }
  return edges;
}

bool inside(const std::vector<const Edge*>& edges, double x, double y) {
  int winding = 0;
  for (const Edge* edge : edges) {
    if (edge->a.x > x || edge->b.x <= x || edge->y_at(x) > y) continue;
    winding += edge->to_right ? 1 : -1;
  }
  return winding != 0;
}

// Where an upright strip lies inside over its whole width: between the edges that cross it.
Spans clear_spans(const std::vector<Edge>& all, double left, double right) {
  std::vector<const Edge*> edges;
  Spans crossed;
  for (const Edge& edge : all) {
    if (edge.b.x <= left || edge.a.x >= right) continue;
    edges.push_back(&edge);
    crossed.push_back(edge.heights_between(left, right));
  }
  std::sort(crossed.begin(), crossed.end(),
            [](const Span& a, const Span& b) { return a.from < b.from; });
  Spans clear;
  for (std::size_t i = 1; i < crossed.size(); ++i) {
    crossed[i].to = std::max(crossed[i].to, crossed[i - 1].to);
    const Span gap{crossed[i - 1].to, crossed[i].from};
    if (gap.from >= gap.to) continue;
    if (inside(edges, (left + right) / 2, (gap.from + gap.to) / 2)) clear.push_back(gap);
  }
  return clear;
}

Spans common(const Spans& a, const Spans& b) {
  Spans both;
  for (std::size_t i = 0, j = 0; i < a.size() && j < b.size();) {
    const Span span{std::max(a[i].from, b[j].from), std::min(a[i].to, b[j].to)};
    if (span.from < span.to) both.push_back(span);
    if (a[i].to < b[j].to) {
      ++i;
    } else {
      ++j;
    }
  }
  return both;
}

// The largest rectangle whose upright sides stand at two of the places.
Found largest_between(const std::vector<Edge>& edges, std::vector<double> places) {
  std::sort(places.begin(), places.end());
  places.erase(std::unique(places.begin(), places.end()), places.end());
  std::vector<Spans> strips;
  for (std::size_t i = 1; i < places.size(); ++i) {
    strips.push_back(clear_spans(edges, places[i - 1], places[i]));
  }
  Found best;
  for (std::size_t first = 0; first < strips.size(); ++first) {
    Spans spans = strips[first];
    for (std::size_t last = first; last < strips.size() && !spans.empty(); ++last) {
      spans = common(spans, strips[last]);
      for (const Span& span : spans) {
        const Found found{places[first], places[last + 1], span.from, span.to};
        if (found.area() > best.area()) best = found;
      }
    }
  }
  return best;
}

Found search(const Outline& outline, const std::vector<Edge>& edges) {
  const Rect box = bounding_box(outline);
  const double left = static_cast<double>(box.left.ticks());
  double step = static_cast<double>(box.width().ticks()) / first_steps;
  std::vector<double> places;
  for (int i = 0; i <= first_steps; ++i) places.push_back(left + step * i);
  const std::size_t corners = std::min(outline.segments.size(), most_corners);
  for (std::size_t i = 0; i < corners; ++i) {
    places.push_back(static_cast<double>(outline.segments[i].to.x.ticks()));
  }
  Found best = largest_between(edges, places);
  for (; step >= 1 && best.area() > 0; step /= finer_steps) {
    places = {best.left, best.right};
    for (int i = -finer_steps; i <= finer_steps; ++i) {
      const double off = step * i / finer_steps;
      places.push_back(best.left + off);
      places.push_back(best.right + off);
    }
    const Found found = largest_between(edges, places);
    if (found.area() > best.area()) best = found;
  }
  return best;
}

bool curved(const Outline& outline) {
  return std::any_of(outline.segments.begin(), outline.segments.end(),
                     [](const Segment& segment) { return segment.curved; });
}

}  // namespace

std::optional<Rect> inner_rectangle(const Outline& outline) {
  const std::vector<Edge> edges = edges_of(flatten(outline, chord_tolerance));
  const Found found = search(outline, edges);
  // The chords of a hollow lie outside it by no more than their tolerance.
  const double chord = curved(outline) ? static_cast<double>(chord_tolerance.ticks()) : 0;
  const auto up = [chord](double ticks) {
    return Length::from_ticks(static_cast<std::int64_t>(std::ceil(ticks + chord)));
  };
  const auto down = [chord](double ticks) {
    return Length::from_ticks(static_cast<std::int64_t>(std::floor(ticks - chord)));
  };
  const Rect rect{up(found.left), up(found.top), down(found.right), down(found.bottom)};
  if (rect.left >= rect.right || rect.top >= rect.bottom) return std::nullopt;
  return rect;
}

}  // namespace mullion
