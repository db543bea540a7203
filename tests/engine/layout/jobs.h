#pragma once

// Jobs from a few lines of XML, for the layout's tests.

#include <string>

#include "engine/job/job.h"
#include "engine/layout/layout.h"

namespace test {

// The lines between <job ...> and </job>, in inches and sixteenths unless `attributes` say more.
mullion::Job job_of(const std::string& lines,
                    const std::string& attributes = R"(unit="in" increment="1/16")");

// Throws std::runtime_error with the problems' texts where the job cannot be laid out.
mullion::Layout laid_out(const std::string& lines,
                         const std::string& attributes = R"(unit="in" increment="1/16")");

// The notes of the layout in words, a line each.
std::string notes_of(const std::string& lines,
                     const std::string& attributes = R"(unit="in" increment="1/16")");

// The problems of a job that cannot be laid out, joined by new lines; empty where it can.
std::string conflict_of(const std::string& lines);

}  // namespace test
