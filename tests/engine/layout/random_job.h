#pragma once

// Random jobs: rows of columns of rows of pictures, with borders, gaps and outer size stated or
// not.

#include <random>
#include <string>

namespace test {

// The lines between <job> and </job>; inches.
std::string random_job(std::mt19937& random, int most_pictures);

}  // namespace test
