#include "engine/xml/problem.h"

#include <algorithm>
#include <numeric>

namespace mullion {
namespace {

// Letters left out, put in, changed, or swapped with their neighbour: each counts as one.
std::size_t edit_distance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> before(b.size() + 1), last(b.size() + 1), row(b.size() + 1);
  std::iota(row.begin(), row.end(), std::size_t{0});
  for (std::size_t i = 1; i <= a.size(); ++i) {
    before.swap(last);
    last.swap(row);
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t changed = last[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
      row[j] = std::min({last[j] + 1, row[j - 1] + 1, changed});
      const bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
      if (swapped) row[j] = std::min(row[j], before[j - 2] + 1);
    }
  }
  return row[b.size()];
}

}  // namespace

std::string_view word_for(Severity severity) {
  switch (severity) {
    case Severity::error:
      return "error";
    case Severity::warning:
      return "warning";
    case Severity::note:
      return "note";
  }
  return "error";
}

std::string to_string(const Problem& problem) {
  std::string out;
  if (!problem.file.empty()) out += problem.file + ":";
  if (problem.place.line > 0) {
    out += std::to_string(problem.place.line) + ":" + std::to_string(problem.place.column) + ":";
  }
  if (!out.empty()) out += " ";
  out += word_for(problem.severity);
  out += ": " + problem.message;
  if (!problem.code.empty()) out += " [" + problem.code + "]";
  return out;
}

std::string_view near_name(std::string_view word, const std::vector<std::string_view>& candidates) {
  constexpr std::size_t longest_word = 64;
  if (word.size() > longest_word) return {};
  std::string_view best;
  std::size_t best_distance = std::max<std::size_t>(1, word.size() / 3) + 1;
  for (const std::string_view candidate : candidates) {
    if (candidate.size() > longest_word) continue;
    const std::size_t distance = edit_distance(word, candidate);
    if (distance < best_distance) {
      best_distance = distance;
      best = candidate;
    }
  }
  return best;
}

}  // namespace mullion
