#include "engine/shop/money.h"

#include <algorithm>
#include <stdexcept>

namespace mullion::price {
namespace {

mpz_class power_of_ten(int exponent) {
  mpz_class out;
  mpz_ui_pow_ui(out.get_mpz_t(), 10, static_cast<unsigned long>(exponent));
  return out;
}

mpz_class nearest(const Amount& value, Rounding rounding) {
  const Amount size = abs(value);
  mpz_class whole = size.get_num() / size.get_den();
  const Amount rest = size - whole;
  const Amount half(1, 2);
  const bool up =
      rest > half ||
      (rest == half && (rounding == Rounding::half_up || mpz_odd_p(whole.get_mpz_t()) != 0));
  if (up) ++whole;
  return value < 0 ? mpz_class(-whole) : whole;
}

std::int64_t checked(const mpz_class& units) {
  static const mpz_class most = power_of_ten(15);
  if (abs(units) > most) throw std::overflow_error("an amount of money is too large");
  return units.get_si();
}

std::string decimal(const mpz_class& units, int decimals) {
  std::string digits = mpz_class(abs(units)).get_str();
  const auto width = static_cast<std::size_t>(decimals) + 1;
  if (digits.size() < width) digits.insert(0, width - digits.size(), '0');
  if (decimals > 0) digits.insert(digits.size() - static_cast<std::size_t>(decimals), ".");
  return digits;
}

}  // namespace

Money rounded(const Amount& amount, const Currency& currency, Rounding rounding) {
  return {checked(nearest(amount * power_of_ten(currency.decimals), rounding))};
}

Money rounded_to(Money money, Money step, Rounding rounding) {
  Amount steps(mpz_class(static_cast<long>(money.units)), mpz_class(static_cast<long>(step.units)));
  steps.canonicalize();
  return {checked(nearest(steps, rounding) * static_cast<long>(step.units))};
}

Amount amount_of(Money money, const Currency& currency) {
  Amount out(mpz_class(static_cast<long>(money.units)), power_of_ten(currency.decimals));
  out.canonicalize();
  return out;
}

std::optional<Amount> parse_amount(std::string_view text, int decimals) {
  constexpr std::size_t longest_whole = 9;
  const std::size_t point = std::min(text.find('.'), text.size());
  const std::string_view whole = text.substr(0, point);
  const std::string_view part = point < text.size() ? text.substr(point + 1) : std::string_view();
  const auto digits = [](std::string_view s) {
    return std::all_of(s.begin(), s.end(), [](char c) { return c >= '0' && c <= '9'; });
  };
  if (whole.empty() || whole.size() > longest_whole || !digits(whole) || !digits(part) ||
      part.size() > static_cast<std::size_t>(decimals) || text.ends_with('.')) {
    return std::nullopt;
  }
  Amount out(mpz_class(std::string(whole) + std::string(part), 10),
             power_of_ten(static_cast<int>(part.size())));
  out.canonicalize();
  return out;
}

std::string format(Money money, const Currency& currency, const Locale& locale) {
  const std::string sign = money.units < 0 ? "\xE2\x88\x92" : "";
  const std::string number =
      locale.number(decimal(mpz_class(static_cast<long>(money.units)), currency.decimals));
  if (currency.symbol.empty()) return sign + number + " " + currency.code;
  if (currency.symbol_after) return sign + number + " " + currency.symbol;
  return sign + currency.symbol + number;
}

std::string format_rate(const Amount& rate, const Currency& currency, const Locale& locale) {
  std::string out =
      decimal(nearest(rate * power_of_ten(rate_decimals), Rounding::half_even), rate_decimals);
  const std::size_t shortest =
      out.find('.') + (currency.decimals > 0 ? 1 + static_cast<std::size_t>(currency.decimals) : 0);
  while (out.size() > shortest && (out.back() == '0' || out.back() == '.')) out.pop_back();
  return locale.number(out);
}

}  // namespace mullion::price
