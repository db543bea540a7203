#include "engine/cuts/plan/lines.h"

#include <algorithm>
#include <cmath>

namespace mullion {
namespace {

struct Run {
  Point from, to;
  Segment segment;
  bool curved = false;
  int line = -1;  // index among the straight lines

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
  if (run.curved && run.segment.control1 != run.from) {
    return vector_of(run.segment.control1) - from;
  }
  if (run.curved && run.segment.control2 != run.from) {
    return vector_of(run.segment.control2) - from;
  }
  return vector_of(run.to) - from;
}

Vector last_direction(const Run& run) {
  const Vector to = vector_of(run.to);
  if (run.curved && run.segment.control2 != run.to) return to - vector_of(run.segment.control2);
  if (run.curved && run.segment.control1 != run.to) return to - vector_of(run.segment.control1);
  return to - vector_of(run.from);
}

// The bevels of two cuts that turn by an angle meet on the face at its half angle's tangent times
// the run; a mitre longer than six times the run is cut off (engine/mat/parallel.h).
int share_between(const Run& a, const Run& b) {
  constexpr double smooth = 0.01;  // half a degree
  constexpr double longest = 6;
  const Vector from = last_direction(a), to = first_direction(b);
  const double turn = std::atan2(cross(from, to), dot(from, to));
  if (turn < smooth) return 0;
  return static_cast<int>(std::ceil(1000 * std::min(longest, std::tan(turn / 2))));
}

Corner corner_between(const Run& a, const Run& b) {
  if (a.curved || b.curved) return share_between(a, b) > 0 ? Corner::curve : Corner::smooth;
  const int sign = turn_sign(a, b);
  if (sign == 0) return Corner::smooth;
  if (sign < 0) return Corner::inner;
  return a.along_edge() && b.along_edge() ? Corner::square : Corner::blunt;
}

// What of the runs from `first` on is curved, up to the next straight one.
CurveLine curve_from(const std::vector<Run>& runs, std::size_t first, bool closed) {
  CurveLine out;
  out.closed = closed;
  out.line.start = runs[first].from;
  const std::size_t count = runs.size();
  out.shares.push_back(share_between(runs[(first + count - 1) % count], runs[first]));
  for (std::size_t k = 0; k < count; ++k) {
    const Run& run = runs[(first + k) % count];
    if (!closed && !run.curved) break;
    out.line.segments.push_back(run.segment);
    out.shares.push_back(share_between(run, runs[(first + k + 1) % count]));
  }
  return out;
}

std::vector<CurveLine> curve_lines(const std::vector<Run>& runs) {
  const auto straight = [](const Run& run) { return !run.curved; };
  if (std::none_of(runs.begin(), runs.end(), straight)) return {curve_from(runs, 0, true)};
  std::vector<CurveLine> out;
  for (std::size_t i = 0; i < runs.size(); ++i) {
    const bool starts = runs[i].curved && !runs[(i + runs.size() - 1) % runs.size()].curved;
    if (starts) out.push_back(curve_from(runs, i, false));
  }
  return out;
}

void add_window(const Window& window, int index, LayerLines& out) {
  std::vector<Run> runs = runs_of(window.back_edge);
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
      line.ends[0] = {run.from, corner_between(before, run), before.line,
                      share_between(before, run)};
      line.ends[1] = {run.to, corner_between(run, after), after.line, share_between(run, after)};
    } else if (!run.curved) {
      out.skew.push_back({index, run.from, run.to});
    }
  }
  if (curved) out.curves.push_back({index, CurveKind::template_cut, curve_lines(runs)});
}

}  // namespace

LayerLines lines_of(const std::vector<Window>& windows) {
  LayerLines out;
  for (std::size_t i = 0; i < windows.size(); ++i) {
    const int index = static_cast<int>(i);
    if (windows[i].shape.kind == ShapeKind::ellipse) {
      out.curves.push_back({index, CurveKind::oval, {}});
    } else if (windows[i].shape.kind == ShapeKind::outline) {
      out.curves.push_back(
          {index, CurveKind::template_cut, {curve_from(runs_of(windows[i].back_edge), 0, true)}});
    } else {
      add_window(windows[i], index, out);
    }
  }
  return out;
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
