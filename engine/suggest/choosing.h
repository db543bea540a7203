#pragma once

// The suggestions to show, of all that hang: the best of each composition, then the next best that
// look different (difference.h).

#include "engine/suggest/ranking.h"

namespace mullion::suggest {

// A composition is shown for its own sake where it scores at least this share of the best. Our own
// figure.
inline constexpr double good_enough = 0.88;

// By falling score, one for each plan.
std::vector<Ranked> chosen(std::vector<Ranked> hung, std::size_t count, Length gap,
                           std::size_t items);

}  // namespace mullion::suggest
