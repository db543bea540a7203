#include "engine/cuts/sheet/scale_text.h"

#include "engine/cuts/plan/settings.h"

namespace mullion {

ScaleText scale_text(Length true_distance, Length zero, const Scale& scale, const Locale& locale) {
  const Length shown = shown_on(scale, true_distance, zero);
  return {locale.length(shown, {scale.unit, setting_step(scale)}), shown - (true_distance + zero)};
}

std::string rule_text(Length length, const Scale& scale, const Locale& locale) {
  return scale_text(length, Length(), scale, locale).shows;
}

std::string amount_text(Length amount, const Scale& scale, const Locale& locale) {
  return rule_text(amount < Length() ? -amount : amount, scale, locale);
}

}  // namespace mullion
