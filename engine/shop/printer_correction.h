#pragma once

// What a printer makes of lengths, from a calibration page that was measured, and how to undo it.
//
// The page shows a rectangle of known sides. Its printed sides give the scale in each axis; its two
// diagonals give the skew: sides a, b at an angle t have diagonals with d1^2 - d2^2 = 4 a b cos t
// (law of cosines). Measured lengths are readings, not lengths that are cut; they need not be
// exact.

#include <string>
#include <tl/expected.hpp>

#include "engine/length/length.h"

namespace mullion {

struct CalibrationReading {
  Length across, down;     // sides of the rectangle as printed
  Length falling, rising;  // diagonals: upper left to lower right, lower left to upper right
};

struct Correction {
  double scale_x = 1, scale_y = 1;  // printed length over true length
  double skew = 0;                  // cosine of the angle between printed x and y axes
};

inline constexpr double largest_correction = 0.03;

// Refuses readings that are off by more than 3 %, or that contradict one another. The error is one
// sentence with advice.
tl::expected<Correction, std::string> correction_from(const CalibrationReading& nominal,
                                                      const CalibrationReading& measured);

// The reading of a perfect printer for a rectangle of these sides, to the nearest tick.
CalibrationReading nominal_reading(Length across, Length down);

}  // namespace mullion
