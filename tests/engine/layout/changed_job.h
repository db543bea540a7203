#pragma once

// Jobs made from other jobs: one number edited, all lengths larger, seen in a mirror.

#include <random>

#include "engine/job/job.h"
#include "engine/layout/model.h"

namespace test {

// Every opening and group of the arrangement, outermost first.
std::vector<mullion::Opening*> openings_of(mullion::Node& node);
std::vector<mullion::Group*> groups_of(mullion::Node& node);

// One stated number of the arrangement a few sixteenths of an inch larger or smaller.
void edit_one_number(mullion::Job& job, std::mt19937& random);

// Nothing that bears on the layout is left to a default in inches.
void state_all(mullion::Job& job);

// Every length, the increment included, times the factor.
void scale(mullion::Job& job, int factor);

// Left and right (across) or top and bottom (down) exchanged.
void mirror(mullion::Job& job, mullion::layout::Axis axis);

}  // namespace test
