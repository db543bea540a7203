#include "engine/layout/words.h"

#include <array>

namespace mullion::layout {

std::string joined(const std::vector<std::string>& items, const std::string& last) {
  std::string out;
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (i > 0) out += i + 1 == items.size() ? last : ", ";
    out += items[i];
  }
  return out;
}

std::string counted(int count, const std::string& singular, const std::string& plural) {
  constexpr std::array<const char*, 13> words{"no",   "a",      "two",   "three", "four",
                                              "five", "six",    "seven", "eight", "nine",
                                              "ten",  "eleven", "twelve"};
  if (count == 1) {
    const bool vowel = std::string("aeiou").find(singular.front()) != std::string::npos;
    return (vowel ? "an " : "a ") + singular;
  }
  const std::string number = count >= 0 && count < static_cast<int>(words.size())
                                 ? words[static_cast<std::size_t>(count)]
                                 : std::to_string(count);
  return number + " " + plural;
}

std::string number_text(Length length, const Scale& scale) {
  const LengthText out = format_number(length, scale);
  return out.exact ? out.text : "about " + out.text;
}

std::string fine_text(Length length, Unit unit) {
  const Length finest =
      unit == Unit::inch ? sixty_fourths(1) : Length::from_ticks(ticks_per_mm / 100);
  if (length > Length() && length < finest) return "less than " + format_exact(finest, unit);
  return describe(length, {unit, finest});
}

std::string ticks_text(const solver::Rational& ticks, const Scale& scale) {
  const bool whole = ticks.is_integer();
  const std::int64_t rounded = whole ? ticks.to_int64() : ticks.floor().to_int64();
  const std::string text = describe(Length::from_ticks(rounded), scale);
  return whole || text.starts_with("about") ? text : "about " + text;
}

}  // namespace mullion::layout
