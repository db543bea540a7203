#pragma once

// What a problem is about, by the place that it names in the job file.

#include <string>
#include <vector>

#include "engine/job/job.h"

namespace mullion {

struct Concern {
  std::vector<int> openings;          // numbers
  std::vector<std::string> measures;  // names as in measures.h
};

// Nothing where no statement of the job stands at that place.
Concern concern_of(const Job& job, const Place& place);

}  // namespace mullion
