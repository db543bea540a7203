#pragma once

// Changes of a text as values: what stands at an offset and what comes in its place.
//
// The changes of a list are sorted by offset and do not overlap; every offset is one of the text
// before any of them. They know what they take away, so that the inverse is exact, and a text on
// which something else stands is refused.

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace mullion::edit {

struct TextChange {
  std::size_t offset = 0;
  std::string removed, inserted;

  friend bool operator==(const TextChange&, const TextChange&) = default;
};

using TextChanges = std::vector<TextChange>;

// Nothing where what is to be removed does not stand at its place, or the list is not in order.
std::optional<std::string> with_changes(std::string_view text, const TextChanges& changes);

// with_changes(*with_changes(text, changes), inverse(changes)) is the text.
TextChanges inverse(const TextChanges& changes);

// A change with what stands around it, by which it is found in a text that was changed elsewhere.
struct Hunk {
  TextChange change;
  std::string before, after;  // neither reaches to another change

  friend bool operator==(const Hunk&, const Hunk&) = default;
};

using Hunks = std::vector<Hunk>;

// The changes of a text with their surroundings; those that lie near each other become one.
Hunks hunks_of(std::string_view text, const TextChanges& changes);
Hunks inverse(const Hunks& hunks);

// The changes where they belong in this text: at their own offsets if all that they know stands
// there, else each at the only place that looks like its own. Nothing where there is no such place
// or more than one, or where the order would be another.
std::optional<TextChanges> placed(const Hunks& hunks, std::string_view text);

// 16 hexadecimal digits that tell a text from another one: the 64-bit hash FNV-1a (Fowler, Noll and
// Vo).
std::string fingerprint(std::string_view text);

}  // namespace mullion::edit
