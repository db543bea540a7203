#include "cli/page/halt.h"

#include <signal.h>
#include <sys/wait.h>

#include <cerrno>

namespace mullion::cli::page {

void Halt::now() {
  const std::lock_guard lock(mutex_);
  asked_ = true;
  if (child_ > 0) ::kill(child_, SIGKILL);
}

void Halt::began(pid_t child) {
  const std::lock_guard lock(mutex_);
  child_ = child;
  if (asked_) ::kill(child_, SIGKILL);
}

int Halt::reap() {
  siginfo_t ended{};
  while (::waitid(P_PID, static_cast<id_t>(child_), &ended, WEXITED | WNOWAIT) < 0 &&
         errno == EINTR) {
    continue;
  }
  const std::lock_guard lock(mutex_);  // nobody kills a number that may be another's by now
  int status = 0;
  while (::waitpid(child_, &status, 0) < 0 && errno == EINTR) continue;
  child_ = -1;
  return status;
}

}  // namespace mullion::cli::page
