#pragma once

// What a code that the program prints means, why a framer cares, and what to do about it.

#include <string_view>

#include "engine/xml/problem.h"

namespace mullion {

struct Explanation {
  std::string_view code;
  Severity severity;
  std::string_view summary;  // one line, without a full stop
  std::string_view reason;   // why it matters: whole sentences
  std::string_view advice;   // what to do: whole sentences
};

}  // namespace mullion
