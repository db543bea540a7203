#pragma once

// Requests and replies of the page's server as values.

#include <functional>
#include <map>
#include <memory>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace mullion::cli::page {

class Halt;

enum class Method { get, head, post, remove };

struct Request {
  Method method = Method::get;
  std::vector<std::string> path;                            // decoded, part by part
  std::map<std::string, std::string, std::less<>> query;    // decoded
  std::map<std::string, std::string, std::less<>> headers;  // names in lower case
  std::string body;

  bool reads() const { return method == Method::get || method == Method::head; }
  // Empty where there is none.
  const std::string& header(std::string_view name) const;
  const std::string& asked(std::string_view name) const;
};

struct Reply {
  int status = 200;
  std::string type = "application/json";
  std::string body;
  std::vector<std::pair<std::string, std::string>> headers{};
};

// Work that takes its time, for another thread. It looks at the halt now and then, or gives it the
// child process that works.
struct Later {
  std::function<Reply(Halt&)> work;
};

// A stream of events about one thing (text/event-stream, HTML Living Standard, 9.2).
struct Stream {
  std::string topic;
};

using Answer = std::variant<Reply, Later, Stream>;
using Handler = std::function<Answer(const Request&)>;

// Parts between the slashes of a path as it stands in an address, each decoded; nothing where an
// escape is broken or stands for a zero byte.
bool decode_path(std::string_view raw, std::vector<std::string>& parts);
std::string percent_encoded(std::string_view text);

}  // namespace mullion::cli::page
