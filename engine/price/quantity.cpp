#include "engine/price/quantity.h"

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

std::string size_words(Length width, Length height, const Scale& scale) {
  return format_number(width, scale).text + " \xC3\x97 " + format_length(height, scale).text;
}

std::string plain(const Amount& number) {
  const Currency two_places{};
  return format_rate(amount_of(rounded(number, two_places, Rounding::half_up), two_places),
                     Currency{"", "", false, 0});
}

Quantity united_inches(Length width, Length height) {
  const Amount w = ratio(width.ticks(), ticks_per_inch), h = ratio(height.ticks(), ticks_per_inch);
  return {w + h, plain(w) + " + " + plain(h) + " = " + plain(w + h) + " united inches"};
}

Quantity area(Length width, Length height, Basis basis, const Scale& scale) {
  const bool feet = basis == Basis::square_foot;
  const std::int64_t unit = feet ? ticks_per_foot : ticks_per_metre;
  const Amount number = ratio(width.ticks(), unit) * ratio(height.ticks(), unit);
  return {number, size_words(width, height, scale) + " = " + plain(number) +
                      (feet ? " square feet" : " square metres")};
}

Quantity sheet_share(Length width, Length height, const BoardPrice& board, const Scale& scale) {
  const std::int64_t yield = std::max(grid(board.sheet_width, board.sheet_height, width, height),
                                      grid(board.sheet_width, board.sheet_height, height, width));
  if (yield == 0) return {};
  const std::string sheet = size_words(board.sheet_width, board.sheet_height, scale);
  return {ratio(1, yield), "1 of " + std::to_string(yield) + " blanks of " +
                               size_words(width, height, scale) + " from a sheet of " + sheet};
}

Quantity moulding_length(const Frame& frame, const MouldingPrice& moulding, const Scale& scale) {
  const Length around = 2 * (frame.rabbet_width + frame.rabbet_height) + 8 * frame.face_width;
  const Length length = rounded_up(with_waste(around, moulding.waste_percent), moulding.sold_in);
  const bool feet = moulding.rate.basis == Basis::foot;
  const Amount number = ratio(length.ticks(), feet ? ticks_per_foot : ticks_per_metre);
  std::string how = "around and 8 widths " + format_length(around, scale).text;
  if (moulding.waste_percent > 0) how += ", waste " + plain(moulding.waste_percent) + " %";
  if (moulding.sold_in != Length()) {
    how += ", up to a multiple of " + format_length(moulding.sold_in, scale).text;
  }
  return {number, how + " = " + plain(number) + (feet ? " feet" : " metres")};
}

}  // namespace mullion::price
