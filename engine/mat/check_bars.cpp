#include "engine/mat/findings.h"
#include "engine/mat/parallel.h"
#include "engine/mat/rect.h"

namespace mullion {
namespace {

// A bar narrower than this many thicknesses bends or breaks easily. Our own figure.
constexpr std::int64_t stiff_bar_thicknesses = 6;
// The blade runs past a corner by about one thickness. Common practice, no source.
constexpr std::int64_t overcut_thicknesses = 1;
// What should be left between two over-cuts. Our own figure.
constexpr std::int64_t left_between_thicknesses = 1;

bool is_rectangular(const Window& window) {
  return window.shape.kind == ShapeKind::rectangle;
}

// Whether the blade has to turn at corners, and runs past them.
bool has_corners(const Window& window) {
  return window.shape.kind != ShapeKind::ellipse && window.shape.kind != ShapeKind::rounded;
}

// Between rectangles the width of the bar, else the shortest way from edge to edge.
Length bar_between(const Window& a, const Window& b, Length wide_enough) {
  const Length bar = gap_between(a.back, b.back);
  if (bar >= wide_enough || (is_rectangular(a) && is_rectangular(b))) return bar;
  const double way = distance(a.back_edge, b.back_edge, measuring_tolerance);
  if (way > 0) return Length::from_ticks(std::llround(way));
  return std::min(bar, -measuring_tolerance);
}

void check_pair(Findings& f, const MatLayer& layer, const Window& a, const Window& b) {
  if (!a.seen && !b.seen) return;  // two holes out of sight may become one
  const Length thickness = layer.board.thickness;
  const Length stiff = thickness * stiff_bar_thicknesses;
  const Length bar = bar_between(a, b, stiff);
  if (bar >= stiff) return;
  const std::string one = f.name(a), other = f.name(b), board = f.name(layer);
  const Place place = f.place(b.openings.front());
  const Length overcuts = thickness * (2 * overcut_thicknesses);
  if (bar < Length()) {
    f.add("check-overlapping", f.say("%1 and %2 overlap in %3", one, other, board), place);
  } else if (bar <= layer.run * 2) {
    f.add("check-bevels-meet",
          f.say("nothing is left of the face between %1 and %2 of %3: the bar is %4 wide on the "
                "back, and the bevels take %5",
                one, other, board, f.text(bar), f.text(layer.run * 2)),
          place);
  } else if (has_corners(a) && has_corners(b) &&
             bar <= overcuts + thickness * left_between_thicknesses) {
    f.add("check-overcuts-meet",
          f.say("the bar between %1 and %2 of %3 is %4 wide; over-cuts of about %5 from both "
                "sides leave %6",
                one, other, board, f.text(bar), f.text(thickness), f.text(bar - overcuts)),
          place);
  } else {
    f.add("check-bar-thin",
          f.say("the bar between %1 and %2 of %3 is %4 wide on board %5 thick; at least %6 is "
                "stiff enough",
                one, other, board, f.text(bar), f.text(thickness), f.text(stiff)),
          place);
  }
}

// A drawn outline may have bars within itself.
void check_strips(Findings& f, const MatLayer& layer, const Window& window) {
  if (!window.seen || window.shape.kind != ShapeKind::outline) return;
  const Length stiff = layer.board.thickness * stiff_bar_thicknesses;
  if (!has_narrow_board(window.back_edge, stiff)) return;
  f.add("check-bar-thin",
        f.say("strips of %1 narrower than %2 stand into %3, on board %4 thick", f.name(layer),
              f.text(stiff), f.name(window), f.text(layer.board.thickness)),
        f.place(window.openings.front()));
}

}  // namespace

void check_bars(Findings& f) {
  for (const MatLayer& layer : f.mat.layers) {
    for (const Window& window : layer.windows) check_strips(f, layer, window);
    for (std::size_t i = 0; i < layer.windows.size(); ++i) {
      for (std::size_t j = i + 1; j < layer.windows.size(); ++j) {
        check_pair(f, layer, layer.windows[i], layer.windows[j]);
      }
    }
  }
}

}  // namespace mullion
