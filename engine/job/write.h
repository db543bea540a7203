#pragma once

// Writes a job as a job file for people: one statement a line, nested by two blanks, lengths in
// the job's unit, and what is usual left unsaid. The same job gives the same bytes, and reading
// them gives the same job apart from the places of its statements.

#include <string>

#include "engine/job/job.h"

namespace mullion {

std::string write_job(const Job& job);

}  // namespace mullion
