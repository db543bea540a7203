#include "engine/xml/reading.h"

#include <algorithm>

namespace mullion {
namespace {

std::string_view without_byte_order_mark(std::string_view text) {
  constexpr std::string_view mark = "\xEF\xBB\xBF";
  if (text.starts_with(mark)) text.remove_prefix(mark.size());
  return text;
}

}  // namespace

Reading::Reading(std::string_view text, std::string file, std::string_view root_name,
                 std::size_t most)
    : source(without_byte_order_mark(text)), root(root_name), file_(std::move(file)), most_(most) {}

void Reading::problem(std::size_t offset, std::string code, std::string message) {
  if (full()) {
    ++unlisted_;
    return;
  }
  problems_.push_back(
      {Severity::error, of_root(std::move(code)), std::move(message), source.place(offset), file_});
}

void Reading::note(std::size_t offset, std::string code, std::string message) {
  if (notes_.size() == most_) return;
  notes_.push_back(
      {Severity::note, of_root(std::move(code)), std::move(message), source.place(offset), file_});
}

std::string Reading::of_root(std::string code) const {
  if (root != "job" && code.starts_with("job-")) code.replace(0, 3, root);
  return code;
}

bool Reading::full() const {
  return problems_.size() == most_;
}

Problems Reading::problems() const {
  Problems out = problems_;
  std::stable_sort(out.begin(), out.end(), [](const Problem& a, const Problem& b) {
    return std::pair(a.place.line, a.place.column) < std::pair(b.place.line, b.place.column);
  });
  if (unlisted_ > 0) {
    out.push_back({Severity::note,
                   root + "-more-problems",
                   "problems not listed: " + std::to_string(unlisted_),
                   {},
                   file_});
  }
  return out;
}

std::string alternatives(const std::vector<std::string_view>& words) {
  std::string out;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) out += i + 1 == words.size() ? " or " : ", ";
    out += quoted(words[i]);
  }
  return out;
}

std::string Reading::hint(std::string_view found,
                          const std::vector<std::string_view>& candidates) const {
  if (full()) return {};  // nobody will read it
  constexpr std::size_t few = 24;
  const std::string_view near = near_name(found, candidates);
  if (!near.empty()) return "; did you mean " + quoted(near) + "?";
  if (candidates.empty() || candidates.size() > few) return {};
  return "; expected " + alternatives(candidates);
}

std::string quoted(std::string_view text) {
  constexpr std::size_t longest = 60;
  std::size_t end = 0;
  for (std::size_t n = 0; end < text.size() && n < longest; ++n) {
    const auto c = first_code_point(text.substr(end));
    end += c ? c->bytes : 1;
  }
  return "\"" + std::string(text.substr(0, end)) + (end < text.size() ? "..." : "") + "\"";
}

}  // namespace mullion
