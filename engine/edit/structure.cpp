#include "engine/edit/structure.h"

#include <algorithm>
#include <set>

#include "engine/edit/names.h"
#include "engine/edit/part_place.h"
#include "engine/edit/placing.h"
#include "engine/job/job_words.h"
#include "engine/xml/reading.h"
#include "engine/xml/words.h"

namespace mullion::edit {
namespace {

using Where = Position::Where;

const std::vector<std::string_view> single_sections{"frame", "outer", "borders", "wall",
                                                    "customer"};

std::vector<std::string_view> rule_elements() {
  std::vector<std::string_view> out;
  for (const Word<Rule::Kind>& word : rule_words()) out.push_back(word.text);
  return out;
}

bool has(const std::vector<std::string_view>& words, std::string_view word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

const std::string* value_in(const Attributes& attributes, std::string_view name) {
  for (const auto& [attribute, value] : attributes) {
    if (attribute == name) return &value;
  }
  return nullptr;
}

Problems wrong_place(const Position& at, std::string_view what, std::string_view expected) {
  return refusal("edit-wrong-place", "found \"" + at.part + "\" as a place for a " +
                                         std::string(what) + "; expected " + std::string(expected));
}

bool is_beside(Where where) {
  return where == Where::before || where == Where::after;
}

// Before or after another one of the list, or at its end.
Result<Slot> slot_in_list(Draft& draft, std::string_view section, std::string_view what,
                          const std::optional<Position>& at) {
  if (!at) return slot_at_end(draft, section_of(draft, section));
  const Result<const Markup*> other = element_of(draft.job(), at->part);
  if (!other) return tl::unexpected(other.error());
  const Markup* list = draft.job().child(section);
  if (list == nullptr || parent_of(draft.job(), **other) != list || !is_beside(at->where)) {
    return tl::unexpected(wrong_place(*at, what, "before or after another " + std::string(what)));
  }
  return at->where == Where::before ? slot_before(draft.text(), *list, **other)
                                    : slot_after(draft.text(), **other);
}

bool is_arranged(Draft& draft) {
  const Markup* arrange = draft.job().child("arrange");
  return arrange != nullptr && !parts_in(*arrange).empty();
}

Result<Slot> slot_for_opening(Draft& draft, const std::optional<Position>& at) {
  if (!is_arranged(draft)) return slot_at_end(draft, section_of(draft, "arrange"));
  return slot_for_part(draft, at.value_or(Position{Where::last_in, "arrange"}));
}

// The words of a path's last part before the ending.
std::string stem(const std::string& path) {
  const std::size_t slash = path.rfind('/');
  const std::string file = slash == std::string::npos ? path : path.substr(slash + 1);
  return file.substr(0, file.rfind('.'));
}

std::string new_picture_id(Draft& draft, const Attributes& attributes) {
  if (const std::string* id = value_in(attributes, "id")) return *id;
  const std::string* image = value_in(attributes, "image");
  const std::string name = image == nullptr ? std::string() : name_from(stem(*image));
  if (!name.empty()) return free_id(draft, name);
  const Markup* pictures = draft.job().child("pictures");
  const std::size_t count = pictures == nullptr ? 0 : pictures->children.size();
  return free_id(draft, "picture-" + std::to_string(count + 1));
}

Attributes led_by(std::string_view name, const std::string& value, const Attributes& others) {
  Attributes out{{std::string(name), value}};
  for (const auto& one : others) {
    if (one.first != name) out.push_back(one);
  }
  return out;
}

Done add_picture(Draft& draft, const Add& edit) {
  const std::string id = new_picture_id(draft, edit.attributes);
  const bool in_list = edit.at && edit.at->part.starts_with("picture.");
  const Result<Slot> slot =
      slot_in_list(draft, "pictures", "picture", in_list ? edit.at : std::nullopt);
  if (!slot) return tl::unexpected(slot.error());
  insert(draft, *slot, tag_of("picture", led_by("id", id, edit.attributes)));
  if (!is_arranged(draft)) return {};
  const Result<Slot> place = slot_for_opening(draft, in_list ? std::nullopt : edit.at);
  if (!place) return tl::unexpected(place.error());
  insert(draft, *place, tag_of("opening", led_by("picture", id, edit.opening)));
  return {};
}

Done add_groove(Draft& draft, const Add& edit) {
  const Position at = edit.at.value_or(Position{Where::last_in, "arrange"});
  const Result<const Markup*> around = element_of(draft.job(), at.part);
  if (!around) return tl::unexpected(around.error());
  const Markup& element = **around;
  if (!is_part(element) && element.name != "arrange") {
    return tl::unexpected(wrong_place(at, edit.element, "arrange, an opening, a row or a column"));
  }
  const Slot slot = slot_at_end(draft, element);
  insert(draft, slot, tag_of(edit.element, edit.attributes));
  return {};
}

Done add_to_list(Draft& draft, std::string_view section, std::string_view what, const Add& edit) {
  const Result<Slot> slot = slot_in_list(draft, section, what, edit.at);
  if (!slot) return tl::unexpected(slot.error());
  insert(draft, *slot, tag_of(edit.element, edit.attributes));
  return {};
}

// --- what shows a picture ----------------------------------------------------------------------

const Markup* opening_of(const Markup& job, const std::string& picture) {
  for (const NamedPart& part : named_parts(job)) {
    if (part.element->name == "opening" && part.element->value("picture") == picture) {
      return part.element;
    }
  }
  return nullptr;
}

const Markup* picture_called(const Markup& job, const std::string& id) {
  const Markup* pictures = job.child("pictures");
  if (pictures == nullptr) return nullptr;
  for (const Markup& picture : pictures->children) {
    if (picture.value("id") == id) return &picture;
  }
  return nullptr;
}

bool is_left_without_openings(const Markup& job, const Markup& without) {
  for (const NamedPart& part : named_parts(job)) {
    const Span all = part.element->all;
    const bool goes = without.all.begin <= all.begin && all.end <= without.all.end;
    if (part.element->name == "opening" && !goes) return false;
  }
  return true;
}

Done remove_part(Draft& draft, const Markup& part) {
  if (is_left_without_openings(draft.job(), part)) {
    return tl::unexpected(
        refusal("edit-last-opening", "a mat has at least one opening; this is the last one"));
  }
  remove(draft, part);
  return {};
}

Done remove_picture(Draft& draft, const Markup& picture) {
  const std::string id = picture.value("id");
  if (const Markup* opening = opening_of(draft.job(), id)) {
    if (const Done done = remove_part(draft, *opening); !done) return done;
  }
  remove(draft, *picture_called(draft.job(), id));
  remove_if_empty(draft, "pictures");
  return {};
}

// --- copies ------------------------------------------------------------------------------------

// The element's text as a draft of its own.
std::string text_of(const Draft& draft, const Markup& element) {
  return draft.text().substr(element.all.begin, element.all.end - element.all.begin);
}

// Layers that are cut for the one alone are cut for the other too.
void cut_layers_too(Draft& draft, const std::string& id, const std::string& copy) {
  const Markup* layers = draft.job().child("layers");
  const std::size_t count = layers == nullptr ? 0 : layers->children.size();
  for (std::size_t i = 0; i < count; ++i) {
    const Markup& layer = draft.job().child("layers")->children[i];
    const std::string only = layer.value("only");
    if ((" " + only + " ").find(" " + id + " ") == std::string::npos) continue;
    set_attribute(draft, layer, "only", only + " " + copy);
  }
}

// The opening's id as others mention it.
std::string id_of(const Markup& job, const Markup& opening) {
  for (const NamedPart& part : named_parts(job)) {
    if (part.element == &opening) return part.id;
  }
  return {};
}

Done copy_opening(Draft& draft, const Markup& opening, const std::string& id,
                  const std::string& picture) {
  const std::string old = id_of(draft.job(), opening);
  Draft own(text_of(draft, opening));
  if (!picture.empty()) {
    set_attribute(own, own.job(), "picture", picture);
    remove_attribute(own, own.job(), "id");
  } else if (!id.empty() || opening.find("id") != nullptr) {
    set_attribute(own, own.job(), "id", id.empty() ? free_id(draft, old) : id);
  }
  const std::size_t origin = draft.origin(opening.all.begin).value();
  const Result<Slot> slot = slot_for_part(draft, {Where::after, "opening." + old});
  if (!slot) return tl::unexpected(slot.error());
  insert(draft, *slot, own.text());
  const Markup* original = element_from(draft, origin);
  const Markup& parent = *parent_of(draft.job(), *original);
  const std::vector<const Markup*> parts = parts_in(parent);
  const auto next = std::find(parts.begin(), parts.end(), original) + 1;
  if (next != parts.end()) cut_layers_too(draft, old, id_of(draft.job(), **next));
  return {};
}

Done copy_picture(Draft& draft, const Markup& picture, const std::string& wish) {
  const std::string old = picture.value("id");
  const std::string id = wish.empty() ? free_id(draft, old) : wish;
  Draft own(text_of(draft, picture));
  set_attribute(own, own.job(), "id", id);
  remove_attribute(own, own.job(), "order");
  insert(draft, slot_after(draft.text(), picture), own.text());
  const Markup* opening = opening_of(draft.job(), old);
  return opening == nullptr ? Done() : copy_opening(draft, *opening, {}, id);
}

}  // namespace

std::string free_id(Draft& draft, const std::string& wish) {
  std::set<std::string> taken{"mat", "outer", "border"};
  for (const NamedPart& part : named_parts(draft.job())) taken.insert(part.id);
  if (const Markup* pictures = draft.job().child("pictures")) {
    for (const Markup& picture : pictures->children) taken.insert(picture.value("id"));
  }
  std::string id = wish;
  for (int n = 2; taken.contains(id); ++n) id = wish + "-" + std::to_string(n);
  return id;
}

Done add(Draft& draft, const Add& edit) {
  const std::string& element = edit.element;
  if (element == "picture") return add_picture(draft, edit);
  if (element == "layer") return add_to_list(draft, "layers", "layer", edit);
  if (has(rule_elements(), element)) return add_to_list(draft, "rules", "rule", edit);
  if (element == "groove" || element == "reveal") return add_groove(draft, edit);
  if (element == "opening") {
    const Result<Slot> slot = slot_for_opening(draft, edit.at);
    if (!slot) return tl::unexpected(slot.error());
    insert(draft, *slot, tag_of("opening", edit.attributes));
    return {};
  }
  if (has(single_sections, element)) {
    if (draft.job().child(element) != nullptr) {
      return tl::unexpected(
          refusal("edit-is-there", "found <" + element + "> in the job already; change that one"));
    }
    section_of(draft, element, edit.attributes);
    return {};
  }
  std::vector<std::string_view> known{"picture", "opening", "layer", "groove", "reveal"};
  known.insert(known.end(), single_sections.begin(), single_sections.end());
  const std::vector<std::string_view> rules = rule_elements();
  known.insert(known.end(), rules.begin(), rules.end());
  const std::string_view near = near_name(element, known);
  return tl::unexpected(refusal(
      "edit-unknown-name", "found no element " + mullion::quoted(element) + " to add" +
                               (near.empty() ? "; expected " + alternatives(known)
                                             : "; did you mean " + mullion::quoted(near) + "?")));
}

Done remove(Draft& draft, const Remove& edit) {
  const Result<const Markup*> found = element_of(draft.job(), edit.part);
  if (!found) return tl::unexpected(found.error());
  const Markup& element = **found;
  if (&element == &draft.job()) {
    return tl::unexpected(refusal("edit-wrong-part", "the job itself cannot be taken out"));
  }
  if (element.name == "picture") return remove_picture(draft, element);
  if (is_part(element)) return remove_part(draft, element);
  if (element.name == "layer" && draft.job().child("layers")->children.size() == 1) {
    return tl::unexpected(
        refusal("edit-last-layer", "a mat has at least one layer; this is the last one"));
  }
  const Markup* rules = draft.job().child("rules");
  const bool rule = rules != nullptr && parent_of(draft.job(), element) == rules;
  remove(draft, element);
  if (rule) remove_if_empty(draft, "rules");
  return {};
}

Done copy(Draft& draft, const Copy& edit) {
  const Result<const Markup*> found = element_of(draft.job(), edit.part);
  if (!found) return tl::unexpected(found.error());
  const Markup& element = **found;
  const Markup* parent = parent_of(draft.job(), element);
  if (element.name == "picture") return copy_picture(draft, element, edit.id);
  if (element.name == "opening") {
    const Markup* picture = picture_called(draft.job(), element.value("picture"));
    if (element.find("picture") == nullptr) return copy_opening(draft, element, edit.id, {});
    if (picture != nullptr) return copy_picture(draft, *picture, edit.id);
  }
  const bool listed = parent != nullptr && (parent->name == "layers" || parent->name == "rules");
  if (listed || element.name == "groove") {
    insert(draft, slot_after(draft.text(), element), text_of(draft, element));
    return {};
  }
  return tl::unexpected(refusal(
      "edit-wrong-part",
      "found \"" + edit.part + "\"; expected a picture, an opening, a layer, a groove or a rule"));
}

Done move(Draft& draft, const Move& edit) {
  const Result<const Markup*> found = element_of(draft.job(), edit.part);
  if (!found) return tl::unexpected(found.error());
  const Result<const Markup*> place = element_of(draft.job(), edit.to.part);
  if (!place) return tl::unexpected(place.error());
  const Markup& element = **found;
  const Span all = element.all, other = (*place)->all;
  if (all.begin <= other.begin && other.end <= all.end) {
    return tl::unexpected(refusal("edit-within-itself", "found \"" + edit.to.part +
                                                            "\" as a place for \"" + edit.part +
                                                            "\"; expected a place outside it"));
  }
  const Markup* parent = parent_of(draft.job(), element);
  const bool listed = parent != nullptr && (parent->name == "layers" || parent->name == "rules" ||
                                            parent->name == "pictures");
  if (!is_part(element) && !listed) {
    return tl::unexpected(
        refusal("edit-wrong-part",
                "found \"" + edit.part +
                    "\"; expected an opening, a row, a column, a layer, a picture or a rule"));
  }
  const std::string list = listed ? std::string(parent->name) : std::string();
  const Result<Slot> slot =
      listed ? slot_in_list(draft, list, list.substr(0, list.size() - 1), edit.to)
             : slot_for_part(draft, edit.to);
  if (!slot) return tl::unexpected(slot.error());
  move(draft, *element_from(draft, all.begin), *slot);
  if (!listed) forget_foreign_place(draft, element_from(draft, all.begin)->all.begin);
  return {};
}

}  // namespace mullion::edit
