#pragma once

// What a problem or a statement of the layout is about.

#include <string>
#include <vector>

#include "engine/layout/statement.h"

namespace mullion {

struct Concern {
  std::vector<int> openings;          // numbers
  std::vector<std::string> measures;  // names as in dimensions.h
};

// By the place that a problem names in the job file. Nothing where no statement of the job stands
// there.
Concern concern_of(const Job& job, const Place& place);

// The dimension that a statement of kind border states.
const char* border_name(const layout::Statement& border);

// Each opening and measure once, in the order of the statements.
Concern concern_of(const Job& job, const std::vector<layout::Statement>& statements);

}  // namespace mullion
