#include "engine/locale/locale.h"

#include <algorithm>
#include <array>

namespace mullion {
namespace {

bool is_word(std::string_view text, std::size_t length, char first, char last) {
  return text.size() == length &&
         std::all_of(text.begin(), text.end(), [&](char c) { return c >= first && c <= last; });
}

std::string with_commas(const std::vector<std::string>& items, std::size_t count) {
  std::string out;
  for (std::size_t i = 0; i < count; ++i) out += (i == 0 ? "" : ", ") + items[i];
  return out;
}

}  // namespace

std::optional<Locale> Locale::find(std::string_view name) {
  name = name.substr(0, name.find_first_of(".@"));
  Locale out;
  if (name == "C" || name == "POSIX") return out;
  const std::size_t end = name.find_first_of("_-");
  out.language_ = name.substr(0, end);
  if (end != std::string_view::npos) {
    if (!is_word(name.substr(end + 1), 2, 'A', 'Z')) return std::nullopt;
    out.territory_ = name.substr(end + 1);
  }
  if (out.language_ == "en") return out;
  for (const Translation& translation : translations()) {
    if (out.language_ != translation.language) continue;
    out.catalogue_ = Catalogue(translation.mo_file);
    return out;
  }
  return std::nullopt;
}

std::vector<std::string_view> Locale::languages() {
  std::vector<std::string_view> out{"en"};
  for (const Translation& translation : translations()) out.push_back(translation.language);
  std::sort(out.begin(), out.end());
  return out;
}

std::string Locale::tag() const {
  return territory_.empty() ? language_ : language_ + "-" + territory_;
}

std::string Locale::number(std::string text) const {
  if (writes_decimal_point(language_, territory_)) return text;
  const std::string mark_here = say_in("decimal mark", ".");
  const std::size_t point = text.find('.');
  if (point != std::string::npos) text.replace(point, 1, mark_here);
  return text;
}

std::string Locale::unit(Unit unit) const {
  switch (unit) {
    case Unit::inch:
      return say_in("unit", "in");
    case Unit::millimetre:
      return say_in("unit", "mm");
    case Unit::centimetre:
      return say_in("unit", "cm");
  }
  return {};
}

std::string Locale::length_number(Length length, const Scale& scale) const {
  return number(format_number(length, scale).text);
}

std::string Locale::length(Length length, const Scale& scale) const {
  return length_number(length, scale) + " " + unit(scale.unit);
}

std::string Locale::described_number(Length length, const Scale& scale) const {
  const LengthText out = format_readable(length, scale);
  return out.exact ? number(out.text) : say("about %1", number(out.text));
}

std::string Locale::described(Length length, const Scale& scale) const {
  return described_number(length, scale) + " " + unit(scale.unit);
}

std::string Locale::measured(Length length, Unit in) const {
  return number(measured_number(length, in)) + " " + unit(in);
}

std::string Locale::described_fine(Length length, Unit unit) const {
  const Length finest = finest_mark(unit);
  if (length > Length() && length < finest) return say("less than %1", exact_length(finest, unit));
  return described(length, {unit, finest});
}

std::string Locale::all_of(const std::vector<std::string>& items) const {
  if (items.size() < 2) return with_commas(items, items.size());
  return say("%1 and %2", with_commas(items, items.size() - 1), items.back());
}

std::string Locale::one_of(const std::vector<std::string>& items) const {
  if (items.size() < 2) return with_commas(items, items.size());
  return say("%1 or %2", with_commas(items, items.size() - 1), items.back());
}

std::string Locale::exact_length(Length length, Unit in) const {
  return number(exact_number(length, in)) + " " + unit(in);
}

std::string Locale::size(Length width, Length height, const Scale& scale) const {
  const LengthText w = format_readable(width, scale), h = format_readable(height, scale);
  const std::string out = number(w.text) + " \xC3\x97 " + number(h.text) + " " + unit(scale.unit);
  return w.exact && h.exact ? out : say("about %1", out);
}

std::string Locale::rounded_size(Length width, Length height, const Scale& scale) const {
  return length_number(width, scale) + " \xC3\x97 " + length(height, scale);
}

Measure Locale::measure() const {
  if (!territory_.empty()) return measure_in(territory_);
  return language_ == "en" ? Measure::unstated : Measure::metric;
}

Scale Locale::first_scale(const Scale& own) const {
  const Measure here = measure(), of_job = measure_of(own.unit);
  return here == Measure::unstated || here == of_job ? own : usual_scale(here);
}

bool Locale::letter_paper(Unit own) const {
  if (!territory_.empty()) return uses_letter_paper(territory_);
  return language_ == "en" && own == Unit::inch;
}

std::string Locale::number_word(int n) const {
  constexpr int first = 2;
  constexpr std::array<const char*, 11> words{
      mark("two"),   mark("three"), mark("four"), mark("five"),   mark("six"),   mark("seven"),
      mark("eight"), mark("nine"),  mark("ten"),  mark("eleven"), mark("twelve")};
  const bool has_word = n >= first && n < first + static_cast<int>(words.size());
  return has_word ? say(words[static_cast<std::size_t>(n - first)]) : std::to_string(n);
}

std::string_view Locale::translated(const char* message, std::string_view context) const {
  return catalogue_.find(message, context).value_or(message);
}

std::string_view Locale::plural_form(std::int64_t n, const char* one, const char* several) const {
  return catalogue_.find_plural(one, n).value_or(n == 1 ? one : several);
}

std::string Locale::filled(std::string_view message, const std::vector<Argument>& arguments) {
  std::string out;
  for (std::size_t i = 0; i < message.size(); ++i) {
    const char digit = i + 1 < message.size() ? message[i + 1] : '\0';
    const bool is_place = message[i] == '%' && digit >= '1' && digit <= '9';
    const auto index = static_cast<std::size_t>(digit - '1');
    if (is_place && index < arguments.size()) {
      out += arguments[index].text();
      ++i;
    } else {
      out += message[i];
    }
  }
  return out;
}

}  // namespace mullion
