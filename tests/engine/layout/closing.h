#pragma once

// Whether the parts of a layout add up and can be read off the rule, told from the job's
// arrangement and the layout's rectangles alone.

#include <string>

#include "engine/layout/layout.h"

namespace test {

// Along every row and column, and from edge to edge of the mat. Empty where all closes: the borders
// and the outermost openings make the outer size, no two parts overlap, stated gaps and stated
// sizes are met, and every group is as large as its parts.
std::string what_does_not_close(const mullion::Job& job, const mullion::Layout& layout);

// Sizes that are read off the rule and are no whole number of its steps: the outer size, borders,
// gaps, the left and upper edges of the openings. Empty where there are none.
std::string what_is_off_the_rule(const mullion::Job& job, const mullion::Layout& layout);

}  // namespace test
