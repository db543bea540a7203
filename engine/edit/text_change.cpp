#include "engine/edit/text_change.h"

#include <algorithm>
#include <cstdint>

namespace mullion::edit {
namespace {

constexpr std::size_t surroundings = 48;  // bytes on each side; our own figure

bool is_inside_character(std::string_view text, std::size_t offset) {
  return offset < text.size() && (static_cast<unsigned char>(text[offset]) & 0xC0) == 0x80;
}

TextChanges joined_where_near(std::string_view text, const TextChanges& changes) {
  TextChanges out;
  for (const TextChange& change : changes) {
    if (!out.empty()) {
      TextChange& last = out.back();
      const std::size_t end = last.offset + last.removed.size();
      if (change.offset - end < 2 * surroundings) {
        const std::string between(text.substr(end, change.offset - end));
        last.removed += between + change.removed;
        last.inserted += between + change.inserted;
        continue;
      }
    }
    out.push_back(change);
  }
  return out;
}

// What a hunk expects to find, and where the change begins in it.
std::string expected(const Hunk& hunk) {
  return hunk.before + hunk.change.removed + hunk.after;
}

bool stands_at_its_offset(const Hunk& hunk, std::string_view text) {
  if (hunk.change.offset < hunk.before.size()) return false;
  const std::size_t begin = hunk.change.offset - hunk.before.size();
  return begin <= text.size() && text.substr(begin).starts_with(expected(hunk));
}

std::optional<std::size_t> only_place(const Hunk& hunk, std::string_view text) {
  const std::string wanted = expected(hunk);
  if (wanted.empty()) return std::nullopt;
  const std::size_t found = text.find(wanted);
  if (found == std::string_view::npos) return std::nullopt;
  if (text.find(wanted, found + 1) != std::string_view::npos) return std::nullopt;
  return found + hunk.before.size();
}

}  // namespace

std::optional<std::string> with_changes(std::string_view text, const TextChanges& changes) {
  std::string out;
  std::size_t at = 0;
  for (const TextChange& change : changes) {
    if (change.offset < at || change.offset > text.size()) return std::nullopt;
    if (!text.substr(change.offset).starts_with(change.removed)) return std::nullopt;
    out += text.substr(at, change.offset - at);
    out += change.inserted;
    at = change.offset + change.removed.size();
  }
  out += text.substr(at);
  return out;
}

TextChanges inverse(const TextChanges& changes) {
  TextChanges out;
  std::size_t grown = 0, shrunk = 0;  // by the changes so far
  for (const TextChange& change : changes) {
    out.push_back({change.offset + grown - shrunk, change.inserted, change.removed});
    grown += change.inserted.size();
    shrunk += change.removed.size();
  }
  return out;
}

Hunks hunks_of(std::string_view text, const TextChanges& changes) {
  Hunks out;
  for (const TextChange& change : joined_where_near(text, changes)) {
    std::size_t begin = change.offset - std::min(change.offset, surroundings);
    while (is_inside_character(text, begin)) --begin;
    const std::size_t after = change.offset + change.removed.size();
    std::size_t end = std::min(text.size(), after + surroundings);
    while (is_inside_character(text, end)) ++end;
    out.push_back({change, std::string(text.substr(begin, change.offset - begin)),
                   std::string(text.substr(after, end - after))});
  }
  return out;
}

Hunks inverse(const Hunks& hunks) {
  TextChanges changes;
  for (const Hunk& hunk : hunks) changes.push_back(hunk.change);
  const TextChanges back = inverse(changes);
  Hunks out;
  for (std::size_t i = 0; i < hunks.size(); ++i) {
    out.push_back({back[i], hunks[i].before, hunks[i].after});
  }
  return out;
}

std::optional<TextChanges> placed(const Hunks& hunks, std::string_view text) {
  TextChanges out;
  const bool unmoved = std::all_of(hunks.begin(), hunks.end(), [&](const Hunk& hunk) {
    return stands_at_its_offset(hunk, text);
  });
  std::size_t end = 0;
  for (const Hunk& hunk : hunks) {
    const auto offset = unmoved ? std::optional(hunk.change.offset) : only_place(hunk, text);
    if (!offset || *offset < end) return std::nullopt;
    out.push_back({*offset, hunk.change.removed, hunk.change.inserted});
    end = *offset + hunk.change.removed.size();
  }
  return out;
}

std::string fingerprint(std::string_view text) {
  std::uint64_t hash = 0xcbf29ce484222325u;
  for (const char c : text) {
    hash ^= static_cast<unsigned char>(c);
    hash *= 0x100000001b3u;
  }
  std::string out(16, '0');
  for (std::size_t i = 0; i < out.size(); ++i) {
    out[out.size() - 1 - i] = "0123456789abcdef"[(hash >> (4 * i)) & 0xF];
  }
  return out;
}

}  // namespace mullion::edit
