#pragma once

// Who may ask. The page is for the person at this machine who was told its address: the address
// holds a random key, which is exchanged for a cookie that no other site's page can send or read.
//
// Refused: a Host that is not this server's (a name that was rebound to this machine), an Origin or
// Sec-Fetch-Site of another page (Fetch Standard, 3.2 and "sec-fetch-site"), a change without an
// Origin, anything without the cookie. The page itself is given with a policy that runs no inline
// script (Content Security Policy Level 3).

#include <optional>
#include <string>

#include "cli/page/http.h"

namespace mullion::cli::page {

// 32 hexadecimal digits: 128 bits from the system's source. Throws std::runtime_error.
std::string random_key();

class Gate {
 public:
  Gate() : key_(random_key()), pass_(random_key()) {}

  void stands_at(int port) { port_ = port; }
  std::string address() const;  // with the key

  // The reply to a request that may not go on, or that brings the key.
  std::optional<Reply> stops(const Request& request) const;

 private:
  bool is_ours(const std::string& host) const;
  bool has_pass(const Request& request) const;
  std::string cookie() const { return "mullion-" + std::to_string(port_); }

  std::string key_, pass_;
  int port_ = 0;
};

// Headers that every reply has.
inline constexpr const char* page_policy =
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; "
    "font-src 'self'; connect-src 'self'; frame-src 'self'; object-src 'self'; base-uri 'none'; "
    "form-action 'none'; frame-ancestors 'self'";
// Of a document that a job was made into: it runs nothing and is no part of the page.
inline constexpr const char* document_policy =
    "sandbox; default-src 'none'; style-src 'unsafe-inline'; img-src data:; frame-ancestors 'self'";

}  // namespace mullion::cli::page
