#pragma once

// A line on the terminal that tells how far long work is: after half a second, and gone when the
// work is done. Nothing is written where standard error is no terminal.

#include <condition_variable>
#include <cstdint>
#include <functional>
#include <mutex>
#include <string>
#include <thread>

namespace mullion::cli {

class ProgressLine {
 public:
  // `share_done` is called from another thread and gives 0 to 1.
  ProgressLine(std::string what, std::function<double()> share_done);
  ~ProgressLine();
  ProgressLine(const ProgressLine&) = delete;
  ProgressLine& operator=(const ProgressLine&) = delete;

 private:
  void show();

  std::string what_;
  std::function<double()> share_done_;
  std::mutex mutex_;
  std::condition_variable ended_;
  bool has_ended_ = false;
  std::thread thread_;
};

}  // namespace mullion::cli
