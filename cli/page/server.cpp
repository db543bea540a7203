#include "cli/page/server.h"

#include <arpa/inet.h>
#include <dirent.h>
#include <event2/buffer.h>
#include <event2/bufferevent.h>
#include <event2/event.h>
#include <event2/http.h>
#include <event2/http_struct.h>
#include <event2/keyvalq_struct.h>
#include <event2/listener.h>
#include <netinet/in.h>
#include <netinet/tcp.h>
#include <sys/resource.h>
#include <sys/socket.h>

#include <algorithm>
#include <cctype>
#include <map>
#include <set>
#include <stdexcept>

#include "cli/page/deadlines.h"
#include "cli/page/gate.h"
#include "cli/page/workers.h"

namespace mullion::cli::page {
namespace {

constexpr int seconds_for_a_request = 10;               // without a byte
constexpr std::chrono::seconds most_for_a_request{20};  // in all
constexpr int seconds_for_a_stream = 24 * 3600;
constexpr int most_header_bytes = 16 * 1024;
constexpr int threads = 3;
constexpr std::size_t most_streams = 64;
constexpr std::size_t most_connections = 600;
constexpr std::size_t reserve = 24;  // descriptors, for files and child processes
constexpr timeval pause_of_the_listener{0, 200'000};
constexpr timeval between_heartbeats{5, 0};
constexpr timeval between_looks_at_deadlines{1, 0};
constexpr int backlog = 512;

int port_of(evutil_socket_t socket) {
  sockaddr_in address{};
  socklen_t size = sizeof address;
  if (::getsockname(socket, reinterpret_cast<sockaddr*>(&address), &size) != 0) return 0;
  return ntohs(address.sin_port);
}

std::size_t descriptors_in_use() {
  DIR* folder = ::opendir("/proc/self/fd");
  if (folder == nullptr) return most_connections + reserve;
  std::size_t count = 0;
  while (::readdir(folder) != nullptr) ++count;
  ::closedir(folder);
  return count;
}

std::size_t most_descriptors() {
  rlimit limit{};
  const bool known = ::getrlimit(RLIMIT_NOFILE, &limit) == 0;
  const std::size_t most = known ? limit.rlim_cur : 64;
  return std::min(most, most_connections + reserve) - std::min(most / 2, reserve);
}

// What a reply in JSON says of a request that never reached a handler.
std::string problem_text(const char* code, const char* message) {
  return std::string("{\"problems\":[{\"severity\":\"error\",\"code\":\"") + code +
         "\",\"message\":\"" + message + "\"}]}";
}

}  // namespace

struct Server::State {
  // A request whose answer is still to come. Its connection may close meanwhile.
  struct Pending {
    State* server = nullptr;
    evhttp_request* request = nullptr;
    Method method = Method::get;
    std::shared_ptr<Halt> halt;
  };
  struct Listener {
    State* server = nullptr;
    evhttp_request* request = nullptr;
    std::string topic;
  };

  event_base* events = nullptr;
  evhttp* http = nullptr;
  evconnlistener* listener = nullptr;
  event* resume = nullptr;
  event* heartbeat = nullptr;
  event* deadline = nullptr;
  int port = 0;
  std::size_t limit = most_descriptors();
  Handler handler;
  Deadlines deadlines{most_for_a_request};
  std::set<std::unique_ptr<Pending>> pending;
  std::set<std::unique_ptr<Listener>> listeners;
  std::unique_ptr<Workers> workers;

  ~State() {
    workers.reset();
    for (const auto& one : pending) forget_closing(one->request);
    for (const auto& one : listeners) forget_closing(one->request);
    if (http != nullptr) evhttp_free(http);
    if (resume != nullptr) event_free(resume);
    if (heartbeat != nullptr) event_free(heartbeat);
    if (deadline != nullptr) event_free(deadline);
  }

  static void forget_closing(evhttp_request* request) {
    if (request == nullptr) return;
    evhttp_connection* connection = evhttp_request_get_connection(request);
    if (connection != nullptr) evhttp_connection_set_closecb(connection, nullptr, nullptr);
  }

  // --- connections ---------------------------------------------------------------------------

  void pause() {
    evconnlistener_disable(listener);
    event_add(resume, &pause_of_the_listener);
  }

  static bufferevent* on_connection(event_base* events, void* self) {
    auto* server = static_cast<State*>(self);
    if (descriptors_in_use() > server->limit) server->pause();
    bufferevent* connection = bufferevent_socket_new(events, -1, 0);
    if (connection != nullptr) server->deadlines.watch(connection);
    return connection;
  }

  static void on_accept_error(evconnlistener*, void* self) { static_cast<State*>(self)->pause(); }

  static void on_resume(evutil_socket_t, short, void* self) {
    auto* server = static_cast<State*>(self);
    if (descriptors_in_use() <= server->limit) {
      evconnlistener_enable(server->listener);
    } else {
      event_add(server->resume, &pause_of_the_listener);
    }
  }

