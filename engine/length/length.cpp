#include "engine/length/length.h"

#include <stdexcept>

namespace mullion {
namespace {

std::int64_t checked(bool overflowed, std::int64_t value) {
  if (overflowed) throw std::overflow_error("a length is out of range");
  return value;
}

}  // namespace

Length operator+(Length a, Length b) {
  std::int64_t sum = 0;
  const bool overflowed = __builtin_add_overflow(a.ticks_, b.ticks_, &sum);
  return Length(checked(overflowed, sum));
}

Length operator-(Length a, Length b) {
  std::int64_t difference = 0;
  const bool overflowed = __builtin_sub_overflow(a.ticks_, b.ticks_, &difference);
  return Length(checked(overflowed, difference));
}

Length operator-(Length a) {
  return Length() - a;
}

Length operator*(Length a, std::int64_t factor) {
  std::int64_t product = 0;
  const bool overflowed = __builtin_mul_overflow(a.ticks_, factor, &product);
  return Length(checked(overflowed, product));
}

Length half_rounded_down(Length a) {
  return Length::from_ticks((a.ticks() - (a.ticks() % 2 != 0 && a.ticks() < 0 ? 1 : 0)) / 2);
}

Length round_to_multiple(Length a, Length step) {
  const std::int64_t rest = a.ticks() % step.ticks();
  const std::int64_t down = a.ticks() - rest;
  const std::int64_t magnitude = rest < 0 ? -rest : rest;
  if (magnitude < step.ticks() - magnitude) return Length::from_ticks(down);
  return Length::from_ticks(down) + (rest < 0 ? -step : step);
}

}  // namespace mullion
