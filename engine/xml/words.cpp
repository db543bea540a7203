#include "engine/xml/words.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <numeric>

#include "engine/xml/limits.h"
#include "engine/xml/source_text.h"

namespace mullion {
namespace {

bool is_blank(char c) {
  return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

// XML 1.0 (fifth edition), production NameChar, without "." and ":".
bool is_name_character(char32_t c) {
  struct Span {
    char32_t first, last;
  };
  static constexpr std::array spans{
      Span{U'-', U'-'},     Span{U'0', U'9'},      Span{U'A', U'Z'},     Span{U'_', U'_'},
      Span{U'a', U'z'},     Span{0xB7, 0xB7},      Span{0xC0, 0xD6},     Span{0xD8, 0xF6},
      Span{0xF8, 0x37D},    Span{0x37F, 0x1FFF},   Span{0x200C, 0x200D}, Span{0x203F, 0x2040},
      Span{0x2070, 0x218F}, Span{0x2C00, 0x2FEF},  Span{0x3001, 0xD7FF}, Span{0xF900, 0xFDCF},
      Span{0xFDF0, 0xFFFD}, Span{0x10000, 0xEFFFF}};
  return std::any_of(spans.begin(), spans.end(),
                     [c](const Span& span) { return c >= span.first && c <= span.last; });
}

constexpr std::size_t most_digits = 6;

// Digits only, few enough for exact arithmetic afterwards.
std::optional<std::int64_t> whole_number(std::string_view text) {
  if (text.empty() || text.size() > most_digits || !std::all_of(text.begin(), text.end(), is_digit))
    return std::nullopt;
  std::int64_t value = 0;
  std::from_chars(text.data(), text.data() + text.size(), value);
  return value;
}

Fraction lowest_terms(Fraction f) {
  const std::int64_t divisor = std::gcd(f.numerator, f.denominator);
  return {f.numerator / divisor, f.denominator / divisor};
}

// Beyond that of a rule's marks a decimal is read more easily, where one says it exactly.
constexpr std::int64_t longest_readable_denominator = 64;

// With as few of `most_digits` decimals as say it exactly.
std::optional<std::string> decimal_text(const Fraction& f) {
  std::int64_t power = 1;
  for (std::size_t digits = 1; digits <= most_digits; ++digits) {
    power *= 10;
    if (power % f.denominator != 0) continue;
    const std::string decimals =
        std::to_string(f.numerator % f.denominator * (power / f.denominator));
    return std::to_string(f.numerator / f.denominator) + "." +
           std::string(digits - decimals.size(), '0') + decimals;
  }
  return std::nullopt;
}

std::optional<Fraction> decimal_fraction(std::string_view text) {
  const std::size_t point = text.find('.');
  const auto whole = whole_number(point == 0 ? "0" : text.substr(0, point));
  if (!whole || point == std::string_view::npos) {
    return whole ? std::optional(Fraction{*whole, 1}) : std::nullopt;
  }
  const std::string_view decimals = text.substr(point + 1);
  const auto part = whole_number(decimals);
  if (!part) return std::nullopt;
  std::int64_t power = 1;
  for (std::size_t i = 0; i < decimals.size(); ++i) power *= 10;
  return lowest_terms({*whole * power + *part, power});
}

}  // namespace

std::string tidy(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (!is_blank(c)) {
      out += c;
    } else if (!out.empty() && out.back() != ' ') {
      out += ' ';
    }
  }
  if (out.ends_with(' ')) out.pop_back();
  return out;
}

std::string tidy_lines(std::string_view text) {
  std::string out;
  std::size_t at = 0;
  while (at <= text.size()) {
    const std::size_t end = std::min(text.find_first_of("\r\n", at), text.size());
    if (at > 0) out += '\n';
    out += tidy(text.substr(at, end - at));
    at = end + (text.substr(end).starts_with("\r\n") ? 2 : 1);
  }
  const std::size_t first = out.find_first_not_of('\n');
  if (first == std::string::npos) return {};
  return out.substr(first, out.find_last_not_of('\n') + 1 - first);
}

bool begins_with_letter(std::string_view text) {
  const char c = text.empty() ? '\0' : text.front();
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

bool is_name(std::string_view text) {
  if (text.empty()) return false;
  while (!text.empty()) {
    const auto c = first_code_point(text);
    if (!c || !is_name_character(c->value)) return false;
    text.remove_prefix(c->bytes);
  }
  return true;
}

std::string name_from(std::string_view text) {
  constexpr std::size_t most = longest_id - 8;
  std::string name;
  std::size_t characters = 0;
  for (std::size_t at = 0; at < text.size() && characters < most; ++characters) {
    std::size_t end = at + 1;
    while (end < text.size() && (static_cast<unsigned char>(text[end]) & 0xC0) == 0x80) ++end;
    const std::string_view character = text.substr(at, end - at);
    if (is_name(character)) {
      name += character;
    } else if (!name.empty() && name.back() != '-') {
      name += '-';
    }
    at = end;
  }
  while (!name.empty() && name.back() == '-') name.pop_back();
  return name;
}

std::string path_fault(std::string_view path) {
  const auto is_control = [](char c) { return static_cast<unsigned char>(c) < 0x20; };
  if (path.empty() || std::any_of(path.begin(), path.end(), is_control)) {
    return "expected the name of a file";
  }
  if (path.find('\\') != std::string_view::npos) return "expected / between folders";
  if (path.front() == '/' || path.find(':') != std::string_view::npos) {
    return "expected a path that begins in the job file's folder";
  }
  std::size_t at = 0;
  while (at <= path.size()) {
    const std::size_t end = std::min(path.find('/', at), path.size());
    const std::string_view part = path.substr(at, end - at);
    if (part == "..") return "expected a path that stays in the job file's folder";
    if (part.empty() || part == ".") return "expected a path of plain names with / between them";
    at = end + 1;
  }
  return {};
}

const char* word_for(Unit unit) {
  switch (unit) {
    case Unit::inch:
      return "in";
    case Unit::millimetre:
      return "mm";
    case Unit::centimetre:
      return "cm";
  }
  return "in";
}

bool is_date(std::string_view text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return false;
  const auto year = whole_number(text.substr(0, 4));
  const auto month = whole_number(text.substr(5, 2));
  const auto day = whole_number(text.substr(8, 2));
  if (!year || !month || !day || *year == 0 || *month < 1 || *month > 12) return false;
  const bool leap = (*year % 4 == 0 && *year % 100 != 0) || *year % 400 == 0;
  const std::array<int, 12> days{31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  return *day >= 1 && *day <= days[static_cast<std::size_t>(*month - 1)];
}

std::optional<Fraction> parse_fraction(std::string_view text) {
  const std::size_t slash = text.find('/');
  if (slash == std::string_view::npos) return decimal_fraction(text);
  const std::size_t blank = std::min(text.find(' '), slash);
  const auto whole = blank < slash ? whole_number(text.substr(0, blank)) : 0;
  const std::size_t begin = blank < slash ? blank + 1 : 0;
  const auto numerator = whole_number(text.substr(begin, slash - begin));
  const auto denominator = whole_number(text.substr(slash + 1));
  if (!whole || !numerator || !denominator || *denominator == 0) return std::nullopt;
  return lowest_terms({*whole * *denominator + *numerator, *denominator});
}

std::string format_fraction(const Fraction& fraction) {
  const Fraction f = lowest_terms(fraction);
  if (f.denominator == 1) return std::to_string(f.numerator);
  if (f.denominator > longest_readable_denominator) {
    if (const auto decimal = decimal_text(f)) return *decimal;
  }
  return std::to_string(f.numerator) + "/" + std::to_string(f.denominator);
}

std::optional<double> parse_decimal(std::string_view text) {
  constexpr std::size_t longest = 20;
  if (text.starts_with('+')) text.remove_prefix(1);
  if (text.size() > longest || text.find_first_not_of("-.0123456789") != std::string_view::npos) {
    return std::nullopt;
  }
  double value = 0;
  const char* const end = text.data() + text.size();
  const auto [stopped, error] = std::from_chars(text.data(), end, value, std::chars_format::fixed);
  if (error != std::errc() || stopped != end) return std::nullopt;
  return value == 0 ? 0.0 : value;  // no negative zero
}

std::string format_decimal(double value) {
  char text[400];  // the longest double has 309 digits before the point
  const auto [end, error] =
      std::to_chars(text, text + sizeof text, value, std::chars_format::fixed);
  return error == std::errc() ? std::string(text, end) : "0";
}

}  // namespace mullion
