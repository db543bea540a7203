#pragma once

// Openings that a ring, a place on the mat or a moved part brings too near to each other.
//
// In a row or a column the rules keep neighbours apart; here nothing does, so every pair is looked
// at after the layout. Two rectangles must not overlap and keep a bar as holding.h has it, or the
// job's least bar. Openings of other shapes may reach into each other's corners: whether they do is
// for the checks of the mat, which know their outlines.

#include <vector>

#include "engine/layout/layout.h"

namespace mullion::layout {

struct Crowded {
  int first = 0, second = 0;   // numbers of the openings
  Length bar;                  // between them; negative: they overlap by so much
  Length least;                // that holds
  std::optional<Length> ring;  // width of the circle on which all would fit, where one is stated
};

// In the order of the openings' numbers; eight at most.
std::vector<Crowded> crowded(const Job& job, const Layout& layout);

// Errors "layout-overlap" and "layout-too-near", each at the place of the second opening.
Problems told_crowding(const std::vector<Crowded>& near, const Job& job, const Layout& layout,
                       const Locale& locale);

}  // namespace mullion::layout
