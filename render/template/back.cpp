#include "render/template/back.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "render/paper/inline_svg.h"

namespace mullion {
namespace {

constexpr double longest_drawn = 680;  // points: letters keep their size
constexpr double beside = 6;           // points

std::string number_text(double value) {
  char text[32];
  std::snprintf(text, sizeof text, "%.4f", value);
  return text;
}

Length length_of(double points) {
  return Length::from_ticks(std::llround(points * static_cast<double>(ticks_per_inch) / 72));
}

}  // namespace

std::string back_svg(const Job& job, const Mat& mat, int layer, const Locale& locale) {
  const Length longest = std::max(mat.outer.width(), mat.outer.height());
  const double scale = std::min(1.0, longest_drawn / to_points(longest));
  BoardView view{&job, &mat, {&mat.layers.at(static_cast<std::size_t>(layer - 1))}, scale, locale};
  paper::Drawing drawing;
  drawing.place(draw_board(view)).place(draw_board_dimensions(view));
  const paper::Box seen = paper::grown(bounds_of(drawing), beside);
  paper::Drawing placed;
  placed.place(std::move(drawing), paper::shifted(-seen.x, -seen.y));
  const std::string elements = paper::inline_elements(
      write_svg(placed, {length_of(seen.width), length_of(seen.height)}, ""), "m-");
  const double mm = 25.4 / 72 / scale;
  const std::string left = number_text(seen.x * mm), top = number_text(seen.y * mm);
  return "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"" + left + " " + top + " " +
         number_text(seen.width * mm) + " " + number_text(seen.height * mm) +
         "\">\n<g transform=\"translate(" + left + " " + top + ") scale(" + number_text(1 / scale) +
         ")\">" + elements + "</g></svg>\n";
}

}  // namespace mullion
