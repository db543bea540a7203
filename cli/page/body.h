#pragma once

// What a request brings along in JSON.

#include "cli/page/http.h"
#include "cli/page/state.h"

namespace mullion::cli::page {

inline constexpr std::size_t largest_edit = 1u << 20;  // bytes

// An object, else the reply that refuses it.
tl::expected<Json, Reply> body_of(const Request& request);

// The usual value where there is none of that kind.
std::string text_in(const Json& body, const char* name, const std::string& usual = "");
int number_in(const Json& body, const char* name, int usual);

}  // namespace mullion::cli::page
