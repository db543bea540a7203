#pragma once

// Best and median time of an action, in milliseconds.

#include <algorithm>
#include <chrono>
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

}  // namespace bench
