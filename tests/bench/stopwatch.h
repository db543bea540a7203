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

namespace detail {

// `now` in milliseconds.
inline Timing time_by(double (*now)(), const std::function<void()>& action, int runs) {
  std::vector<double> times;
  for (int i = 0; i < runs; ++i) {
    const double start = now();
    action();
    times.push_back(now() - start);
  }
  std::sort(times.begin(), times.end());
  return {times.front(), times[times.size() / 2]};
}

}  // namespace detail

inline Timing time_of(const std::function<void()>& action, int runs = 11) {
  const auto now = [] {
    const std::chrono::duration<double, std::milli> time =
        std::chrono::steady_clock::now().time_since_epoch();
    return time.count();
  };
  return detail::time_by(now, action, runs);
}

// Of this process alone, so that a busy machine does not count.
inline Timing processor_time_of(const std::function<void()>& action, int runs = 11) {
  const auto now = [] { return 1e3 * static_cast<double>(std::clock()) / CLOCKS_PER_SEC; };
  return detail::time_by(now, action, runs);
}

}  // namespace bench
