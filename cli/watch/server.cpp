#include "cli/watch/server.h"

#include <arpa/inet.h>
#include <event2/buffer.h>
#include <event2/http.h>
#include <netinet/in.h>
#include <sys/socket.h>

#include <stdexcept>

namespace mullion::cli::watch {
namespace {

constexpr int seconds_for_a_request = 20;
constexpr int most_header_bytes = 8 * 1024;
constexpr int most_body_bytes = 1024;
constexpr const char* loopback = "127.0.0.1";

int port_of(evutil_socket_t socket) {
  sockaddr_in address{};
  socklen_t size = sizeof address;
  if (::getsockname(socket, reinterpret_cast<sockaddr*>(&address), &size) != 0) return 0;
  return ntohs(address.sin_port);
}

}  // namespace

struct Server::State {
  evhttp* http = nullptr;
  int port = 0;
  Answer answer;

  ~State() {
    if (http != nullptr) evhttp_free(http);
  }

  bool is_ours(const char* host) const {
    const std::string name = host == nullptr ? "" : host, end = ":" + std::to_string(port);
    return name == loopback + end || name == "localhost" + end;
  }

  Reply reply_to(evhttp_request* request) const {
    const char* host = evhttp_find_header(evhttp_request_get_input_headers(request), "Host");
    if (!is_ours(host)) return {403, "text/plain", "This page is for this machine alone.\n"};
    const evhttp_uri* uri = evhttp_request_get_evhttp_uri(request);
    const char* path = uri == nullptr ? nullptr : evhttp_uri_get_path(uri);
    return answer(path == nullptr ? "" : path);
  }

  static void on_request(evhttp_request* request, void* self) {
    const Reply reply = static_cast<const State*>(self)->reply_to(request);
    evkeyvalq* headers = evhttp_request_get_output_headers(request);
    evhttp_add_header(headers, "Content-Type", reply.type.c_str());
    evhttp_add_header(headers, "Cache-Control", "no-store");
    evhttp_add_header(headers, "X-Content-Type-Options", "nosniff");
    evhttp_add_header(headers, "Content-Security-Policy",
                      "default-src 'self' data:; script-src 'self' 'unsafe-inline'; "
                      "style-src 'self' 'unsafe-inline'; frame-ancestors 'self'");
    evbuffer* body = evbuffer_new();
    evbuffer_add(body, reply.body.data(), reply.body.size());
    evhttp_send_reply(request, reply.status, nullptr, body);
    evbuffer_free(body);
  }
};

Server::Server(event_base* events, int port, Answer answer) : state_(std::make_unique<State>()) {
  state_->answer = std::move(answer);
  state_->http = evhttp_new(events);
  if (state_->http == nullptr) throw std::runtime_error("cannot start a server");
  evhttp_set_timeout(state_->http, seconds_for_a_request);
  evhttp_set_max_headers_size(state_->http, most_header_bytes);
  evhttp_set_max_body_size(state_->http, most_body_bytes);
  evhttp_set_allowed_methods(state_->http, EVHTTP_REQ_GET | EVHTTP_REQ_HEAD);
  evhttp_bound_socket* bound =
      evhttp_bind_socket_with_handle(state_->http, loopback, static_cast<std::uint16_t>(port));
  if (bound == nullptr) {
    throw std::runtime_error("cannot listen on port " + std::to_string(port) +
                             "; is another program there?");
  }
  state_->port = port_of(evhttp_bound_socket_get_fd(bound));
  evhttp_set_gencb(state_->http, State::on_request, state_.get());
}

Server::~Server() = default;

int Server::port() const {
  return state_->port;
}

}  // namespace mullion::cli::watch
