#pragma once

// Threads for what takes its time, and the way back to the thread of the events.

#include <condition_variable>
#include <deque>
#include <functional>
#include <memory>
#include <mutex>
#include <set>
#include <thread>
#include <vector>

#include "cli/page/halt.h"

struct event;
struct event_base;

namespace mullion::cli::page {

class Workers {
 public:
  Workers(event_base* events, int threads);
  ~Workers();  // halts what runs, and waits for it
  Workers(const Workers&) = delete;
  Workers& operator=(const Workers&) = delete;

  // `work` is done by a thread; `then` afterwards by the thread of the events. The halt is the
  // work's own.
  using Then = std::function<void()>;
  std::shared_ptr<Halt> begin(std::function<Then(Halt&)> work);
  bool busy() const;  // too much waits already

 private:
  struct Task {
    std::shared_ptr<Halt> halt;
    std::function<Then(Halt&)> work;
  };
  void run();
  void take_back();

  mutable std::mutex mutex_;
  std::condition_variable wake_;
  std::deque<Task> waiting_;
  std::set<std::shared_ptr<Halt>> running_;
  std::vector<Then> done_;
  bool ends_ = false;
  int bell_ = -1;  // an eventfd: something is done
  event* rings_ = nullptr;
  std::vector<std::thread> threads_;
};

}  // namespace mullion::cli::page
