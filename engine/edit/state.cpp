#include "engine/edit/state.h"

#include <algorithm>

#include "engine/edit/names.h"
#include "engine/edit/part_place.h"
#include "engine/edit/placing.h"
#include "engine/xml/words.h"

namespace mullion::edit {
namespace {

using Names = std::vector<std::string_view>;
using Value = std::optional<std::string>;

bool is_one_of(const Names& names, std::string_view name) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

struct Lengths {
  std::string_view element;
  Names attributes;
};

// With the lengths by which a part's place is stated.
Names placed(Names names) {
  for (const std::string_view name : place_lengths()) names.push_back(name);
  return names;
}

const std::vector<Lengths>& lengths() {
  static const std::vector<Lengths> all{
      {"job", {"increment"}},
      {"picture", {"width", "height", "overlap", "float"}},
      {"layer",
       {"thickness", "reveal", "reveal-left", "reveal-top", "reveal-right", "reveal-bottom"}},
      {"outer", {"width", "height"}},
      {"frame", {"rabbet-width", "rabbet-height", "allowance", "lip", "face"}},
      {"borders", {"all", "sides", "left", "top", "right", "bottom", "bottom-extra", "least"}},
      {"arrange", {"least-bar"}},
      {"row", placed({"gap"})},
      {"column", placed({"gap"})},
      {"ring", placed({"across", "down", "gap"})},
      {"gap", {"size"}},
      {"opening", placed({"width", "height", "corner", "rise"})},
      {"reveal", {"all", "left", "top", "right", "bottom"}},
      {"groove", {"distance", "width"}},
      {"fixed", {"length"}},
      {"at-least", {"length"}},
      {"at-most", {"length"}}};
  return all;
}

// --- a text between tags -----------------------------------------------------------------------

// The words give way to the text; comments among them stay.
void set_words(Draft& draft, const Markup& element, const std::string& text) {
  const std::string words = escaped_text(text);
  const std::size_t begin = element.all.begin;
  const std::vector<Span> old_words = element.words;
  for (std::size_t i = old_words.size(); i > 1; --i) draft.remove(old_words[i - 1]);
  const Markup& left = element_at(draft, begin);
  if (!left.words.empty()) {
    Span span = left.words.front();
    const std::string_view old =
        std::string_view(draft.text()).substr(span.begin, span.end - span.begin);
    if (!old.starts_with("<![CDATA[")) {
      span.end = span.begin + old.find_last_not_of(blanks) + 1;
      span.begin += old.find_first_not_of(blanks);
    }
    draft.replace(span, words);
  } else if (left.has_one_tag) {
    const std::string name(left.name);
    std::size_t end = left.all.end - 2;
    draft.replace({end, left.all.end}, ">" + words + "</" + name + ">");
  } else {
    draft.insert(left.inside.begin, words);
  }
}

void state_text(Draft& draft, const std::string& section, const Value& value) {
  const Markup* there = draft.job().child(section);
  if (value && !tidy(*value).empty()) {
    set_words(draft, there != nullptr ? *there : section_of(draft, section), *value);
  } else if (there != nullptr && there->remarks.empty()) {
    remove(draft, *there);
  } else if (there != nullptr) {
    set_words(draft, *there, "");
  }
}

// --- borders -----------------------------------------------------------------------------------

const Names& bottoms() {
  static const Names names{"bottom", "bottom-extra", "bottom-ratio"};
  return names;
}

// The first of the attributes that is there.
const WrittenValue* first_of(const Markup& element, const Names& names) {
  for (const WrittenValue& written : element.attributes) {
    if (is_one_of(names, written.name)) return &written;
  }
  return nullptr;
}

void remove_attributes(Draft& draft, std::size_t element, const Names& names) {
  for (const std::string_view name : names) {
    remove_attribute(draft, element_at(draft, element), name);
  }
}

// In place of the first of the others that is there; they all go.
void state_instead(Draft& draft, std::size_t element, std::string_view name,
                   const std::string& value, const Names& others) {
  const Markup& markup = element_at(draft, element);
  const WrittenValue* old = first_of(markup, others);
  if (old != nullptr && markup.find(name) == nullptr) {
    exchange_attribute(draft, *old, {{std::string(name), value}});
  } else {
    set_attribute(draft, markup, name, value);
  }
  remove_attributes(draft, element, others);
}

std::string other_side(std::string_view side) {
  return side == "left" ? "right" : "left";
}

void state_border(Draft& draft, std::size_t borders, const std::string& side,
                  const std::string& value) {
  const Markup& element = element_at(draft, borders);
  const WrittenValue* sides = element.find("sides");
  if ((side == "left" || side == "right") && sides != nullptr) {
    const std::string left = side == "left" ? value : sides->text;
    const std::string right = side == "left" ? sides->text : value;
    exchange_attribute(draft, *sides, {{"left", left}, {"right", right}});
  } else if (side == "sides") {
    state_instead(draft, borders, side, value, {"left", "right"});
  } else if (is_one_of(bottoms(), side)) {
    Names others = bottoms();
    others.erase(std::find(others.begin(), others.end(), side));
    state_instead(draft, borders, side, value, others);
  } else {
    set_attribute(draft, element, side, value);
  }
}

// `all` gives way to the sides that it states, but for those that become free.
void spell_out_all(Draft& draft, std::size_t borders, const Names& free) {
  const Markup& element = element_at(draft, borders);
  const WrittenValue* all = element.find("all");
  if (all == nullptr) return;
  Attributes said;
  const auto keep = [&](std::string_view side, const Names& stated) {
    if (is_one_of(free, side) || first_of(element, stated) != nullptr) return;
    said.push_back({std::string(side), all->text});
  };
  keep("left", {"left", "sides"});
  keep("top", {"top"});
  keep("right", {"right", "sides"});
  keep("bottom", bottoms());
  if (said.empty()) {
    remove_attribute(draft, element, "all");
  } else {
    exchange_attribute(draft, *all, said);
  }
}

void free_border(Draft& draft, std::size_t borders, const std::string& side) {
  if (side == "all" || side == "least") {
    remove_attributes(draft, borders, {side});
    return;
  }
  const Markup& element = element_at(draft, borders);
  const WrittenValue* sides = element.find("sides");
  if (side == "sides") {
    spell_out_all(draft, borders, {"left", "right"});
    remove_attributes(draft, borders, {"sides", "left", "right"});
  } else if ((side == "left" || side == "right") && sides != nullptr) {
    exchange_attribute(draft, *sides, {{other_side(side), sides->text}});
    spell_out_all(draft, borders, {side});
  } else if (is_one_of(bottoms(), side)) {
    spell_out_all(draft, borders, {"bottom"});
    remove_attributes(draft, borders, bottoms());
  } else {
    spell_out_all(draft, borders, {side});
    remove_attributes(draft, borders, {side});
  }
}

// --- rules that fix a measure ------------------------------------------------------------------

// What a rule would call it; empty where none can.
std::string measure_of(Draft& draft, const Target& target) {
  if (target.is("outer")) return "outer." + target.attribute;
  if (target.is("borders")) return "border." + target.attribute;
  if (target.element == nullptr) return {};
  for (const NamedPart& part : named_parts(draft.job())) {
    if (part.element != target.element || part.id.empty()) continue;
    if (target.is("gap")) return target.attribute == "size" ? part.id : std::string();
    return part.id + "." + target.attribute;
  }
  return {};
}

const Markup* fixed_rule(const Markup& job, const std::string& measure) {
  const Markup* rules = measure.empty() ? nullptr : job.child("rules");
  if (rules == nullptr) return nullptr;
  for (const Markup& rule : rules->children) {
    const std::string strength = rule.value("strength");
    if (rule.name == "fixed" && rule.value("measure") == measure &&
        (strength.empty() || strength == "required")) {
      return &rule;
    }
  }
  return nullptr;
}

// Measures that no attribute states.
bool only_a_rule_states(const Target& target) {
  static const Names places{"left", "top", "right", "bottom", "centre", "middle"};
  static const Names sizes{"width", "height"};
  const bool group = target.element != nullptr && is_group(*target.element);
  const bool is_stated_there = target.parent != nullptr && target.parent->name == "places" &&
                               is_one_of({"left", "top", "right", "bottom"}, target.attribute);
  if (is_stated_there) return false;
  return (group && is_one_of(sizes, target.attribute)) ||
         ((group || target.is("opening")) && is_one_of(places, target.attribute));
}

tl::expected<void, Problems> state_rule(Draft& draft, const std::string& measure,
                                        const Value& value, bool make) {
  const Markup* rule = fixed_rule(draft.job(), measure);
  if (rule == nullptr && (!make || !value)) return {};
  if (!value) {
    remove(draft, *rule);
    remove_if_empty(draft, "rules");
  } else if (rule != nullptr) {
    set_attribute(draft, *rule, "length", *value);
  } else {
    const Slot slot = slot_at_end(draft, section_of(draft, "rules"));
    insert(draft, slot, tag_of("fixed", {{"measure", measure}, {"length", *value}}));
  }
  return {};
}

// --- units -------------------------------------------------------------------------------------

void name_unit(Draft& draft, const Markup& element, const std::string& unit,
               std::vector<std::pair<Span, std::string>>& changes) {
  for (const WrittenValue& written : element.attributes) {
    if (!is_length(element.name, written.name)) continue;
    const std::string text = tidy(written.text);
    const bool number = !text.empty() && text.back() >= '0' && text.back() <= '9';
    if (number) changes.push_back({{written.raw.end, written.raw.end}, " " + unit});
  }
  for (const Markup& child : element.children) name_unit(draft, child, unit, changes);
}

// All sizes stay: lengths that named no unit name the old one.
void change_unit(Draft& draft, const std::string& unit) {
  const std::string old = draft.job().value("unit");
  if (old == unit) return;
  std::vector<std::pair<Span, std::string>> changes;
  name_unit(draft, draft.job(), old, changes);
  std::sort(changes.begin(), changes.end(),
            [](const auto& a, const auto& b) { return a.first.begin > b.first.begin; });
  for (const auto& [span, text] : changes) draft.replace(span, text);
  set_attribute(draft, draft.job(), "unit", unit);
}

// --- attributes --------------------------------------------------------------------------------

// What "free" comes to: nothing, or the word itself where leaving the attribute out says otherwise.
Value freed(const Target& target) {
  const Markup* element = target.element;
  if (target.is("opening") && (target.attribute == "width" || target.attribute == "height")) {
    const bool plain = element->find("picture") == nullptr;
    const std::string shape = element->value("shape");
    if (plain && shape != "circle" && shape != "square") return "free";
  }
  if (target.is("gap") && target.parent->find("gap") != nullptr &&
      target.parent->value("gap") != "free") {
    return "free";
  }
  return std::nullopt;
}

// Of an opening's shape, those that only other shapes have.
Names foreign_to(std::string_view shape) {
  Names out;
  if (shape != "rounded" && shape != "stepped" && shape != "octagon") out.push_back("corner");
  if (shape != "arch") out.push_back("rise");
  if (shape != "outline") {
    out.push_back("file");
    out.push_back("path");
  }
  return out;
}

void make_element(Draft& draft, const Target& target, const std::string& value) {
  if (target.is("gap")) {
    const Slot slot = slot_after(draft.text(), *target.after);
    insert(draft, slot, tag_of("gap", {{target.attribute, value}}));
  } else if (target.is("reveal")) {
    const Slot slot = slot_at_end(draft, *target.parent);
    insert(draft, slot, tag_of("reveal", {{"layer", target.layer}, {target.attribute, value}}));
  } else {
    section_of(draft, target.element_name, {{target.attribute, value}});
  }
}

// An element that says nothing any more goes.
void remove_if_silent(Draft& draft, std::size_t begin) {
  const Markup& element = element_at(draft, begin);
  static const Names silent{"outer", "borders", "customer", "wall", "gap"};
  if (!element.holds_nothing()) return;
  const bool says_nothing = element.name == "reveal"
                                ? element.attributes.size() == 1 && element.find("layer") != nullptr
                                : element.attributes.empty() && is_one_of(silent, element.name);
  if (says_nothing) remove(draft, element);
}

void set_value(Draft& draft, const Target& target, const std::string& value) {
  const std::size_t begin = target.element->all.begin;
  const std::string& name = target.attribute;
  if (target.is("borders")) {
    state_border(draft, begin, name, value);
  } else if (target.is("picture") && (name == "overlap" || name == "float")) {
    state_instead(draft, begin, name, value, {name == "overlap" ? "float" : "overlap"});
  } else if (target.is("reveal") && name == "all") {
    state_instead(draft, begin, name, value, {"left", "top", "right", "bottom"});
  } else if (target.is("layer") && name == "reveal") {
    state_instead(draft, begin, name, value,
                  {"reveal-left", "reveal-top", "reveal-right", "reveal-bottom"});
  } else {
    set_attribute(draft, *target.element, name, value);
  }
  if (target.is("opening") && name == "shape") {
    remove_attributes(draft, begin, foreign_to(value));
  }
  if (target.is("layer") && name == "spacer" && value == "yes") {
    remove_attributes(draft, begin,
                      {"reveal", "reveal-left", "reveal-top", "reveal-right", "reveal-bottom"});
  }
}

void take_out(Draft& draft, const Target& target, bool every_statement) {
  const std::size_t begin = target.element->all.begin;
  if (target.is("borders") && every_statement) {
    free_border(draft, begin, target.attribute);
  } else {
    remove_attribute(draft, *target.element, target.attribute);
  }
  if (target.is("opening") && target.attribute == "shape") {
    remove_attributes(draft, begin, {"corner", "rise", "file", "path"});
  }
  remove_if_silent(draft, begin);
}

std::string trimmed(const std::string& text) {
  const std::size_t first = text.find_first_not_of(blanks);
  if (first == std::string::npos) return {};
  return text.substr(first, text.find_last_not_of(blanks) + 1 - first);
}

// What stands for the whole element.
void complete(Target& target) {
  if (!target.attribute.empty()) return;
  if (target.is("gap")) target.attribute = "size";
  if (target.is("customer")) target.attribute = "name";
  if (target.is("wall")) target.attribute = "colour";
}

// By an attribute, its own or one for several sides.
bool is_stated(const Target& target) {
  if (target.element == nullptr) return false;
  const auto says = [&](std::string_view name) { return target.element->find(name) != nullptr; };
  if (says(target.attribute)) return true;
  if (!target.is("borders")) return false;
  const bool side = target.attribute == "left" || target.attribute == "right";
  return says("all") || (side && says("sides"));
}

}  // namespace

bool is_length(std::string_view element, std::string_view attribute) {
  const auto found = std::find_if(lengths().begin(), lengths().end(),
                                  [&](const Lengths& one) { return one.element == element; });
  return found != lengths().end() && is_one_of(found->attributes, attribute);
}

tl::expected<void, Problems> state(Draft& draft, const State& edit) {
  Result<Target> found = target_of(draft.job(), edit.name);
  if (!found) return tl::unexpected(found.error());
  Target& target = *found;
  complete(target);
  if (target.attribute.empty()) {
    if (target.is("title") || target.is("note")) {
      state_text(draft, target.element_name, edit.value);
      return {};
    }
    return tl::unexpected(refusal("edit-not-a-value", "found \"" + edit.name +
                                                          "\", which is no value; expected one " +
                                                          "of its attributes after a full stop"));
  }
  if (edit.value) {
    const std::string value = trimmed(*edit.value);
    if (value != *edit.value) return state(draft, {edit.name, value});
  }
  const bool measure =
      is_length(target.element_name, target.attribute) || only_a_rule_states(target);
  const bool free = edit.value == "free" && measure;
  Value value = free ? freed(target) : edit.value;
  const std::string rule = measure_of(draft, target);
  if (only_a_rule_states(target)) {
    if (rule.empty()) {
      return tl::unexpected(
          refusal("edit-without-id", "found \"" + edit.name +
                                         "\", which only a rule can state; expected an id on <" +
                                         target.element_name + "> that the rule can name"));
    }
    return state_rule(draft, rule, free ? std::nullopt : value, true);
  }
  if (target.element == &draft.job() && target.attribute == "unit" && value) {
    change_unit(draft, *value);
    return {};
  }
  // A rule that fixes the same measure says the same; where it alone states it, it goes on to.
  const bool stated = is_stated(target);
  const bool word = value && begins_with_letter(*value);
  if (!word && fixed_rule(draft.job(), rule) != nullptr) {
    const Value length = free ? std::nullopt : value;
    if (const auto done = state_rule(draft, rule, length, false); !done) return done;
    if (!stated && value) return {};
    found = target_of(draft.job(), edit.name);
    complete(target);
  }
  if (target.element != nullptr) {
    if (value) {
      set_value(draft, target, *value);
    } else {
      take_out(draft, target, free);
    }
  } else if (value) {
    make_element(draft, target, *value);
  }
  return {};
}

}  // namespace mullion::edit
