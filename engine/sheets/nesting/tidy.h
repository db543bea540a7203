#pragma once

// A sheet's blanks laid anew: the most useful off-cut first, then the fewest settings of the stop.
//
// The blanks of the sheet stay the same; only their places change.

#include "engine/sheets/nesting/nesting.h"

namespace mullion {

// More blanks than this are left where they are: the search tries every division of the blanks.
inline constexpr int most_blanks_laid_anew = 6;

// Whether every cut of the pattern is within the limits.
bool can_be_cut(const Pattern& pattern, const CutLimits& limits);

// The pattern of a sheet of few blanks with the largest off-cut worth keeping that any guillotine
// pattern leaves, and, of those tried, with the fewest settings; else the pattern itself.
Pattern laid_anew(const Pattern& pattern, const std::vector<BlankSize>& blanks,
                  const CutLimits& limits);

// The same cuts, with the parts of each node in the order for which the stop is set the least
// often. Nodes of more than a few parts keep their order.
Pattern with_fewest_settings(Pattern pattern);

}  // namespace mullion
