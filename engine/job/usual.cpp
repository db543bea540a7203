#include "engine/job/usual.h"

#include <algorithm>

namespace mullion {
namespace {

constexpr Usual in_inches{.increment = sixty_fourths(4),
                          .ply = sixty_fourths(1),
                          .overlap = sixty_fourths(8),
                          .reveal = sixty_fourths(16),
                          .allowance = sixty_fourths(8),
                          .lip = sixty_fourths(16),
                          .face = inches(1),
                          .hidden_margin = sixty_fourths(16),
                          .small_border = inches(2),
                          .large_border = inches(3),
                          .small_board_short = inches(11),
                          .small_board_long = inches(14),
                          .gap = inches(1),
                          .least_opening = sixty_fourths(32)};

constexpr Usual in_millimetres{.increment = millimetres(1),
                               .ply = Length::from_ticks(ticks_per_mm * 3 / 8),
                               .overlap = millimetres(3),
                               .reveal = millimetres(6),
                               .allowance = millimetres(3),
                               .lip = millimetres(6),
                               .face = millimetres(25),
                               .hidden_margin = millimetres(6),
                               .small_border = millimetres(50),
                               .large_border = millimetres(75),
                               .small_board_short = millimetres(280),
                               .small_board_long = millimetres(360),
                               .gap = millimetres(25),
                               .least_opening = millimetres(12)};

}  // namespace

const Usual& usual_for(Unit unit) {
  return unit == Unit::inch ? in_inches : in_millimetres;
}

Length thickness_of(int ply, Unit unit) {
  return usual_for(unit).ply * ply;
}

bool is_small_board(Length width, Length height, Unit unit) {
  const Usual& usual = usual_for(unit);
  const auto& [shorter, longer] = std::minmax(width, height);
  return shorter <= usual.small_board_short && longer <= usual.small_board_long;
}

}  // namespace mullion
