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

// A slip of the hand shows as a print that is out of square by more than this, which hardly any
// printer is (our own figure): it is believed only where two readings say so.
inline constexpr double plausible_skew = 0.002;

// Refuses readings that are off by more than 3 %, or that contradict one another. The error is one
// sentence with advice.
tl::expected<Correction, std::string> correction_from(const CalibrationReading& nominal,
                                                      const CalibrationReading& measured);

// The mean of two readings of the same lengths, which differ by no more than 1/64 in or 1/2000,
// whichever is more. The error is one sentence: which of them differ.
tl::expected<CalibrationReading, std::string> mean_of(const CalibrationReading& first,
                                                      const CalibrationReading& second);

// What is left to undo after `used` was undone, and `left` was found on what was printed so: both
// together. `turned`: what was measured came from sheets that lay across, on which the printer's
// axes are exchanged.
Correction together(const Correction& used, const Correction& left, bool turned);

// "across 0.29 % too long, down 0.22 % too short, out of square by 0.05 %".
std::string words_for(const Correction& correction);

// The reading of a perfect printer for a rectangle of these sides, to the nearest tick.
CalibrationReading nominal_reading(Length across, Length down);

}  // namespace mullion
