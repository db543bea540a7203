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
  // For a program that reads along: every tenth of a second what `line` gives, on a line of its own
  // on standard error, whether that is a terminal or not.
  explicit ProgressLine(std::function<std::string()> line);
  ~ProgressLine();
  ProgressLine(const ProgressLine&) = delete;
  ProgressLine& operator=(const ProgressLine&) = delete;

 private:
  void show();
  void tell_lines();

  std::string what_;
  std::function<double()> share_done_;
  std::function<std::string()> line_;
  std::mutex mutex_;
  std::condition_variable ended_;
  bool has_ended_ = false;
  std::thread thread_;
};

}  // namespace mullion::cli
