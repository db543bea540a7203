#pragma once

// What template pages carry besides the board: heading, check rules, sheet map, cautions.

#include <memory>
#include <string>
#include <vector>

#include "render/paper/tiling.h"
#include "render/template/board_drawing.h"

namespace mullion {

inline const std::string middle_dot = "  \xC2\xB7  ";  // between the parts of a line

void draw_heading(paper::Drawing& drawing, const BoardView& view, const paper::Box& box);

// A 4 in rule, a 100 mm rule, and a square of 1 in, whose diagonal is 1.414 in (35.9 mm).
void draw_check_rules(paper::Drawing& drawing, paper::Spot upper_left, const Locale& locale);

// What the lines mean, and the cautions: four lines, five where there are V-grooves.
void draw_cautions(paper::Drawing& drawing, paper::Spot upper_left, double width,
                   const BoardView& view);

// Lines of one pen, and the texts beside them.
struct Furniture {
  paper::Path lines;
  paper::Drawing texts;
};
extern const paper::Pen furniture_pen;

// One line with both scales from the same zero: 4 in below, 100 mm above; half of each where the
// width is too small. Returns its width.
double add_double_rule(Furniture& furniture, paper::Spot upper_left, double width,
                       const Locale& locale);

// A square whose diagonals are 20 mm, and says so. Returns its width.
double add_diagonal_square(Furniture& furniture, paper::Spot upper_left, const Locale& locale);

// The sheets as a grid at the right of the box, one of them filled, and its name in large letters
// before the grid where there is room.
class SheetMap {
 public:
  SheetMap(const paper::Tiling& tiling, const paper::Box& box);
  void draw(paper::Drawing& drawing, std::size_t row, std::size_t column) const;

 private:
  std::vector<double> x_, y_;  // of the grid's lines
  std::shared_ptr<const paper::Drawing> grid_;
  bool named_ = false;
};

// "Chalk" of the job's "W-0106": reference, layers and boards in one line.
std::string sheet_subject(const BoardView& view);

}  // namespace mullion
