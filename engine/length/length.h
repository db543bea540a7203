#pragma once

// Exact lengths.
//
// A Length is a whole number of ticks. One tick is 1/40640 in = 0.625 micrometre, so that both
// 1/64 in (635 ticks) and 0.01 mm (16 ticks) are whole. The inch is 25.4 mm exactly (international
// yard and pound agreement, 1959); hence 1 mm = 1600 ticks.
//
// Arithmetic that would leave the range of the type throws std::overflow_error; nothing rounds
// unless the name of the function says so.

#include <array>
#include <compare>
#include <cstdint>

namespace mullion {

class Length {
 public:
  constexpr Length() = default;
  static constexpr Length from_ticks(std::int64_t ticks) { return Length(ticks); }

  constexpr std::int64_t ticks() const { return ticks_; }

  friend constexpr auto operator<=>(Length, Length) = default;
  friend Length operator+(Length a, Length b);
  friend Length operator-(Length a, Length b);
  friend Length operator-(Length a);
  friend Length operator*(Length a, std::int64_t factor);
  friend Length operator*(std::int64_t factor, Length a) { return a * factor; }
  Length& operator+=(Length other) { return *this = *this + other; }
  Length& operator-=(Length other) { return *this = *this - other; }

 private:
  constexpr explicit Length(std::int64_t ticks) : ticks_(ticks) {}
  std::int64_t ticks_ = 0;
};

inline constexpr std::int64_t ticks_per_inch = 40640;
inline constexpr std::int64_t ticks_per_mm = 1600;

// Whole units, for constants in code: inches(3), sixty_fourths(8) for 1/8 in, millimetres(2).
constexpr Length inches(std::int64_t n) {
  return Length::from_ticks(n * ticks_per_inch);
}
constexpr Length sixty_fourths(std::int64_t n) {
  return Length::from_ticks(n * (ticks_per_inch / 64));
}
constexpr Length millimetres(std::int64_t n) {
  return Length::from_ticks(n * ticks_per_mm);
}

// Half of a length; an odd tick count rounds toward minus infinity.
Length half_rounded_down(Length a);

// The multiple of `step` (> 0) nearest to `a`; a tie goes away from zero.
Length round_to_multiple(Length a, Length step);

// For drawing only: PDF user units of 1/72 in (ISO 32000-1, 8.3.2.3), and the other paper units.
constexpr double to_points(Length a) {
  return static_cast<double>(a.ticks()) * 72.0 / 40640.0;
}
constexpr double to_inches(Length a) {
  return static_cast<double>(a.ticks()) / 40640.0;
}
constexpr double to_millimetres(Length a) {
  return static_cast<double>(a.ticks()) / 1600.0;
}

// A length for each side of a rectangle.
struct Sides {
  Length left, top, right, bottom;
  friend bool operator==(const Sides&, const Sides&) = default;
};

inline constexpr std::array<Length Sides::*, 4> every_side{&Sides::left, &Sides::top, &Sides::right,
                                                           &Sides::bottom};

}  // namespace mullion
