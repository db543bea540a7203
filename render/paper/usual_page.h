#pragma once

// The office paper of a place: Letter (ANSI A, 8.5 x 11 in) or A4 (ISO 216), upright.

#include "engine/locale/locale.h"
#include "render/paper/document.h"

namespace mullion::paper {

inline constexpr PageSize letter_page{sixty_fourths(8 * 64 + 32), inches(11)};
inline constexpr PageSize a4_page{millimetres(210), millimetres(297)};

// As is usual in the locale's territory; without one, Letter for a scale in inches.
inline PageSize usual_page(Unit unit, const Locale& locale = {}) {
  return locale.letter_paper(unit) ? letter_page : a4_page;
}

}  // namespace mullion::paper