  static void on_deadline(evutil_socket_t, short, void* self) {
    static_cast<State*>(self)->deadlines.look();
  }

  static void on_heartbeat(evutil_socket_t, short, void* self) {
    for (const auto& one : static_cast<State*>(self)->listeners) send_chunk(one->request, ":\n\n");
  }

  // --- requests ------------------------------------------------------------------------------

  static void fill_map(const evkeyvalq* from, bool lower,
                       std::map<std::string, std::string, std::less<>>& to) {
    for (const evkeyval* one = from->tqh_first; one != nullptr; one = one->next.tqe_next) {
      std::string name = one->key;
      if (lower) {
        std::transform(name.begin(), name.end(), name.begin(),
                       [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
      }
      to.emplace(std::move(name), one->value);
    }
  }

  static bool read_request(evhttp_request* request, Request& out) {
    switch (evhttp_request_get_command(request)) {
      case EVHTTP_REQ_GET:
        out.method = Method::get;
        break;
      case EVHTTP_REQ_HEAD:
        out.method = Method::head;
        break;
      case EVHTTP_REQ_POST:
        out.method = Method::post;
        break;
      default:
        out.method = Method::remove;
    }
    fill_map(evhttp_request_get_input_headers(request), true, out.headers);
    const evhttp_uri* uri = evhttp_request_get_evhttp_uri(request);
    const char* path = uri == nullptr ? nullptr : evhttp_uri_get_path(uri);
    if (path == nullptr || !decode_path(path, out.path)) return false;
    if (const char* query = evhttp_uri_get_query(uri)) {
      evkeyvalq pairs{};
      if (evhttp_parse_query_str(query, &pairs) != 0) return false;
      fill_map(&pairs, false, out.query);
      evhttp_clear_headers(&pairs);
    }
    evbuffer* body = evhttp_request_get_input_buffer(request);
    out.body.resize(evbuffer_get_length(body));
    evbuffer_remove(body, out.body.data(), out.body.size());
    return true;
  }

  static void on_request(evhttp_request* request, void* self) {
    auto* server = static_cast<State*>(self);
    server->deadlines.is_complete(
        evhttp_connection_get_bufferevent(evhttp_request_get_connection(request)));
    Request asked;
    if (!read_request(request, asked)) {
      send(request, Method::get,
           {400, "application/json",
            problem_text("page-address", "found an address that cannot be read")});
      return;
    }
    const Method method = asked.method;
    Answer answer = server->handler(asked);
    if (const auto* reply = std::get_if<Reply>(&answer)) return send(request, method, *reply);
    if (const auto* stream = std::get_if<Stream>(&answer)) {
      return server->open_stream(request, method, stream->topic);
    }
    server->work_on(request, method, std::move(std::get<Later>(answer)));
  }

  static void add_headers(evhttp_request* request, const Reply& reply) {
    evkeyvalq* headers = evhttp_request_get_output_headers(request);
    evhttp_add_header(headers, "Content-Type", reply.type.c_str());
    evhttp_add_header(headers, "Cache-Control", "no-store");
    evhttp_add_header(headers, "X-Content-Type-Options", "nosniff");
    evhttp_add_header(headers, "Referrer-Policy", "no-referrer");
    evhttp_add_header(headers, "Cross-Origin-Resource-Policy", "same-origin");
    bool has_policy = false;
    for (const auto& [name, value] : reply.headers) {
      evhttp_add_header(headers, name.c_str(), value.c_str());
      has_policy = has_policy || name == "Content-Security-Policy";
    }
    if (!has_policy) evhttp_add_header(headers, "Content-Security-Policy", page_policy);
  }

  static void send(evhttp_request* request, Method method, const Reply& reply) {
    add_headers(request, reply);
    evbuffer* body = evbuffer_new();
    if (method == Method::head) {
      evhttp_add_header(evhttp_request_get_output_headers(request), "Content-Length",
                        std::to_string(reply.body.size()).c_str());
    } else {
      evbuffer_add(body, reply.body.data(), reply.body.size());
    }
    evhttp_send_reply(request, reply.status, nullptr, body);
    evbuffer_free(body);
  }

  // --- what comes later ----------------------------------------------------------------------

  template <class Set>
  static auto find_in(Set& set, const void* one) {
    return std::find_if(set.begin(), set.end(),
                        [one](const auto& held) { return held.get() == one; });
  }

  void work_on(evhttp_request* request, Method method, Later later) {
    if (workers->busy()) {
      return send(request, method,
                  {503, "application/json",
                   problem_text("page-busy", "too much is asked for at once; try again")});
    }
    auto held = std::make_unique<Pending>(Pending{this, request, method, nullptr});
    Pending* waits = held.get();
    pending.insert(std::move(held));
    evhttp_connection_set_closecb(
        evhttp_request_get_connection(request),
        [](evhttp_connection*, void* one) {
          auto* gone = static_cast<Pending*>(one);
          gone->request = nullptr;
          if (gone->halt) gone->halt->now();
        },
        waits);
    waits->halt = workers->begin([this, waits, work = std::move(later.work)](Halt& halt) {
      auto reply = std::make_shared<Reply>(work(halt));
      return [this, waits, reply] { finish(waits, *reply); };
    });
  }

  void finish(Pending* waits, const Reply& reply) {
    if (waits->request != nullptr) {
      forget_closing(waits->request);
      send(waits->request, waits->method, reply);
    }
    pending.erase(find_in(pending, waits));
  }

  // --- streams -------------------------------------------------------------------------------

  static void send_chunk(evhttp_request* request, std::string_view text) {
    evbuffer* chunk = evbuffer_new();
    evbuffer_add(chunk, text.data(), text.size());
    evhttp_send_reply_chunk(request, chunk);
    evbuffer_free(chunk);
  }

  void open_stream(evhttp_request* request, Method method, const std::string& topic) {
    if (listeners.size() >= most_streams) {
      return send(request, method,
                  {503, "application/json",
                   problem_text("page-busy", "too many pages listen; close some of them")});
    }
    if (method == Method::head) return send(request, method, {200, "text/event-stream", ""});
    add_headers(request, {200, "text/event-stream", ""});
    auto held = std::make_unique<Listener>(Listener{this, request, topic});
    evhttp_connection* connection = evhttp_request_get_connection(request);
    evhttp_connection_set_timeout(connection, seconds_for_a_stream);
    evhttp_connection_set_closecb(
        connection,
        [](evhttp_connection*, void* one) {
          auto* gone = static_cast<Listener*>(one);
          gone->server->listeners.erase(find_in(gone->server->listeners, gone));
        },
        held.get());
    listeners.insert(std::move(held));
    evhttp_send_reply_start(request, 200, "OK");
    send_chunk(request, ":\n\n");
  }
};

Server::Server(event_base* events, int port) : state_(std::make_unique<State>()) {
  State* state = state_.get();
  state->events = events;
  state->http = evhttp_new(events);
  if (state->http == nullptr) throw std::runtime_error("cannot start a server");
  evhttp_set_timeout(state->http, seconds_for_a_request);
  evhttp_set_max_headers_size(state->http, most_header_bytes);
  evhttp_set_max_body_size(state->http, static_cast<ev_ssize_t>(largest_body));
  evhttp_set_allowed_methods(
      state->http, EVHTTP_REQ_GET | EVHTTP_REQ_HEAD | EVHTTP_REQ_POST | EVHTTP_REQ_DELETE);
  sockaddr_in address{};
  address.sin_family = AF_INET;
  address.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
  address.sin_port = htons(static_cast<std::uint16_t>(port));
  state->listener = evconnlistener_new_bind(
      events, nullptr, nullptr, LEV_OPT_CLOSE_ON_FREE | LEV_OPT_CLOSE_ON_EXEC | LEV_OPT_REUSEABLE,
      backlog, reinterpret_cast<sockaddr*>(&address), sizeof address);
  if (state->listener == nullptr || evhttp_bind_listener(state->http, state->listener) == nullptr) {
    throw std::runtime_error("cannot listen on port " + std::to_string(port) +
                             "; is another program there?");
  }
  const evutil_socket_t socket = evconnlistener_get_fd(state->listener);
  state->port = port_of(socket);
  const int at_once = 1;  // for the connections that it takes too: a reply waits for no other
  ::setsockopt(socket, IPPROTO_TCP, TCP_NODELAY, &at_once, sizeof at_once);
  evconnlistener_set_error_cb(state->listener, State::on_accept_error);
  state->resume = event_new(events, -1, 0, State::on_resume, state);
  state->heartbeat = event_new(events, -1, EV_PERSIST, State::on_heartbeat, state);
  event_add(state->heartbeat, &between_heartbeats);
  state->deadline = event_new(events, -1, EV_PERSIST, State::on_deadline, state);
  event_add(state->deadline, &between_looks_at_deadlines);
  evhttp_set_bevcb(state->http, State::on_connection, state);
  evhttp_set_gencb(state->http, State::on_request, state);
  state->workers = std::make_unique<Workers>(events, threads);
}

Server::~Server() = default;

int Server::port() const {
  return state_->port;
}

void Server::answers_by(Handler handler) {
  state_->handler = std::move(handler);
}

void Server::tell(const std::string& topic, std::string_view event, std::string_view data) {
  const std::string text = "event: " + std::string(event) + "\ndata: " + std::string(data) + "\n\n";
  for (const auto& one : state_->listeners) {
    if (one->topic == topic) State::send_chunk(one->request, text);
  }
}

bool Server::has_listeners(const std::string& topic) const {
  return std::any_of(state_->listeners.begin(), state_->listeners.end(),
                     [&](const auto& one) { return one->topic == topic; });
}

}  // namespace mullion::cli::page
