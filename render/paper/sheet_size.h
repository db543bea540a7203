#pragma once

// The papers that a printer or plotter holds, by name, and the office paper of a place.
//
// ISO 216 gives A4 to A0; ANSI/ASME Y14.1 gives letter (ANSI A), tabloid (ANSI B) and ANSI C to E;
// legal is 8 1/2 x 14 in and rolls are 17, 24, 36 or 44 in wide by common practice.

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

const std::vector<SheetSize>& sheet_sizes();

// A name from the list, in either case, or a size such as "13 x 19 in", "329 x 483 mm" (in `unit`
// where none is named). The error is one sentence. Sheets are 3 in to 200 in a side.
tl::expected<SheetSize, std::string> parse_sheet_size(std::string_view text, Unit unit);

}  // namespace mullion::paper
