#include "engine/edit/part_place.h"

#include <algorithm>

#include "engine/edit/names.h"
#include "engine/edit/placing.h"

namespace mullion::edit {
namespace {

constexpr std::string_view move_words[] = {"move-right", "move-left", "move-down", "move-up"};
constexpr std::string_view spot_words[] = {"left", "top", "right", "bottom"};

std::vector<std::string_view> words_in(std::string_view group) {
  std::vector<std::string_view> out;
  if (group == "places") out.assign(std::begin(spot_words), std::end(spot_words));
  if (group == "row" || group == "column" || group == "ring") {
    out.assign(std::begin(move_words), std::end(move_words));
  }
  if (group == "ring") out.push_back("centre");
  return out;
}

std::vector<std::string_view> all_place_words() {
  std::vector<std::string_view> out = place_lengths();
  out.push_back("centre");
  return out;
}

}  // namespace

const std::vector<std::string_view>& place_lengths() {
  static const std::vector<std::string_view> all = [] {
    std::vector<std::string_view> out(std::begin(move_words), std::end(move_words));
    out.insert(out.end(), std::begin(spot_words), std::end(spot_words));
    return out;
  }();
  return all;
}

void forget_foreign_place(Draft& draft, std::size_t part) {
  const Markup* parent = parent_of(draft.job(), element_at(draft, part));
  const auto known = words_in(parent == nullptr ? std::string_view() : parent->name);
  for (const std::string_view word : all_place_words()) {
    if (std::find(known.begin(), known.end(), word) != known.end()) continue;
    remove_attribute(draft, element_at(draft, part), word);
  }
}

void set_place_of(Draft& draft, std::size_t part, const Markup& from) {
  for (const std::string_view word : all_place_words()) {
    if (const WrittenValue* stated = from.find(word)) {
      set_attribute(draft, element_at(draft, part), word, stated->text);
    } else {
      remove_attribute(draft, element_at(draft, part), word);
    }
  }
}

void take_place_of_first(Draft& draft, std::size_t group) {
  for (const std::string_view word : all_place_words()) {
    const Markup& made = element_at(draft, group);
    const Markup& first = *parts_in(made).front();
    const WrittenValue* stated = first.find(word);
    if (stated == nullptr) continue;
    const std::string value = stated->text;
    remove_attribute(draft, first, word);
    set_attribute(draft, element_at(draft, group), word, value);
  }
}

}  // namespace mullion::edit
