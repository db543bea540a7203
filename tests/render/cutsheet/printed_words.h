#pragma once

// Lengths and numbers in printed sentences.

#include <optional>
#include <regex>
#include <string>
#include <vector>

#include "engine/length/format.h"

namespace printed {

// A regular expression in which "~" stands for a length and "#" for a list of numbers, each of them
// a group.
std::regex pattern(const std::string& text);

std::optional<std::smatch> found(const std::string& text, const std::regex& what);
bool has(const std::string& text, const char* words);

// Whether the text holds it; then `take` gets it.
template <class Take>
bool taken(const std::string& text, const std::regex& what, const Take& take) {
  const auto match = found(text, what);
  if (match) take(*match);
  return match.has_value();
}

template <class Take>
void each(const std::string& text, const std::regex& what, const Take& take) {
  for (std::sregex_iterator at(text.begin(), text.end(), what), end; at != end; ++at) take(*at);
}

std::vector<int> numbers_of(const std::string& list);
mullion::Length length_of(const std::string& text);
std::string text_of(mullion::Length length);

}  // namespace printed
