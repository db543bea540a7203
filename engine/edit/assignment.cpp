#include "engine/edit/assignment.h"

#include <algorithm>

#include "engine/edit/markup.h"
#include "engine/edit/names.h"
#include "engine/xml/reading.h"
#include "engine/xml/words.h"

namespace mullion::edit {
namespace {

// From the beginning of a line to the end of one, without its line feed.
Span whole_lines(std::string_view text, Span span) {
  const std::size_t before =
      span.begin == 0 ? std::string_view::npos : text.rfind('\n', span.begin - 1);
  span.begin = before == std::string_view::npos ? 0 : before + 1;
  span.end = std::min(text.find('\n', span.end), text.size());
  return span;
}

std::vector<std::string> lines_of(std::string_view text, Span span) {
  std::vector<std::string> out;
  std::size_t at = span.begin;
  while (at <= span.end) {
    const std::size_t end = std::min(text.find('\n', at), span.end);
    std::string_view line = text.substr(at, end - at);
    at = end + 1;
    const std::size_t first = line.find_first_not_of(blanks);
    if (first == std::string_view::npos) continue;
    line = line.substr(first, line.find_last_not_of(blanks) + 1 - first);
    out.emplace_back(line);
  }
  return out;
}

// Lines at the beginning and the end that are the same in both say nothing.
void leave_out_common(ChangedLines& lines) {
  auto& before = lines.before;
  auto& after = lines.after;
  while (!before.empty() && !after.empty() && before.back() == after.back()) {
    before.pop_back();
    after.pop_back();
  }
  while (!before.empty() && !after.empty() && before.front() == after.front()) {
    before.erase(before.begin());
    after.erase(after.begin());
    ++lines.line;
  }
}

}  // namespace

Result<Edit> edit_of(const std::vector<std::string>& assignments) {
  Several out;
  for (const std::string& text : assignments) {
    const std::size_t sign = text.find('=');
    const std::string name = tidy(text.substr(0, sign));
    if (sign == std::string::npos || name.empty()) {
      return tl::unexpected(refusal("usage", "found " + mullion::quoted(text) +
                                                 "; expected NAME=VALUE, such as border.left=3"));
    }
    const std::string value = tidy(text.substr(sign + 1));
    out.edits.push_back(State{name, value.empty() ? std::nullopt : std::optional(value)});
  }
  return out;
}

std::vector<ChangedLines> changed_lines(const std::string& before, const EditedText& edited) {
  struct Place {
    Span before, after;
  };
  std::vector<Place> places;
  const TextChanges back = inverse(edited.changes);
  for (std::size_t i = 0; i < back.size(); ++i) {
    const TextChange &there = edited.changes[i], &here = back[i];
    const Place place{whole_lines(before, {there.offset, there.offset + there.removed.size()}),
                      whole_lines(edited.text, {here.offset, here.offset + here.removed.size()})};
    const bool same_line = !places.empty() && (place.before.begin <= places.back().before.end ||
                                               place.after.begin <= places.back().after.end);
    if (!same_line) {
      places.push_back(place);
      continue;
    }
    places.back().before.end = std::max(places.back().before.end, place.before.end);
    places.back().after.end = std::max(places.back().after.end, place.after.end);
  }
  std::vector<ChangedLines> out;
  for (const Place& place : places) {
    const auto line =
        std::count(edited.text.begin(),
                   edited.text.begin() + static_cast<std::ptrdiff_t>(place.after.begin), '\n');
    out.push_back({static_cast<int>(line) + 1, lines_of(before, place.before),
                   lines_of(edited.text, place.after)});
    leave_out_common(out.back());
  }
  return out;
}

}  // namespace mullion::edit
