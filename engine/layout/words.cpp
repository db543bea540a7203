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

std::string length_text(Length length, const Scale& scale) {
  const LengthText on_step = format_length(length, scale);
  if (on_step.exact) return on_step.text;
  const std::string exact = format_exact(length, scale.unit);
  const std::size_t slash = exact.find('/');
  const bool is_readable = slash == std::string::npos || std::stoi(exact.substr(slash + 1)) <= 64;
  return is_readable ? exact : "about " + on_step.text;
}

std::string number_text(Length length, const Scale& scale) {
  const std::string text = length_text(length, scale);
  return text.substr(0, text.rfind(' '));
}

std::string fine_text(Length length, Unit unit) {
  const Length finest =
      unit == Unit::inch ? sixty_fourths(1) : Length::from_ticks(ticks_per_mm / 100);
  if (length > Length() && length < finest) return "less than " + format_exact(finest, unit);
  return describe(length, {unit, finest});
}

std::string ticks_text(const solver::Rational& ticks, const Scale& scale) {
  const bool whole = ticks.is_integer();
  const std::string text = length_text(Length::from_ticks(ticks.floor().to_int64()), scale);
  return whole || text.starts_with("about") ? text : "about " + text;
}

}  // namespace mullion::layout
