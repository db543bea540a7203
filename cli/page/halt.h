#pragma once

// Tells long work to end: whoever asked for it has gone, or the server ends.

#include <sys/types.h>

#include <atomic>
#include <mutex>

namespace mullion::cli::page {

class Halt {
 public:
  // Kills the child that works, and any that would begin.
  void now();
  bool is_asked() const { return asked_; }

  // What a child process of the work calls on the work's own thread.
  void began(pid_t child);
  int reap();  // waits; the wait status

 private:
  std::atomic<bool> asked_ = false;
  std::mutex mutex_;
  pid_t child_ = -1;
};

}  // namespace mullion::cli::page
