#include "engine/cutting/sheet/scale_text.h"

namespace mullion {
namespace {

std::string signed_remainder(Length remainder) {
  const bool below = remainder < Length();
  const Length size = below ? -remainder : remainder;
  const Length shown = round_to_multiple(size, Length::from_ticks(ticks_per_mm / 100));
  if (shown == Length()) return "";
  return (below ? "- " : "+ ") + format_exact(shown, Unit::millimetre);
}

ScaleText text_of(const LengthText& text) {
  return {text.text, signed_remainder(text.remainder), text.remainder};
}

}  // namespace

ScaleText scale_text(Length true_distance, Length zero, const Scale& scale) {
  return text_of(format_length(true_distance + zero, scale));
}

std::string scale_number(Length true_distance, Length zero, const Scale& scale) {
  return text_of(format_number(true_distance + zero, scale)).all();
}

std::string amount_text(Length amount, const Scale& scale) {
  return scale_text(amount < Length() ? -amount : amount, Length(), scale).all();
}

}  // namespace mullion
