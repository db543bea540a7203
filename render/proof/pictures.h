#pragma once

// The row or rows of choices on a proof, each before its wall, and how they share the page.

#include "render/proof/sheet.h"

namespace mullion::proof {

inline constexpr double margin = 40, block_gap = 16;
// Heights of a wall, of one row of choices and of two: what is wanted, and what is put up with
// where it saves a page.
inline constexpr double least_wall = 260, least_row = 190, smallest_wall = 215, smallest_row = 165;

struct Grid {
  std::size_t columns, rows;
};
Grid grid_for(std::size_t choices);

// The height of the cards of each row of choices; empty for a single choice.
std::vector<double> card_heights(const Sheet& sheet, double width);

// One scale for all choices, no larger than life, in rows of that height.
double scale_of_rows(const Sheet& sheet, double width, double row_height);

// The row's walls side by side in the box, with their pieces at that scale; after the last
// choice's, a measure to compare them by.
Result<void> draw_row(paper::Drawing& page, paper::Format format, const Sheet& sheet,
                      std::size_t row, double scale, const paper::Box& box);

// The row's cards from the corner down. Returns the height of the tallest.
double draw_cards(paper::Drawing& page, const Sheet& sheet, std::size_t row, paper::Spot corner,
                  double width);

}  // namespace mullion::proof
