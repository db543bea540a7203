#pragma once

// The suggestions to show, of all that hang: the best of each composition, then a second one of
// each that looks different (difference.h). Fewer than were asked for where all others have holes
// or ragged edges.

#include "engine/suggest/ranking.h"

namespace mullion::suggest {

// A composition is shown for its own sake where it scores at least this share of the best. Our own
// figure.
inline constexpr double good_enough = 0.88;

// A proposal is shown beside better ones where its least bar is at least this share of their mean.
// Our own figure.
inline constexpr double even_enough = 0.55;

// A ragged one of a composition of its own is shown where it scores at least this share of the
// best. Our own figure.
inline constexpr double as_good = 0.94;

// Others follow only where there would be fewer than so many (`at_least`).
inline constexpr std::size_t few = 3;

// Its outer edges end on one rectangle, or its halves mirror each other with even bars between, or
// all of it lies in lines: on a circle, say.
bool is_tidy(const Criteria& criteria);

// By falling score, one for each plan.
std::vector<Ranked> chosen(std::vector<Ranked> hung, std::size_t count, Length gap,
                           std::size_t items, std::size_t at_least = few);

}  // namespace mullion::suggest
