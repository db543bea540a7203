#pragma once

// How often a test repeats what it does at random: less often by default, so that the suite is
// quick, and as often as it should once in a while where MULLION_LONG is set (preset `long`).

#include <cstdlib>

namespace test {

inline int how_many(int by_default, int at_length) {
  return std::getenv("MULLION_LONG") == nullptr ? by_default : at_length;
}

}  // namespace test
