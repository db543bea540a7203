#pragma once

// The page with which a printer is measured: a rectangle of known sides and diagonals, its corners
// marked A to D, rules along its sides, and what to do with the readings.

#include <string>

#include "engine/locale/locale.h"
#include "engine/shop/printer_profile.h"
#include "render/paper/sheet_size.h"

namespace mullion {

// The paper that is meant where none is named: Letter for inches, A4 for metric units.
paper::SheetSize calibration_paper(Unit unit);

// A PDF of one page of that paper; of a roll a page as long as it is wide. The error is one
// sentence: the paper is too small.
tl::expected<std::string, std::string> render_calibration(const paper::SheetSize& paper, Unit unit,
                                                          const Locale& locale = {});

// The sides of the rectangle on it.
CalibrationSides calibration_sides(const paper::SheetSize& paper, Unit unit);

}  // namespace mullion
