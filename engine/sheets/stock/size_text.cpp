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

std::string size_text(Length length, const Scale& scale) {
  const Scale other = other_system(scale);
  return describe(length, exact(length, scale) || !exact(length, other) ? scale : other);
}

std::string size_text(Length width, Length height, const Scale& scale) {
  const Scale other = other_system(scale);
  for (const Scale& candidate : {scale, other}) {
    if (exact(width, candidate) && exact(height, candidate)) {
      return format_number(width, candidate).text + " x " + describe(height, candidate);
    }
  }
  return size_text(width, scale) + " x " + size_text(height, scale);
}

}  // namespace mullion
