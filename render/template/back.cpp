#include "render/template/back.h"

#include <algorithm>
#include <cstdio>

#include "render/paper/document.h"

namespace mullion {
namespace {

constexpr double longest_drawn = 680;  // points: letters keep their size
constexpr double beside = 6;           // points

std::string number_text(double value) {
  char text[32];
  std::snprintf(text, sizeof text, "%.4f", value);
  return text;
}

}  // namespace

std::string back_svg(const Job& job, const Cuts& cuts, int layer, const Locale& locale) {
  const Rect& outer = cuts.mat->outer;
  const Length longest = std::max(outer.width(), outer.height());
  const double scale = std::min(1.0, longest_drawn / to_points(longest));
  BoardView view{
      &job, &cuts, {&cuts.layers.at(static_cast<std::size_t>(layer - 1))}, scale, locale};
  paper::Drawing drawing;
  drawing.place(draw_board(view)).place(draw_board_dimensions(view));
  const paper::Box seen = paper::grown(bounds_of(drawing), beside);
  const double mm = 25.4 / 72 / scale;
  return "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"" + number_text(seen.x * mm) + " " +
         number_text(seen.y * mm) + " " + number_text(seen.width * mm) + " " +
         number_text(seen.height * mm) + "\">\n<g transform=\"scale(" + std::to_string(mm) +
         ")\">" + paper::svg_elements(drawing, "m-") + "</g></svg>\n";
}

}  // namespace mullion
