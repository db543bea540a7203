#include "engine/length/format.h"

#include <algorithm>
#include <cctype>
#include <numeric>
#include <optional>

namespace mullion {
namespace {

__extension__ using Wide = __int128;

std::int64_t ticks_per(Unit unit) {
  switch (unit) {
    case Unit::inch:
      return ticks_per_inch;
    case Unit::millimetre:
      return ticks_per_mm;
    case Unit::centimetre:
      return 10 * ticks_per_mm;
  }
  return ticks_per_inch;
}

const char* suffix(Unit unit) {
  switch (unit) {
    case Unit::inch:
      return " in";
    case Unit::millimetre:
      return " mm";
    case Unit::centimetre:
      return " cm";
  }
  return "";
}

// A non-negative exact number with numerator and denominator small enough to multiply safely.
struct Number {
  std::int64_t numerator = 0;
  std::int64_t denominator = 1;
};

class Reader {
 public:
  explicit Reader(std::string_view text) : text_(text) {}

  bool at_end() const { return position_ == text_.size(); }
  char peek() const { return at_end() ? '\0' : text_[position_]; }
  bool at_digit() const { return peek() >= '0' && peek() <= '9'; }
  std::string_view rest() const { return text_.substr(position_); }

  bool take(char c) {
    if (peek() != c) return false;
    ++position_;
    return true;
  }
  bool skip_blanks() {
    const std::size_t before = position_;
    while (peek() == ' ' || peek() == '\t' || peek() == '\n' || peek() == '\r') ++position_;
    return position_ != before;
  }

  // Up to `limit` digits; nothing where there are none or too many.
  std::optional<std::int64_t> digits(std::size_t limit, std::size_t* count = nullptr) {
    std::int64_t value = 0;
    std::size_t n = 0;
    while (at_digit()) {
      if (++n > limit) return std::nullopt;
      value = value * 10 + (peek() - '0');
      ++position_;
    }
    if (count != nullptr) *count = n;
    if (n == 0) return std::nullopt;
    return value;
  }

  std::size_t position() const { return position_; }
  void back_to(std::size_t position) { position_ = position; }

