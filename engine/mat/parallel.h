#pragma once

// Parallel curves of any closed outline: what a bevel, a reveal or a groove makes of it.

#include <string>
#include <tl/expected.hpp>

#include "engine/mat/outline.h"

namespace mullion {

// The outline `outward` outside the given one (negative: inside it), clockwise as seen. Corners
// that point outward are mitred, as two cuts that run on until they meet; one so sharp that its
// mitre would reach farther than six times the distance is cut off square. Where a hollow is too
// narrow for the distance the curves are cut off at their crossing. Within 8 ticks (0.005 mm) of
// the true parallel: 1 from chords, 4 from fitting, 1 from whole ticks.
//
// Refuses an outline that crosses itself or goes along one line twice, one with too many parts, and
// one whose parallel leaves an island, such as a ring that nearly closes. The error is a sentence.
tl::expected<Outline, std::string> parallel(const Outline& outline, Length outward);

// Whether board stands into the window in strips narrower than `width` whose area is more than that
// of a square of it, or hangs on such a strip. A point is no strip unless it is sharper than 19
// degrees, where a mitre of six times the width ends.
bool has_narrow_board(const Outline& outline, Length width);

// What parallel would refuse about the outline itself; empty when it is simple.
std::string flaw_of(const Outline& outline);

}  // namespace mullion
