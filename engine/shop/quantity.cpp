#include "engine/shop/quantity.h"

#include <algorithm>

namespace mullion::price {
namespace {

constexpr std::int64_t ticks_per_foot = 12 * ticks_per_inch, ticks_per_metre = 1000 * ticks_per_mm;

Amount ratio(std::int64_t a, std::int64_t b) {
  Amount out(mpz_class(static_cast<long>(a)), mpz_class(static_cast<long>(b)));
  out.canonicalize();
  return out;
}

std::int64_t grid(Length across, Length down, Length width, Length height) {
  return (across.ticks() / width.ticks()) * (down.ticks() / height.ticks());
}

Length rounded_up(Length length, Length step) {
  if (step == Length()) return length;
  const std::int64_t steps = (length.ticks() + step.ticks() - 1) / step.ticks();
  return step * steps;
}

Length with_waste(Length length, const Amount& percent) {
  const Amount exact = Amount(static_cast<long>(length.ticks())) * (1 + percent / 100);
  const mpz_class up = (exact.get_num() + exact.get_den() - 1) / exact.get_den();
  return Length::from_ticks(up.get_si());
}

}  // namespace

std::string plain(const Amount& number, const Locale& locale) {
  const Currency two_places{};
  return format_rate(amount_of(rounded(number, two_places, Rounding::half_up), two_places),
                     Currency{"", "", false, 0}, locale);
}

Quantity united_inches(Length width, Length height, const Locale& locale) {
  const Amount w = ratio(width.ticks(), ticks_per_inch), h = ratio(height.ticks(), ticks_per_inch);
  return {w + h, locale.say("%1 + %2 = %3 united inches", plain(w, locale), plain(h, locale),
                            plain(w + h, locale))};
}

Quantity area(Length width, Length height, Basis basis, const Scale& scale, const Locale& locale) {
  const bool feet = basis == Basis::square_foot;
  const std::int64_t unit = feet ? ticks_per_foot : ticks_per_metre;
  const Amount number = ratio(width.ticks(), unit) * ratio(height.ticks(), unit);
  return {number, locale.say(feet ? mark("%1 = %2 square feet") : mark("%1 = %2 square metres"),
                             locale.size(width, height, scale), plain(number, locale))};
}

Quantity sheet_share(Length width, Length height, const BoardPrice& board, const Scale& scale,
                     const Locale& locale) {
  const std::int64_t yield = std::max(grid(board.sheet_width, board.sheet_height, width, height),
                                      grid(board.sheet_width, board.sheet_height, height, width));
  if (yield == 0) return {};
  return {ratio(1, yield), locale.say("1 of %1 blanks of %2 from a sheet of %3", yield,
                                      locale.size(width, height, scale),
                                      locale.size(board.sheet_width, board.sheet_height, scale))};
}

Quantity moulding_length(const Frame& frame, const MouldingPrice& moulding, const Scale& scale,
                         const Locale& locale) {
  const Length around = 2 * (frame.rabbet_width + frame.rabbet_height) + 8 * frame.face_width;
  const Length length = rounded_up(with_waste(around, moulding.waste_percent), moulding.sold_in);
  const bool feet = moulding.rate.basis == Basis::foot;
  const Amount number = ratio(length.ticks(), feet ? ticks_per_foot : ticks_per_metre);
  std::string how = locale.say("around and 8 widths %1", locale.described(around, scale));
  if (moulding.waste_percent > 0) {
    how = locale.say("%1, waste %2 %", how, plain(moulding.waste_percent, locale));
  }
  if (moulding.sold_in != Length()) {
    how = locale.say("%1, up to a multiple of %2", how, locale.described(moulding.sold_in, scale));
  }
  return {number, locale.say(feet ? mark("%1 = %2 feet") : mark("%1 = %2 metres"), how,
                             plain(number, locale))};
}

}  // namespace mullion::price
