#pragma once

// Until when a client has to have sent a request: one that sends it drop by drop never stands
// still, and would keep its connection for ever.

#include <sys/types.h>

#include <chrono>
#include <map>
#include <optional>

struct bufferevent;
struct evbuffer;
struct evbuffer_cb_info;

namespace mullion::cli::page {

class Deadlines {
 public:
  using Clock = std::chrono::steady_clock;

  explicit Deadlines(Clock::duration most) : most_(most) {}
  Deadlines(const Deadlines&) = delete;
  Deadlines& operator=(const Deadlines&) = delete;

  // A connection before its first byte. It may be freed at any time; this must outlive it.
  void watch(bufferevent* connection);
  // A whole request has come; the next one begins with its first byte.
  void is_complete(bufferevent* connection);
  // Ends those whose request is not whole in time.
  void look();

 private:
  // What is known of a connection by the buffer that it reads into. One that was freed is found by
  // its socket, which is another one then, or its buffer's address is taken by the next.
  struct Watched {
    bufferevent* connection = nullptr;       // for its own callback alone
    std::optional<Clock::time_point> begun;  // the request that is not whole yet
    int socket = -1;
    ino_t inode = 0;
  };

  static void on_bytes(evbuffer* buffer, const evbuffer_cb_info* info, void* self);

  Clock::duration most_;
  std::map<const evbuffer*, Watched> watched_;
};

}  // namespace mullion::cli::page
