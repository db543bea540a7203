#include "cli/page/workers.h"

#include <event2/event.h>
#include <sys/eventfd.h>
#include <unistd.h>

#include <stdexcept>
#include <utility>

namespace mullion::cli::page {
namespace {

constexpr std::size_t most_waiting = 64;

}  // namespace

Workers::Workers(event_base* events, int threads)
    : bell_(::eventfd(0, EFD_CLOEXEC | EFD_NONBLOCK)) {
  if (bell_ < 0) throw std::runtime_error("cannot make an eventfd");
  rings_ = event_new(
      events, bell_, EV_READ | EV_PERSIST,
      [](evutil_socket_t, short, void* self) { static_cast<Workers*>(self)->take_back(); }, this);
  event_add(rings_, nullptr);
  for (int i = 0; i < threads; ++i) threads_.emplace_back([this] { run(); });
}

Workers::~Workers() {
  {
    const std::lock_guard lock(mutex_);
    ends_ = true;
    waiting_.clear();
    for (const auto& halt : running_) halt->now();
  }
  wake_.notify_all();
  for (std::thread& thread : threads_) thread.join();
  event_free(rings_);
  ::close(bell_);
}

bool Workers::busy() const {
  const std::lock_guard lock(mutex_);
  return waiting_.size() >= most_waiting;
}

std::shared_ptr<Halt> Workers::begin(std::function<Then(Halt&)> work) {
  auto halt = std::make_shared<Halt>();
  {
    const std::lock_guard lock(mutex_);
    waiting_.push_back({halt, std::move(work)});
  }
  wake_.notify_one();
  return halt;
}

void Workers::run() {
  std::unique_lock lock(mutex_);
  for (;;) {
    wake_.wait(lock, [this] { return ends_ || !waiting_.empty(); });
    if (ends_) return;
    Task task = std::move(waiting_.front());
    waiting_.pop_front();
    running_.insert(task.halt);
    lock.unlock();
    Then then = task.work(*task.halt);
    task.work = nullptr;
    lock.lock();
    running_.erase(task.halt);
    done_.push_back(std::move(then));
    const std::uint64_t one = 1;
    [[maybe_unused]] const ssize_t rung = ::write(bell_, &one, sizeof one);
  }
}

void Workers::take_back() {
  std::uint64_t count = 0;
  [[maybe_unused]] const ssize_t heard = ::read(bell_, &count, sizeof count);
  std::vector<Then> done;
  {
    const std::lock_guard lock(mutex_);
    done.swap(done_);
  }
  for (const Then& then : done) {
    if (then) then();
  }
}

}  // namespace mullion::cli::page
