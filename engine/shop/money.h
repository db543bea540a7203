#pragma once

// Money, exactly.
//
// An Amount is a rational number of the currency's main unit (euros, not cents), so that rates,
// percentages and areas multiply without loss. Money is a whole number of the smallest unit in
// which the shop charges; an Amount becomes Money in one place, by a named rule.

#include <gmpxx.h>

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "engine/locale/locale.h"

namespace mullion::price {

using Amount = mpq_class;

// What becomes of exactly half a unit.
enum class Rounding { half_up /* away from zero */, half_even };

struct Currency {
  std::string code = "EUR";  // ISO 4217
  std::string symbol;        // empty: the code is written
  bool symbol_after = false;
  int decimals = 2;  // 0 to 4, of the smallest unit
  friend bool operator==(const Currency&, const Currency&) = default;
};

struct Money {
  std::int64_t units = 0;  // smallest units
  friend auto operator<=>(const Money&, const Money&) = default;
  friend Money operator+(Money a, Money b) { return {a.units + b.units}; }
  friend Money operator-(Money a, Money b) { return {a.units - b.units}; }
};

// Throws std::overflow_error beyond 10^15 units.
Money rounded(const Amount& amount, const Currency& currency, Rounding rounding);

// The nearest multiple of `step` (> 0).
Money rounded_to(Money money, Money step, Rounding rounding);

Amount amount_of(Money money, const Currency& currency);

inline constexpr int rate_decimals = 6;  // at most

// "12", "12.5", "0.0425": at most `decimals` decimals, no sign, no exponent, below 10^9.
std::optional<Amount> parse_amount(std::string_view text, int decimals);

// "12.50 EUR", "€12.50" or "12.50 kr", with the locale's decimal mark.
std::string format(Money money, const Currency& currency, const Locale& locale = {});

// The shortest decimal that says a rate, which has at most six decimals: "0.0425", "0.40" (never
// fewer decimals than the currency has).
std::string format_rate(const Amount& rate, const Currency& currency, const Locale& locale = {});

}  // namespace mullion::price
