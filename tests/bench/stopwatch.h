#pragma once

// Best and median time of an action, in milliseconds.

#include <algorithm>
#include <chrono>
#include <ctime>
#include <functional>
#include <vector>

namespace bench {

struct Timing {
  double best = 0, median = 0;
};

inline Timing time_of(const std::function<void()>& action, int runs = 11) {
  std::vector<double> times;
  for (int i = 0; i < runs; ++i) {
    const auto start = std::chrono::steady_clock::now();
    action();
    const std::chrono::duration<double, std::milli> taken =
        std::chrono::steady_clock::now() - start;
    times.push_back(taken.count());
  }
  std::sort(times.begin(), times.end());
  return {times.front(), times[times.size() / 2]};
}

// Best of several runs, in milliseconds of the processor's time: other programs do not count.
inline double processor_time_of(const std::function<void()>& action, int runs = 11) {
  double best = 1e9;
  for (int i = 0; i < runs; ++i) {
    const std::clock_t start = std::clock();
    action();
    best = std::min(best, 1000.0 * static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC);
  }
  return best;
}

}  // namespace bench
