#include "cli/page/gate.h"

#include <sys/random.h>

#include <array>
#include <cerrno>
#include <stdexcept>

namespace mullion::cli::page {
namespace {

constexpr std::size_t key_bytes = 16;

// Takes as long wherever the texts differ.
bool same(const std::string& a, const std::string& b) {
  if (a.size() != b.size()) return false;
  unsigned differ = 0;
  for (std::size_t i = 0; i < a.size(); ++i) differ |= static_cast<unsigned char>(a[i] ^ b[i]);
  return differ == 0;
}

Reply refused(const std::string& why) {
  return {403, "text/html; charset=utf-8",
          "<!DOCTYPE html><html lang=\"en\"><meta charset=\"utf-8\"><title>mullion</title><p>" +
              why + "</p></html>\n"};
}

// The value of one cookie (RFC 6265, 4.2.1).
std::string cookie_of(const std::string& header, const std::string& name) {
  std::size_t at = 0;
  while (at < header.size()) {
    const std::size_t end = std::min(header.find(';', at), header.size());
    const std::string one = header.substr(at, end - at);
    if (one.starts_with(name + "=")) return one.substr(name.size() + 1);
    at = end + 1;
    while (at < header.size() && header[at] == ' ') ++at;
  }
  return {};
}

}  // namespace

std::string random_key() {
  constexpr char digits[] = "0123456789abcdef";
  std::array<unsigned char, key_bytes> bytes;
  std::size_t filled = 0;
  while (filled < bytes.size()) {
    const ssize_t got = ::getrandom(bytes.data() + filled, bytes.size() - filled, 0);
    if (got < 0 && errno != EINTR) throw std::runtime_error("the system gives no random numbers");
    if (got > 0) filled += static_cast<std::size_t>(got);
  }
  std::string key;
  for (const unsigned char byte : bytes) {
    key += digits[byte / 16];
    key += digits[byte % 16];
  }
  return key;
}

std::string Gate::address() const {
  return "http://127.0.0.1:" + std::to_string(port_) + "/?key=" + key_;
}

bool Gate::is_ours(const std::string& host) const {
  const std::string end = ":" + std::to_string(port_);
  return host == "127.0.0.1" + end || host == "localhost" + end;
}

bool Gate::has_pass(const Request& request) const {
  return same(cookie_of(request.header("cookie"), cookie()), pass_);
}

std::optional<Reply> Gate::stops(const Request& request) const {
  const std::string& host = request.header("host");
  if (!is_ours(host)) return refused("This page is for this machine alone.");
  const std::string& origin = request.header("origin");
  if (request.headers.contains("origin") && origin != "http://" + host) {
    return refused("This page answers no other page.");
  }
  const std::string& site = request.header("sec-fetch-site");
  if (!site.empty() && site != "same-origin" && site != "none") {
    return refused("This page answers no other page.");
  }
  if (!request.reads() && origin.empty()) {
    return refused("A change is taken from the page alone; it names its origin.");
  }
  const std::string& key = request.asked("key");
  if (request.path.empty() && request.reads() && !key.empty() && same(key, key_)) {
    const std::string& job = request.asked("job");
    return Reply{303,
                 "text/plain",
                 "",
                 {{"Location", job.empty() ? "/" : "/#job=" + percent_encoded(job)},
                  {"Set-Cookie", cookie() + "=" + pass_ + "; Path=/; HttpOnly; SameSite=Strict"}}};
  }
  if (has_pass(request)) return std::nullopt;
  return refused("Open the address that stands in the terminal where mullion was started.");
}

}  // namespace mullion::cli::page
