#pragma once

// The advice in a conflict's message, read as a framer reads it, and followed in the job.

#include <string>
#include <vector>

#include "engine/job/job.h"

namespace test {

// One "layout-conflict" error with the notes that follow it.
struct ToldConflict {
  std::string message;
  struct Part {
    std::string text;  // without "this takes part: "
    mullion::Place place;
  };
  std::vector<Part> parts;
};

std::vector<ToldConflict> told_conflicts(const mullion::Problems& problems);

// What comes before "would fit", each way alone; empty where nothing is proposed or where the
// message says that more does not fit.
std::vector<std::string> ways_in(const ToldConflict& conflict);

// The jobs that a framer may make by following one way: one, or one for each statement that the
// words fit.
std::vector<mullion::Job> followed(const mullion::Job& job, const ToldConflict& conflict,
                                   const std::string& way);

// A message of the form "borders 3 + 3, two openings of 9 and a gap of 1 need 25 in; the outer
// width is 22 in: 3 in short": empty where the numbers add up, or where the message has another
// form or says "about"; else what is wrong.
struct SumCheck {
  bool is_sum = false;
  std::string fault;
};
SumCheck check_sum(const std::string& message, mullion::Unit unit);

}  // namespace test
