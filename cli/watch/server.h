#pragma once

// A server for one page and its files, on this machine alone: it listens on 127.0.0.1 (RFC 1122,
// 3.2.1.3), answers GET and HEAD, and refuses requests that name another host, so that no other
// site's page can read from it.

#include <functional>
#include <memory>
#include <string>

struct event_base;

namespace mullion::cli::watch {

struct Reply {
  int status = 200;
  std::string type, body;
};

class Server {
 public:
  using Answer = std::function<Reply(const std::string& path)>;

  // Port 0 takes a free one. Throws std::runtime_error where it cannot listen.
  Server(event_base* events, int port, Answer answer);
  ~Server();

  int port() const;

 private:
  struct State;
  std::unique_ptr<State> state_;
};

}  // namespace mullion::cli::watch
