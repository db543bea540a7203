#pragma once

// Checks a pattern by reading nothing but the pattern: every cut goes from edge to edge of the
// board it is made in, the parts and the kerfs fill that board, and each blank has its own size.

#include <string>
#include <vector>

#include "engine/sheets/guillotine/best_pattern.h"

// What is wrong with the pattern, or an empty text.
std::string fault_in(const mullion::Pattern& pattern, mullion::Length width, mullion::Length height,
                     const mullion::CutLimits& limits,
                     const std::vector<mullion::BlankSize>& blanks);

// The blanks' values, counted from the places of the blanks; -1 when two blanks overlap or one
// sticks out.
std::int64_t value_of(const mullion::Pattern& pattern, mullion::Length width,
                      mullion::Length height, mullion::Length kerf,
                      const std::vector<std::int64_t>& values);
