#pragma once

// The papers that a printer or plotter holds, by name, and the office paper of a place.
//
// ISO 216 gives A4 to A0 and B4 to B1; ANSI/ASME Y14.1 gives letter (ANSI A), tabloid (ANSI B),
// ANSI C to E and the architectural sizes; legal is 8 1/2 x 14 in and rolls are 17, 24, 36 or 44 in
// wide by common practice.

#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <vector>

#include "engine/length/format.h"
#include "engine/locale/locale.h"

namespace mullion::paper {

struct PageSize {
  Length width, height;
};

inline constexpr PageSize letter_page{sixty_fourths(8 * 64 + 32), inches(11)};  // ANSI A
inline constexpr PageSize a4_page{millimetres(210), millimetres(297)};          // ISO 216

// As is usual in the locale's territory; without one, Letter for a scale in inches.
inline PageSize usual_page(Unit unit, const Locale& locale = {}) {
  return locale.letter_paper(unit) ? letter_page : a4_page;
}

struct SheetSize {
  std::string name;
  Length width, height;  // upright; a roll's height is the longest page that is asked of it
  bool roll = false;
};

// The whole sheet; of a roll, a page as long as it is wide.
inline PageSize whole_page(const SheetSize& sheet) {
  return {sheet.width, sheet.roll ? sheet.width : sheet.height};
}

const std::vector<SheetSize>& sheet_sizes();

// The self-describing name of the paper that a page of this size, upright or across, is printed on
// (PWG 5101.1): "na_letter_8.5x11in", "iso_a4_210x297mm", "custom_13x19in_13x19in".
std::string media_name(const PageSize& page);

// A name from the list, in either case; a size such as "13 x 19 in", "329 x 483 mm"; or the width
// of a roll with its unit, such as "30in" or "610 mm". A size without a unit is in `unit`; where
// that makes no sheet, in the unit in which it is a paper of the list, else in the one in which it
// is a sheet at all. The error is one sentence. Sheets are 3 in to 200 in a side, rolls 8 in to 72
// in wide.
tl::expected<SheetSize, std::string> parse_sheet_size(std::string_view text, Unit unit);

}  // namespace mullion::paper
