#pragma once

// Sizes of pictures as people say them, one a line or with semicolons between them:
//
//   8x10
//   8 1/2 x 11 *3            three of them
//   21 x 29,7 cm  Diploma    a unit for both sides, and a name
//   5 by 7

#include <string>
#include <string_view>
#include <vector>

#include "engine/starting/starting.h"
#include "engine/xml/problem.h"

namespace mullion::starting {

inline constexpr int most_said = 500;  // pictures in one text

struct SaidSize {
  Size size;
  int count = 1;
  std::string name;  // may be empty
};

// A side without a unit has the other one's, else `unit`. Problems ("said-size") have the line and
// are all told; none at all is a problem too.
Result<std::vector<SaidSize>> parse_said_sizes(std::string_view text, Unit unit);

// The other side so that both are in the proportion of pixels of an image, on the step.
void keep_proportion(Size& size, int pixels_wide, int pixels_high, bool width_is_given,
                     Length step);

}  // namespace mullion::starting
