#include "cli/progress.h"

#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <cstdio>

namespace mullion::cli {
namespace {

using namespace std::chrono_literals;

constexpr auto patience = 500ms, between = 100ms;

}  // namespace

ProgressLine::ProgressLine(std::string what, std::function<double()> share_done)
    : what_(std::move(what)), share_done_(std::move(share_done)) {
  if (isatty(STDERR_FILENO) == 1) thread_ = std::thread([this] { show(); });
}

ProgressLine::ProgressLine(std::function<std::string()> line)
    : line_(std::move(line)), thread_([this] { tell_lines(); }) {}

ProgressLine::~ProgressLine() {
  if (!thread_.joinable()) return;
  {
    const std::lock_guard lock(mutex_);
    has_ended_ = true;
  }
  ended_.notify_one();
  thread_.join();
}

void ProgressLine::tell_lines() {
  std::unique_lock lock(mutex_);
  while (!ended_.wait_for(lock, between, [this] { return has_ended_; })) {
    std::fprintf(stderr, "%s\n", line_().c_str());
  }
}

void ProgressLine::show() {
  std::unique_lock lock(mutex_);
  if (ended_.wait_for(lock, patience, [this] { return has_ended_; })) return;
  do {
    const int percent = static_cast<int>(100 * std::clamp(share_done_(), 0.0, 1.0));
    std::fprintf(stderr, "\r%s: %3d %%", what_.c_str(), percent);
    std::fflush(stderr);
  } while (!ended_.wait_for(lock, between, [this] { return has_ended_; }));
  std::fprintf(stderr, "\r%*s\r", static_cast<int>(what_.size()) + 7, "");
  std::fflush(stderr);
}

}  // namespace mullion::cli
