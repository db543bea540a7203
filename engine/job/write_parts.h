#pragma once

// The parts of a job file that are written by files of their own.

#include "engine/job/job.h"
#include "engine/xml/write_element.h"

namespace mullion {

void write_arrangement(ElementWriter out, const Job& job);
void write_rules(ElementWriter out, const std::vector<Rule>& rules);

}  // namespace mullion
