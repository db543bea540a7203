#pragma once

// An HTTP server on this machine alone: it listens on 127.0.0.1 (RFC 1122, 3.2.1.3). A thin shell:
// every request becomes a value that the handler answers.
//
// A request that is slow, too long or broken is refused or dropped, and does not keep others from
// being served. Where descriptors run out the listener pauses until some are free again.

#include <memory>
#include <string>
#include <string_view>

#include "cli/page/http.h"

struct event_base;

namespace mullion::cli::page {

inline constexpr std::size_t largest_body = 100u << 20;  // an image

class Server {
 public:
  // Port 0 takes a free one. Throws std::runtime_error where it cannot listen.
  Server(event_base* events, int port);
  ~Server();

  int port() const;
  void answers_by(Handler handler);

  // To all who listen to a stream of that topic. `data` is one line.
  void tell(const std::string& topic, std::string_view event, std::string_view data);
  bool has_listeners(const std::string& topic) const;

 private:
  struct State;
  std::unique_ptr<State> state_;
};

}  // namespace mullion::cli::page
