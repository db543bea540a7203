#include "engine/cuts/lines.h"

#include <algorithm>
#include <cmath>

namespace mullion {
namespace {

struct Run {
  Point from, to;
  Segment segment;
  bool curved = false;  // or a short side of a drawn outline: cut along a template
  int line = -1;        // index among the straight lines

  std::int64_t dx() const { return (to.x - from.x).ticks(); }
  std::int64_t dy() const { return (to.y - from.y).ticks(); }
  bool along_edge() const { return !curved && (dx() == 0 || dy() == 0); }
};

std::vector<Run> runs_of(const Outline& outline) {
  std::vector<Run> runs;
  Point at = outline.start;
  for (const Segment& segment : outline.segments) {
    if (segment.curved || segment.to != at) {
      runs.push_back({at, segment.to, segment, segment.curved, -1});
    }
    at = segment.to;
  }
  if (at != outline.start) {
    runs.push_back({at, outline.start, {false, {}, {}, outline.start}, false, -1});
  }
  return runs;
}

// Outlines go clockwise as seen from the front, so the window is to the right of each run.
BoardEdge kept_side(const Run& run) {
  if (run.dy() == 0) return run.dx() > 0 ? BoardEdge::top : BoardEdge::bottom;
  return run.dy() > 0 ? BoardEdge::right : BoardEdge::left;
}

int turn_sign(const Run& a, const Run& b) {
  __extension__ using Wide = __int128;
  const Wide cross = static_cast<Wide>(a.dx()) * b.dy() - static_cast<Wide>(a.dy()) * b.dx();
  return cross > 0 ? 1 : cross < 0 ? -1 : 0;
}

// The directions in which a run sets out and arrives.
Vector first_direction(const Run& run) {
  const Vector from = vector_of(run.from);
  if (run.segment.curved && run.segment.control1 != run.from) {
    return vector_of(run.segment.control1) - from;
  }
  if (run.segment.curved && run.segment.control2 != run.from) {
    return vector_of(run.segment.control2) - from;
  }
  return vector_of(run.to) - from;
}

Vector last_direction(const Run& run) {
  const Vector to = vector_of(run.to);
  if (run.segment.curved && run.segment.control2 != run.to)
    return to - vector_of(run.segment.control2);
  if (run.segment.curved && run.segment.control1 != run.to)
    return to - vector_of(run.segment.control1);
  return to - vector_of(run.from);
}

// Thousandths of a square corner's over-cut at any other angle. A mitre longer than
// six times the run is cut off (engine/mat/parallel.h).
int share_between(const Run& a, const Run& b) {
  constexpr double smooth = 0.01;  // half a degree
  constexpr double longest = 6;
  const Vector from = last_direction(a), to = first_direction(b);
  const double turn = std::atan2(cross(from, to), dot(from, to));
  if (turn < smooth) return 0;
  return static_cast<int>(std::ceil(1000 * std::min(longest, std::tan(turn / 2))));
}

Length part_of(Length whole, std::int64_t number, std::int64_t of) {
  return Length::from_ticks((whole.ticks() * number + of - 1) / of);
}

// One of them parallel to an edge of the board, the other at 45 degrees.
bool turns_by_45_degrees(const Run& a, const Run& b) {
  const auto diagonal = [](const Run& run) {
    return run.dx() == run.dy() || run.dx() == -run.dy();
  };
  return (a.along_edge() && diagonal(b)) || (diagonal(a) && b.along_edge());
}

Length curve_over_cut(const Run& a, const Run& b, Length square) {
  return part_of(square, share_between(a, b), 1000);
}

Length over_cut_between(const Run& a, const Run& b, Length square) {
  if (a.curved || b.curved) return curve_over_cut(a, b, square);
  if (turn_sign(a, b) <= 0) return Length();
  if (a.along_edge() && b.along_edge()) return square;
  const bool sharp = dot(last_direction(a), first_direction(b)) < 0;
  if (turns_by_45_degrees(a, b) && !sharp) return part_of(square, 29, 70);
  return curve_over_cut(a, b, square);
}

// What of the runs from `first` on is curved, up to the next straight one.
CurveLine curve_from(const std::vector<Run>& runs, std::size_t first, bool closed, Length square) {
  CurveLine out;
  out.closed = closed;
  out.line.start = runs[first].from;
  const std::size_t count = runs.size();
  out.over_cuts.push_back(curve_over_cut(runs[(first + count - 1) % count], runs[first], square));
  for (std::size_t k = 0; k < count; ++k) {
    const Run& run = runs[(first + k) % count];
    if (!closed && !run.curved) break;
    out.line.segments.push_back(run.segment);
    out.over_cuts.push_back(curve_over_cut(run, runs[(first + k + 1) % count], square));
  }
  return out;
}

std::vector<CurveLine> curve_lines(const std::vector<Run>& runs, Length square) {
  const auto straight = [](const Run& run) { return !run.curved; };
  if (std::none_of(runs.begin(), runs.end(), straight)) {
    return {curve_from(runs, 0, true, square)};
  }
  std::vector<CurveLine> out;
  for (std::size_t i = 0; i < runs.size(); ++i) {
    const bool starts = runs[i].curved && !runs[(i + runs.size() - 1) % runs.size()].curved;
    if (starts) out.push_back(curve_from(runs, i, false, square));
  }
  return out;
}

bool is_short(const Run& run) {
  const double least = static_cast<double>(least_straight_side.ticks());
  return norm(vector_of(run.to) - vector_of(run.from)) < least;
}

void add_window(const Window& window, int index, Length square, CutLines& out) {
  std::vector<Run> runs = runs_of(window.back_edge);
  if (window.shape.kind == ShapeKind::outline) {
    for (Run& run : runs) run.curved = run.curved || is_short(run);
  }
  bool curved = false;
  for (Run& run : runs) {
    curved = curved || run.curved;
    if (!run.along_edge()) continue;
    run.line = static_cast<int>(out.straight.size());
    StraightLine line;
    line.window = index;
    line.kept = kept_side(run);
    out.straight.push_back(line);
  }
  for (std::size_t i = 0; i < runs.size(); ++i) {
    const Run& run = runs[i];
    const Run& before = runs[(i + runs.size() - 1) % runs.size()];
    const Run& after = runs[(i + 1) % runs.size()];
    if (run.line >= 0) {
      StraightLine& line = out.straight[static_cast<std::size_t>(run.line)];
      line.ends[0] = {run.from, over_cut_between(before, run, square), before.line};
      line.ends[1] = {run.to, over_cut_between(run, after, square), after.line};
    } else if (!run.curved) {
      out.skew.push_back({index, run.from, run.to, over_cut_between(before, run, square),
                          over_cut_between(run, after, square)});
    }
  }
  if (curved) {
    out.curves.push_back({index, CurveKind::template_cut, curve_lines(runs, square)});
  }
}

// From `at` on in that direction.
void run_on(std::vector<BladePath>& paths, Point at, Vector direction, Length by) {
  if (by == Length()) return;
  const double far = static_cast<double>(by.ticks());
  const Point end = nearest_point(vector_of(at) + unit(direction) * far);
  paths.push_back({false, {at, {{false, {}, {}, end}}}});
}

void add_curve_paths(std::vector<BladePath>& paths, const CurveLine& curve) {
  paths.push_back({curve.closed, curve.line});
  std::vector<Run> runs;
  Point at = curve.line.start;
  for (const Segment& segment : curve.line.segments) {
    runs.push_back({at, segment.to, segment, segment.curved, -1});
    at = segment.to;
  }
  const std::size_t count = runs.size();
  for (std::size_t i = 0; i < count; ++i) {
    const Length after = curve.over_cuts[i + 1];
    run_on(paths, runs[i].to, last_direction(runs[i]), after);
    if (i + 1 < count || curve.closed) {
      const Run& next = runs[(i + 1) % count];
      run_on(paths, next.from, first_direction(next) * -1, after);
    }
  }
  if (!curve.closed) {
    run_on(paths, curve.line.start, first_direction(runs.front()) * -1, curve.over_cuts.front());
  }
}

}  // namespace

CutLines lines_of(const std::vector<Window>& windows, Length over_cut) {
  CutLines out;
  for (std::size_t i = 0; i < windows.size(); ++i) {
    const int index = static_cast<int>(i);
    const Outline& edge = windows[i].back_edge;
    if (windows[i].shape.kind == ShapeKind::ellipse) {
      const std::vector<Length> none(edge.segments.size() + 1);
      out.curves.push_back({index, CurveKind::oval, {{true, edge, none}}});
    } else {
      add_window(windows[i], index, over_cut, out);
    }
  }
  return out;
}

Point beyond(Point end, Point other, Length by) {
  if (end.x > other.x) end.x += by;
  if (end.x < other.x) end.x -= by;
  if (end.y > other.y) end.y += by;
  if (end.y < other.y) end.y -= by;
  return end;
}

Length cut_length(const StraightLine& line) {
  const LineEnd &a = line.ends[0], &b = line.ends[1];
  const Length across = std::max(a.at.x, b.at.x) - std::min(a.at.x, b.at.x);
  const Length down = std::max(a.at.y, b.at.y) - std::min(a.at.y, b.at.y);
  return across + down + a.over_cut + b.over_cut;
}

Length cut_length(const SkewLine& line) {
  const double length = norm(vector_of(line.to) - vector_of(line.from));
  return Length::from_ticks(static_cast<std::int64_t>(std::ceil(length))) + line.from_over_cut +
         line.to_over_cut;
}

std::vector<BladePath> blade_paths(const CutLines& lines) {
  std::vector<BladePath> paths;
  for (const StraightLine& line : lines.straight) {
    const LineEnd &a = line.ends[0], &b = line.ends[1];
    const Point from = beyond(a.at, b.at, a.over_cut), to = beyond(b.at, a.at, b.over_cut);
    paths.push_back({false, {from, {{false, {}, {}, to}}}});
  }
  for (const SkewLine& line : lines.skew) {
    const Vector from = vector_of(line.from), to = vector_of(line.to);
    const Vector ahead = unit(to - from);
    const auto over = [&](Length by) { return ahead * static_cast<double>(by.ticks()); };
    paths.push_back({false,
                     {nearest_point(from - over(line.from_over_cut)),
                      {{false, {}, {}, nearest_point(to + over(line.to_over_cut))}}}});
  }
  for (const Curve& curve : lines.curves) {
    for (const CurveLine& line : curve.lines) add_curve_paths(paths, line);
  }
  return paths;
}

Length distance_from_ellipse(const Outline& outline) {
  const Rect box = bounding_box(outline);
  const auto ticks = [](Length a) { return static_cast<double>(a.ticks()); };
  const double a = ticks(box.width()) / 2, b = ticks(box.height()) / 2;
  const Vector centre{ticks(box.left) + a, ticks(box.top) + b};
  double most = 0;
  for (const Vector& point : flatten(outline, Length::from_ticks(1))) {
    const Vector p = point - centre;
    const Vector part{p.x / a, p.y / b};
    // First order: the equation's residue over its slope.
    const double slope = 2 * std::hypot(part.x / a, part.y / b);
    most = std::max(most, std::abs(dot(part, part) - 1) / slope);
  }
  return Length::from_ticks(static_cast<std::int64_t>(std::ceil(most)));
}

}  // namespace mullion
