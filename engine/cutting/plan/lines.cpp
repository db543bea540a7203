#include "engine/cutting/plan/lines.h"

namespace mullion {
namespace {

struct Run {
  Point from, to;
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
    if (segment.curved || segment.to != at) runs.push_back({at, segment.to, segment.curved, -1});
    at = segment.to;
  }
  if (at != outline.start) runs.push_back({at, outline.start, false, -1});
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

Corner corner_between(const Run& a, const Run& b) {
  if (a.curved || b.curved) return Corner::smooth;
  const int sign = turn_sign(a, b);
  if (sign == 0) return Corner::smooth;
  if (sign < 0) return Corner::inner;
  return a.along_edge() && b.along_edge() ? Corner::square : Corner::blunt;
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
      line.ends[0] = {run.from, corner_between(before, run), before.line};
      line.ends[1] = {run.to, corner_between(run, after), after.line};
    } else if (!run.curved) {
      out.skew.push_back({index, run.from, run.to});
    }
  }
  if (curved) out.curves.push_back({index, CurveKind::template_cut});
}

}  // namespace

LayerLines lines_of(const std::vector<Window>& windows) {
  LayerLines out;
  for (std::size_t i = 0; i < windows.size(); ++i) {
    const int index = static_cast<int>(i);
    if (windows[i].shape.kind == ShapeKind::ellipse) {
      out.curves.push_back({index, CurveKind::oval});
    } else if (windows[i].shape.kind == ShapeKind::outline) {
      out.curves.push_back({index, CurveKind::template_cut});
    } else {
      add_window(windows[i], index, out);
    }
  }
  return out;
}

}  // namespace mullion
