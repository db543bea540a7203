#include "engine/cuts/sheet/scale_text.h"

namespace mullion {
namespace {

std::string signed_remainder(Length remainder, const Locale& locale) {
  const bool below = remainder < Length();
  const Length size = below ? -remainder : remainder;
  const Length shown = round_to_multiple(size, Length::from_ticks(ticks_per_mm / 100));
  if (shown == Length()) return "";
  return (below ? "- " : "+ ") + locale.exact_length(shown, Unit::millimetre);
}

}  // namespace

ScaleText scale_text(Length true_distance, Length zero, const Scale& scale, const Locale& locale) {
  const Length shown = true_distance + zero;
  const Length remainder = format_length(shown, scale).remainder;
  return {locale.length(shown, scale), signed_remainder(remainder, locale), remainder};
}

std::string scale_number(Length true_distance, Length zero, const Scale& scale) {
  const LengthText text = format_number(true_distance + zero, scale);
  const std::string remainder = signed_remainder(text.remainder, {});
  return remainder.empty() ? text.text : text.text + " " + remainder;
}

std::string amount_text(Length amount, const Scale& scale, const Locale& locale) {
  return scale_text(amount < Length() ? -amount : amount, Length(), scale, locale).all();
}

}  // namespace mullion