 private:
  std::string_view text_;
  std::size_t position_ = 0;
};

constexpr std::size_t most_whole_digits = 9;
constexpr std::size_t most_decimals = 8;

std::optional<Number> read_fraction(Reader& in) {
  const std::size_t start = in.position();
  const auto numerator = in.digits(most_whole_digits);
  if (numerator) {
    in.skip_blanks();
    if (in.take('/')) {
      in.skip_blanks();
      const auto denominator = in.digits(most_whole_digits);
      if (denominator && *denominator > 0) return Number{*numerator, *denominator};
    }
  }
  in.back_to(start);
  return std::nullopt;
}

std::optional<Number> read_decimals(Reader& in) {
  if (!in.take('.')) return std::nullopt;
  std::size_t count = 0;
  const auto value = in.digits(most_decimals, &count);
  if (!value) return std::nullopt;
  Number out{*value, 1};
  for (std::size_t i = 0; i < count; ++i) out.denominator *= 10;
  return out;
}

// whole + part, with `whole` at most nine digits.
Number plus(std::int64_t whole, Number part) {
  return {whole * part.denominator + part.numerator, part.denominator};
}

std::optional<Number> read_number(Reader& in) {
  if (const auto fraction = read_fraction(in)) return fraction;
  if (in.peek() == '.') return read_decimals(in);
  const auto whole = in.digits(most_whole_digits);
  if (!whole) return std::nullopt;
  if (in.peek() == '.') {
    const auto decimals = read_decimals(in);
    if (!decimals) return std::nullopt;
    return plus(*whole, *decimals);
  }
  const std::size_t after_whole = in.position();
  bool separated = in.skip_blanks();
  if (in.peek() == '-' || in.peek() == '+') {
    in.take(in.peek());
    in.skip_blanks();
    separated = true;
  }
  if (separated && in.at_digit()) {
    const auto fraction = read_fraction(in);
    if (!fraction) return std::nullopt;
    return plus(*whole, *fraction);
  }
  in.back_to(after_whole);
  return Number{*whole, 1};
}

std::optional<Unit> read_unit(Reader& in, Unit fallback) {
  in.skip_blanks();
  std::string word;
  for (char c : in.rest()) word += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  while (!word.empty() && (word.back() == ' ' || word.back() == '\n' || word.back() == '\t')) {
    word.pop_back();
  }
  if (word.empty()) return fallback;
  for (const char* name :
       {"in", "in.", "inch", "inches", "\"", "''", "\xE2\x80\xB3", "\xE2\x80\x9D"}) {
    if (word == name) return Unit::inch;
  }
  for (const char* name : {"mm", "millimetre", "millimetres", "millimeter", "millimeters"}) {
    if (word == name) return Unit::millimetre;
  }
  for (const char* name : {"cm", "centimetre", "centimetres", "centimeter", "centimeters"}) {
    if (word == name) return Unit::centimetre;
  }
  return std::nullopt;
}

std::string quoted(std::string_view text) {
  return "\"" + std::string(text) + "\"";
}

std::string mixed_fraction(std::int64_t numerator, std::int64_t denominator) {
  const std::int64_t whole = numerator / denominator;
  std::int64_t rest = numerator % denominator;
  if (rest == 0) return std::to_string(whole);
  const std::int64_t divisor = std::gcd(rest, denominator);
  const std::string fraction =
      std::to_string(rest / divisor) + "/" + std::to_string(denominator / divisor);
  return whole == 0 ? fraction : std::to_string(whole) + " " + fraction;
}

// numerator / denominator as a decimal, when it ends within `most_decimals`.
std::optional<std::string> decimal(std::int64_t numerator, std::int64_t denominator) {
  std::string out = std::to_string(numerator / denominator);
  std::int64_t rest = numerator % denominator;
  if (rest == 0) return out;
  out += '.';
  for (std::size_t i = 0; i < most_decimals && rest != 0; ++i) {
    rest *= 10;
    out += static_cast<char>('0' + rest / denominator);
    rest %= denominator;
  }
  if (rest != 0) return std::nullopt;
  return out;
}

std::string exact_magnitude(std::int64_t ticks, Unit unit) {
  const std::int64_t per = ticks_per(unit);
  if (unit == Unit::inch && ticks % (per / 64) == 0) return mixed_fraction(ticks, per);
  if (const auto text = decimal(ticks, per)) return *text;
  return mixed_fraction(ticks, per);
}

// ticks + rest / of
struct ExactTicks {
  std::int64_t ticks = 0;
  Wide rest = 0, of = 1;
  bool negative = false;
  Unit unit = Unit::inch;
  Length length() const { return Length::from_ticks(negative ? -ticks : ticks); }
};

tl::expected<ExactTicks, std::string> parse_exact(std::string_view text, Unit fallback) {
  const auto malformed = [&] {
    return tl::unexpected(quoted(text.substr(0, 60)) +
                          " is not a length; expected a number such as 8, 8.5, 8 1/2 or 215.9 mm");
  };
  Reader in(text);
  ExactTicks out;
  in.skip_blanks();
  out.negative = in.take('-');
  if (!out.negative) in.take('+');
  in.skip_blanks();
  const auto number = read_number(in);
  if (!number) return malformed();
  const auto named = read_unit(in, fallback);
  if (!named) return malformed();

  const Wide product = static_cast<Wide>(number->numerator) * ticks_per(*named);
  const Wide whole = product / number->denominator;
  if (whole > longest_input.ticks()) {
    return tl::unexpected(quoted(text.substr(0, 60)) + " is longer than the limit of 100 m");
  }
  out.ticks = static_cast<std::int64_t>(whole);
  out.rest = product % number->denominator;
  out.of = number->denominator;
  out.unit = *named;
  return out;
}

// Decimals that are far below a tick go.
std::string without_finest_decimals(std::string_view text) {
  const std::size_t point = text.find('.');
  if (point == text.npos) return std::string(text);
  const std::size_t end = std::min(text.find_first_not_of("0123456789", point + 1), text.size());
  const std::size_t kept = std::min(end, point + 1 + most_decimals);
  return std::string(text.substr(0, kept)) + std::string(text.substr(end));
}

// Whether somebody's rule shows it: to the finest mark, or in thousandths of an inch.
bool is_readable(Length length, Unit unit) {
  if (length == to_finest_mark(length, unit)) return true;
  return unit == Unit::inch && (Wide{length.ticks()} * 1000) % ticks_per_inch == 0;
}

}  // namespace

tl::expected<Length, std::string> parse_length(std::string_view text, Unit unit) {
  const auto read = parse_exact(text, unit);
  if (!read) return tl::unexpected(read.error());
  if (read->rest == 0) return read->length();
  const std::string sign = read->negative ? "-" : "";
  return tl::unexpected(quoted(text.substr(0, 60)) +
                        " is not a whole number of ticks (1/40640 in); the nearest are " + sign +
                        exact_magnitude(read->ticks, read->unit) + " and " + sign +
                        exact_magnitude(read->ticks + 1, read->unit) + suffix(read->unit));
}

tl::expected<Measured, std::string> parse_measured(std::string_view text, Unit unit) {
  auto read = parse_exact(without_finest_decimals(text), unit);
  if (!read) return tl::unexpected(read.error());
  if (read->rest > read->of - read->rest) ++read->ticks;
  return Measured{read->length(), read->rest == 0};
}

LengthText format_number(Length length, const Scale& scale) {
  const Length shown = round_to_multiple(length, scale.increment);
  LengthText out;
  out.remainder = length - shown;
  out.exact = out.remainder == Length();
  const bool negative = shown < Length();
  out.text = (negative ? "-" : "") +
             exact_magnitude(negative ? -shown.ticks() : shown.ticks(), scale.unit);
  return out;
}

LengthText format_length(Length length, const Scale& scale) {
  LengthText out = format_number(length, scale);
  out.text += suffix(scale.unit);
  return out;
}

Length finest_mark(Unit unit) {
  return unit == Unit::inch ? sixty_fourths(1) : Length::from_ticks(ticks_per_mm / 100);
}

Length to_finest_mark(Length length, Unit unit) {
  return round_to_multiple(length, finest_mark(unit));
}

LengthText format_readable(Length length, const Scale& scale) {
  const LengthText on_step = format_number(length, scale);
  if (on_step.exact) return on_step;
  if (is_readable(length, scale.unit)) return {exact_number(length, scale.unit), true, {}};
  return format_number(length, {scale.unit, finest_mark(scale.unit)});
}

std::string describe_number(Length length, const Scale& scale) {
  const LengthText out = format_readable(length, scale);
  return out.exact ? out.text : "about " + out.text;
}

std::string describe(Length length, const Scale& scale) {
  return describe_number(length, scale) + suffix(scale.unit);
}

std::string describe_fine(Length length, Unit unit) {
  const Length finest = finest_mark(unit);
  if (length > Length() && length < finest) return "less than " + format_exact(finest, unit);
  return describe(length, {unit, finest});
}

std::string measured_number(Length length, Unit unit) {
  if (is_readable(length, unit)) return exact_number(length, unit);
  for (Wide parts = 1000; parts <= 1'000'000; parts *= 10) {
    const auto nearest = static_cast<std::int64_t>(
        (2 * Wide{length.ticks()} * parts + ticks_per(unit)) / (2 * ticks_per(unit)));
    const std::string text = *decimal(nearest, static_cast<std::int64_t>(parts));
    const auto read = parse_measured(text, unit);
    if (read && read->length == length) return text;
  }
  return exact_number(length, unit);
}

std::string exact_number(Length length, Unit unit) {
  const bool negative = length < Length();
  return (negative ? "-" : "") + exact_magnitude(negative ? -length.ticks() : length.ticks(), unit);
}

std::string format_exact(Length length, Unit unit) {
  return exact_number(length, unit) + suffix(unit);
}

}  // namespace mullion
