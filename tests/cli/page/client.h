#pragma once

// A page's server that runs for one test, and a small HTTP client of the tests' own (RFC 9112), so
// that requests can be as wrong as they like.

#include <sys/types.h>

#include <map>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

namespace page_test {

using Json = nlohmann::json;

struct Response {
  int status = 0;                              // 0: the connection ended without an answer
  std::map<std::string, std::string> headers;  // names in lower case
  std::string body;

  Json json() const { return Json::parse(body); }
};

// A connection to 127.0.0.1 that is closed at the end.
class Connection {
 public:
  explicit Connection(int port);
  ~Connection();
  Connection(const Connection&) = delete;
  Connection& operator=(const Connection&) = delete;

  bool is_open() const { return socket_ >= 0; }
  void send(const std::string& bytes) const;
  // What comes within that time, until the other side closes, or until the text has come.
  std::string receive(double seconds, const std::string& until = "") const;
  // Whether the other side closes it within that time.
  bool ends_within(double seconds) const;

 private:
  int socket_ = -1;
};

using Headers = std::vector<std::pair<std::string, std::string>>;

class Served {
 public:
  // Starts `mullion open WHAT --no-browser` with these further words, and waits for its address.
  // `most_descriptors` is the limit that it begins with; 0: the usual one.
  explicit Served(const std::string& what, std::vector<std::string> words = {},
                  int most_descriptors = 0);
  ~Served();
  Served(const Served&) = delete;
  Served& operator=(const Served&) = delete;

  int port() const { return port_; }
  const std::string& key() const { return key_; }
  std::string said() const;  // on standard output
  pid_t process() const { return child_; }
  int end(int signal);         // exit status; 128 + signal where that ended it
  std::size_t memory() const;  // resident, in bytes (proc(5), VmRSS)

  // With the cookie, and for all but GET and HEAD with the page's origin.
  Response get(const std::string& path) const;
  Response post(const std::string& path, const std::string& body) const;
  Response post(const std::string& path, const Json& body) const { return post(path, body.dump()); }
  // As it is: neither cookie nor origin are added.
  Response ask(const std::string& method, const std::string& path, const Headers& headers,
               const std::string& body = "") const;

  std::string host() const { return "127.0.0.1:" + std::to_string(port_); }
  std::string cookie() const { return cookie_; }

 private:
  std::string out_;
  pid_t child_ = -1;
  int port_ = 0;
  std::string key_, cookie_;
};

Response parse(const std::string& bytes, bool has_body = true);

// A folder with a job "one", another "sub/two", and a picture.
std::string folder_of_jobs(const std::string& name);
std::string job_text(const std::string& title);

template <class Condition>
bool within(double seconds, const Condition& condition);

}  // namespace page_test

#include <chrono>
#include <thread>

template <class Condition>
bool page_test::within(double seconds, const Condition& condition) {
  using namespace std::chrono;
  const auto end = steady_clock::now() + duration<double>(seconds);
  do {
    if (condition()) return true;
    std::this_thread::sleep_for(milliseconds(20));
  } while (steady_clock::now() < end);
  return false;
}
