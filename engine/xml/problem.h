#pragma once

// What is wrong with an input, as a value: where, what was found, what was expected.

#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <vector>

namespace mullion {

// A place in a text file. Line and column count from 1; zero means "no place".
struct Place {
  int line = 0;
  int column = 0;

  friend bool operator==(const Place&, const Place&) = default;
};

enum class Severity { error, warning, note };

// "error", "warning" or "note".
std::string_view word_for(Severity severity);

struct Problem {
  Severity severity = Severity::error;
  std::string code;     // short and stable, such as "job-unknown-element"
  std::string message;  // a whole sentence without a full stop
  Place place;
  std::string file;
};

using Problems = std::vector<Problem>;

template <class T>
using Result = tl::expected<T, Problems>;

// "file:line:column: error: message [code]", leaving out what is not known.
std::string to_string(const Problem& problem);

// The candidate nearest to `word` by edit distance, when it is near enough to be a likely slip;
// else an empty view.
std::string_view near_name(std::string_view word, const std::vector<std::string_view>& candidates);

}  // namespace mullion
