#pragma once

// The page with which a printer is measured: a rectangle of known sides and diagonals, its corners
// marked A to D, rules along its sides, and what to do with the readings.

#include <string>

#include "engine/locale/locale.h"
#include "engine/shop/printer_profile.h"
#include "render/paper/sheet_size.h"

namespace mullion {

// A PDF of one page, Letter for inches and A4 for metric units.
std::string render_calibration(Unit unit, const Locale& locale = {});

}  // namespace mullion
