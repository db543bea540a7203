#pragma once

// The lines of a layer, looked for on a page.

#include "engine/cuts/cuts.h"
#include "tests/oracle/drawn_page.h"

namespace made {

inline constexpr double hundredth_mm = 0.01 / 25.4 * 72;  // in points of 1/72 in

// The board on a page, seen from behind: x counts from the edge that is the right one to the eye
// that sees it from the front.
class BoardBehind {
 public:
  // Finds the layer's outer edge on the page; throws std::runtime_error where it is not there.
  BoardBehind(const oracle::DrawnPage& page, const mullion::BoardCuts& layer);

  oracle::Spot place(double x_ticks, double y_ticks) const;
  oracle::Spot place(mullion::Length x, mullion::Length y) const;

 private:
  double right_ = 0;
  oracle::Spot corner_;
};

// Whether the four cuts along the rectangle's sides are there, each running past its corners.
bool shows_straight_cuts(const oracle::DrawnPage& page, const BoardBehind& board,
                         const mullion::Rect& rect, mullion::Length over_cut);

// The greatest distance of a point of the outline from the ink, in points.
double straying(const oracle::NearestInk& ink, const BoardBehind& board,
                const mullion::Outline& outline);

// What of the layer is not on the page within 0.01 mm, a line each; empty where all is there.
std::string missing_lines(const oracle::DrawnPage& page, const mullion::BoardCuts& layer);

}  // namespace made
