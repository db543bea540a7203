#include "engine/sheets/stock/size_text.h"

namespace mullion {
namespace {

Scale other_system(const Scale& scale) {
  if (scale.unit == Unit::inch) return {Unit::millimetre, Length::from_ticks(ticks_per_mm / 2)};
  return {Unit::inch, sixty_fourths(4)};
}

bool exact(Length length, const Scale& scale) {
  return format_length(length, scale).exact;
}

}  // namespace

std::string size_text(Length length, const Scale& scale, const Locale& locale) {
  const Scale other = other_system(scale);
  return locale.described(length, exact(length, scale) || !exact(length, other) ? scale : other);
}

std::string size_text(Length width, Length height, const Scale& scale, const Locale& locale) {
  const Scale other = other_system(scale);
  for (const Scale& candidate : {scale, other}) {
    if (exact(width, candidate) && exact(height, candidate)) {
      return locale.say("%1 x %2", locale.length_number(width, candidate),
                        locale.length(height, candidate));
    }
  }
  return locale.say("%1 x %2", size_text(width, scale, locale), size_text(height, scale, locale));
}

}  // namespace mullion
