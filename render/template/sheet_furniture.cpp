#include "render/template/sheet_furniture.h"

#include <array>
#include <string>

#include "engine/length/format.h"

namespace mullion {
namespace {

using paper::Anchor;
using paper::Pen;
using paper::Spot;
using paper::TextStyle;

const Pen rule_pen{0.6, {0, 0, 0}, {}, 1};
const TextStyle small{7, false, {0x30, 0x30, 0x30}, Anchor::left, 0};

void draw_rule(paper::Canvas& canvas, Spot start, Length step, int steps, const char* label) {
  const double length = paper::points(step * steps);
  canvas.line(start, {start.x + length, start.y}, rule_pen);
  for (int i = 0; i <= steps; ++i) {
    const double x = start.x + paper::points(step * i);
    const double height = i == 0 || i == steps ? 9 : i * 2 == steps ? 7 : 4;
    canvas.line({x, start.y}, {x, start.y - height}, rule_pen);
  }
  canvas.text(label, {start.x + length + 5, start.y}, small);
}

}  // namespace

void draw_heading(paper::Canvas& canvas, const Job& job, const MatLayer& layer, int layers,
                  const paper::Box& box) {
  const std::string mirror = "BACK OF BOARD";
  const TextStyle large{17, true, {0, 0, 0}, Anchor::left, 0};
  canvas.text(mirror, {box.x, box.y + 16}, large);
  const double after = box.x + canvas.text_width(mirror, large) + 10;
  const TextStyle plain{8.5, false, {0, 0, 0}, Anchor::left, 0};
  const double rest = box.x + box.width - after;
  canvas.text(canvas.fitted("mirrored: the board lies face down", rest, plain), {after, box.y + 8},
              plain);
  canvas.text(canvas.fitted("print at 100 %, no scaling", rest, plain), {after, box.y + 18}, plain);

  const Scale& scale = job.scale;
  std::string line = "Layer " + std::to_string(layer.number) + " of " + std::to_string(layers);
  if (!layer.board.name.empty()) line += ": " + layer.board.name;
  line += "  \xC2\xB7  board " + layer.board.board;
  const TextStyle strong{10.5, true, {0, 0, 0}, Anchor::left, 0};
  canvas.text(canvas.fitted(line, box.width - 20, strong), {box.x + 18, box.y + 36}, strong);
  canvas.fill(paper::Box{box.x, box.y + 27, 12, 10}, {layer.board.colour, 1});
  canvas.rectangle({box.x, box.y + 27, 12, 10}, {0.4, {0, 0, 0}, {}, 1});

  std::string job_line = job.reference;
  if (!job.title.empty()) job_line += "  \xC2\xB7  " + job.title;
  if (!job.customer.empty()) job_line += "  \xC2\xB7  " + job.customer;
  job_line += "  \xC2\xB7  " + describe(layer.outer.width(), scale) + " x " +
              describe(layer.outer.height(), scale) + ", " +
              describe(layer.board.thickness, scale) + " thick";
  canvas.text(canvas.fitted(job_line, box.width, plain), {box.x, box.y + 50}, plain);
}

void draw_check_rules(paper::Canvas& canvas, Spot upper_left) {
  draw_rule(canvas, {upper_left.x, upper_left.y + 14}, sixty_fourths(16), 16, "4 in");
  draw_rule(canvas, {upper_left.x, upper_left.y + 38}, millimetres(5), 20, "100 mm");
  const double side = paper::points(inches(1));
  const double x = upper_left.x + paper::points(inches(4)) + 60;
  canvas.rectangle({x, upper_left.y, side, side}, rule_pen);
  canvas.line({x, upper_left.y + side}, {x + side, upper_left.y}, {0.3, {0, 0, 0}, {}, 1});
  canvas.text("1 in square:", {x + side + 6, upper_left.y + 12}, small);
  canvas.text("diagonal 1.414 in", {x + side + 6, upper_left.y + 22}, small);
  canvas.text("= 35.9 mm", {x + side + 6, upper_left.y + 32}, small);
  canvas.text("Measure both rules and the diagonal before you cut.",
              {upper_left.x, upper_left.y + 52}, small);
}

void draw_cautions(paper::Canvas& canvas, Spot upper_left, double width) {
  constexpr std::array<const char*, 4> lines{
      "Dimensions: above from the left edge, below from the right edge, left from the top edge, "
      "right "
      "from the bottom edge.",
      "Solid: cut line on the back. Dashed: where the bevel comes out on the face. Hatched: waste.",
      "Fresh blade, backing sheet under bevel cuts, cut away from your hands, test cut on scrap; "
      "follow the maker's instructions.",
      "Tape this sheet to the board's back only, never to a picture."};
  double y = upper_left.y + 8;
  for (const char* line : lines) {
    canvas.text(canvas.fitted(line, width, small), {upper_left.x, y}, small);
    y += 10;
  }
}

}  // namespace mullion
