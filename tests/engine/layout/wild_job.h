#pragma once

// Random jobs that use all that a job file can say about sizes: groups, named gaps, least bars,
// frames, layers with reveals of their own, joined windows, floats, free openings, rules of every
// kind and strength, inches and millimetres.

#include <random>
#include <string>

#include "engine/job/job.h"

namespace test {

struct WildJob {
  std::string attributes;  // unit and increment
  std::string lines;       // between <job> and </job>
  bool is_on_the_rule;     // every stated size is a whole number of the increment's steps

  mullion::Job job() const;
};

WildJob wild_job(std::mt19937& random, int most_openings);

}  // namespace test
