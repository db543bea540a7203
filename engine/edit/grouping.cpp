#include <algorithm>

#include "engine/edit/names.h"
#include "engine/edit/part_place.h"
#include "engine/edit/placing.h"
#include "engine/edit/structure.h"
#include "engine/job/job_words.h"
#include "engine/xml/document.h"
#include "engine/xml/words.h"

namespace mullion::edit {
namespace {

using Where = Position::Where;

std::string word_of(Along along) {
  return std::string(word_for(along));
}

// The gap that stands around is taken on.
Attributes with_gap_of(const Markup& parent, Attributes attributes) {
  const bool stated = std::any_of(attributes.begin(), attributes.end(),
                                  [](const auto& one) { return one.first == "gap"; });
  if (!stated && parent.find("gap") != nullptr) {
    attributes.insert(attributes.begin(), {"gap", parent.find("gap")->text});
  }
  return attributes;
}

// Puts a row or column around neighbours, from the first to the last of them; its place.
std::size_t wrap(Draft& draft, const Markup& first, const Markup& last, Along along,
                 const Attributes& attributes) {
  const std::string lead = lead_of(draft.text(), first);
  const std::size_t begin = first.all.begin;
  const std::size_t end = slot_after(draft.text(), last).at;
  std::string open = tag_of(word_of(along), attributes);
  open.erase(open.size() - 2);
  const std::string deeper = lead.empty() ? lead : lead + step_of(draft);
  draft.insert(end, lead + "</" + word_of(along) + ">");
  draft.reindent({begin, end}, lead, deeper);
  draft.insert(begin, open + ">" + deeper);
  take_place_of_first(draft, begin);
  return begin;
}

const Markup& parent_in(Draft& draft, const Markup& part) {
  return *parent_of(draft.job(), part);
}

bool is_before(Where where) {
  return where == Where::before || where == Where::left || where == Where::above;
}

Slot slot_beside(Draft& draft, const Markup& part, bool before) {
  return before ? slot_before(draft.text(), parent_in(draft, part), part)
                : slot_after(draft.text(), part);
}

Slot slot_within(Draft& draft, const Markup& group, bool first) {
  const std::vector<const Markup*> parts = parts_in(group);
  if (parts.empty()) return slot_at_end(draft, group);  // of a job that is not right yet
  return first ? slot_before(draft.text(), group, *parts.front())
               : slot_after(draft.text(), *parts.back());
}

// The way in which a part stands beside one that is in no row or column yet.
Along way_beside(const Markup& part, Where where) {
  if (where == Where::above || where == Where::below) return Along::column;
  if (where == Where::left || where == Where::right) return Along::row;
  return part.name == "row" ? Along::column : Along::row;
}

Slot slot_in_new_group(Draft& draft, const Markup& part, Along along, bool before) {
  const Attributes attributes = with_gap_of(parent_in(draft, part), {});
  const std::size_t begin = wrap(draft, part, part, along, attributes);
  const Markup& made = element_at(draft, begin);
  return slot_beside(draft, made.children.front(), before);
}

std::string end_tag_word(const Draft& draft, const Markup& element) {
  const std::size_t begin = element.inside.end + 2;
  return draft.text().substr(begin, element.name.size());
}

// The same side of the other way: "left" of a column is "top" of a row.
std::string align_along(std::string_view word, Along from, Along to) {
  for (const Word<Align>& known : align_words(from)) {
    if (known.text == word) return std::string(word_for(known.value, to));
  }
  return std::string(word);
}

// --- taking an arrangement ---------------------------------------------------------------------

class Taken {
 public:
  Taken(Draft& draft, std::string_view text) : draft_(draft), text_(text) {
    for (const NamedPart& part : named_parts(draft.job())) {
      if (part.element->name == "opening") openings_.push_back(part);
    }
  }

  // The new part as text that stands at that lead; openings that it does not have below it.
  std::string written(const Markup& part, const std::string& lead) {
    std::vector<const NamedPart*> left;
    list_ids(part);
    for (const NamedPart& opening : openings_) {
      const bool plain = opening.element->find("picture") == nullptr;
      if (plain && std::find(ids_.begin(), ids_.end(), opening.id) == ids_.end()) {
        left.push_back(&opening);
      }
    }
    if (left.empty()) return write(part, lead);
    const std::string step = lead.empty() ? "" : step_of(draft_);
    std::string out = "<column>";
    if (part.name != "column" || !part.attributes.empty()) {
      out += lead + step + write(part, lead + step);
    } else {
      for (const Markup& child : part.children) out += lead + step + write(child, lead + step);
    }
    for (const NamedPart* opening : left) out += lead + step + old_text(*opening, lead + step);
    return out + lead + "</column>";
  }

 private:
  std::string source(const Span& span) const {
    return std::string(text_.substr(span.begin, span.end - span.begin));
  }

  void list_ids(const Markup& part) {
    if (part.name == "opening" && part.find("picture") == nullptr) ids_.push_back(part.value("id"));
    for (const Markup& child : part.children) list_ids(child);
  }

  // `now`: the opening in the new arrangement; null where it is in none.
  std::string old_text(const NamedPart& opening, const std::string& lead,
                       const Markup* now = nullptr) const {
    const Markup& element = *opening.element;
    const std::string& text = draft_.text();
    Draft own(text.substr(element.all.begin, element.all.end - element.all.begin));
    own.reindent({0, own.text().size()}, lead_of(text, element), lead);
    // Its usual name may be another one where it stands now.
    if (element.find("id") == nullptr && element.find("picture") == nullptr) {
      set_attribute(own, own.job(), "id", opening.id);
    }
    set_place_of(own, 0, now == nullptr ? Markup() : *now);
    return own.text();
  }

  std::string write(const Markup& part, const std::string& lead) const {
    if (const NamedPart* old = showing(part.value("picture"))) return old_text(*old, lead, &part);
    if (part.children.empty()) return source(part.all);
    const std::string step = lead.empty() ? "" : step_of(draft_);
    std::string out = source({part.all.begin, part.inside.begin});
    for (const Markup& child : part.children) out += lead + step + write(child, lead + step);
    return out + lead + source({part.inside.end, part.all.end});
  }

  const NamedPart* showing(const std::string& picture) const {
    if (picture.empty()) return nullptr;
    const auto found = std::find_if(openings_.begin(), openings_.end(), [&](const NamedPart& one) {
      return one.element->value("picture") == picture;
    });
    return found == openings_.end() ? nullptr : &*found;
  }

  Draft& draft_;
  std::string_view text_;
  std::vector<NamedPart> openings_;
  std::vector<std::string> ids_;
};

// Of the parts that began there before the edit, in the group that they are in now.
Done forget_places(Draft& draft, const std::vector<std::size_t>& origins) {
  for (const std::size_t origin : origins) {
    forget_foreign_place(draft, element_from(draft, origin)->all.begin);
  }
  return {};
}

}  // namespace

Result<Slot> slot_for_part(Draft& draft, const Position& position) {
  const Result<const Markup*> found = element_of(draft.job(), position.part);
  if (!found) return tl::unexpected(found.error());
  const Markup* part = *found;
  const bool within = position.where == Where::first_in || position.where == Where::last_in;
  const bool before = is_before(position.where) || position.where == Where::first_in;
  if (within && part->name == "arrange" && parts_in(*part).size() == 1) {
    part = parts_in(*part).front();
    if (!is_group(*part)) return slot_in_new_group(draft, *part, Along::row, before);
  }
  if (!is_part(*part) || (within && !is_group(*part))) {
    return tl::unexpected(
        refusal("edit-wrong-place", "found \"" + position.part + "\" as a place for an opening; " +
                                        "expected " + (within ? "" : "an opening, ") +
                                        "a row or a column"));
  }
  if (within) return slot_within(draft, *part, before);
  const Along along = way_beside(*part, position.where);
  const bool says_way = position.where != Where::before && position.where != Where::after;
  const Markup& parent = parent_in(draft, *part);
  if (says_way && is_group(parent) && !is_line(parent)) {
    return tl::unexpected(refusal(
        "edit-wrong-place", "found a place beside \"" + position.part + "\", which is part of <" +
                                std::string(parent.name) +
                                ">; expected one before or after it, or in a row or a column"));
  }
  if (is_group(parent) && (!says_way || parent.name == word_of(along))) {
    return slot_beside(draft, *part, before);
  }
  if (part->name == word_of(along)) return slot_within(draft, *part, before);
  return slot_in_new_group(draft, *part, along, before);
}

Done group(Draft& draft, const MakeGroup& edit) {
  std::vector<std::size_t> origins;
  std::vector<const Markup*> chosen;
  for (const std::string& name : edit.parts) {
    const Result<const Markup*> part = element_of(draft.job(), name);
    if (!part) return tl::unexpected(part.error());
    const Span all = (*part)->all;
    const bool overlaps = std::any_of(chosen.begin(), chosen.end(), [&](const Markup* other) {
      return all.begin < other->all.end && other->all.begin < all.end;
    });
    if (!is_part(**part) || overlaps) {
      return tl::unexpected(refusal(
          "edit-wrong-part", "found \"" + name + "\" among the parts of a new " +
                                 word_of(edit.along) +
                                 "; expected openings, rows and columns, none within another"));
    }
    chosen.push_back(*part);
    origins.push_back(all.begin);
  }
  if (chosen.empty()) {
    return tl::unexpected(
        refusal("edit-wrong-part", std::string("found no parts for a new ") + word_of(edit.along)));
  }
  const Markup& parent = parent_in(draft, *chosen.front());
  const std::vector<const Markup*> siblings = parts_in(parent);
  const auto first = std::find(siblings.begin(), siblings.end(), chosen.front());
  const bool neighbours = static_cast<std::size_t>(siblings.end() - first) >= chosen.size() &&
                          std::equal(chosen.begin(), chosen.end(), first);
  const Attributes attributes = with_gap_of(parent, edit.attributes);
  wrap(draft, *chosen.front(), neighbours ? *chosen.back() : *chosen.front(), edit.along,
       attributes);
  if (neighbours) return forget_places(draft, origins);
  for (std::size_t i = 1; i < origins.size(); ++i) {
    const Slot slot = slot_after(draft.text(), *element_from(draft, origins[i - 1]));
    move(draft, *element_from(draft, origins[i]), slot);
  }
  return forget_places(draft, origins);
}

// The row or column of that name.
Result<const Markup*> group_of(Draft& draft, const std::string& name) {
  Result<const Markup*> found = element_of(draft.job(), name);
  if (found && !is_line(**found)) {
    return tl::unexpected(
        refusal("edit-wrong-part", "found \"" + name + "\"; expected a row or a column"));
  }
  return found;
}

Done turn(Draft& draft, const TurnGroup& edit) {
  const Result<const Markup*> found = group_of(draft, edit.group);
  if (!found) return tl::unexpected(found.error());
  const Markup& group = **found;
  const Along from = group.name == word_of(Along::row) ? Along::row : Along::column;
  const Along to = from == Along::row ? Along::column : Along::row;
  const std::string word = word_of(to);
  const Span name = group.name_span;
  const std::string align = group.value("align");
  if (!group.has_one_tag) {
    const std::size_t end = group.inside.end + 2;
    draft.replace({end, end + end_tag_word(draft, group).size()}, word);
  }
  draft.replace(name, word);
  if (!align.empty()) {
    set_attribute(draft, element_at(draft, name.begin - 1), "align", align_along(align, from, to));
  }
  return {};
}

Done dissolve(Draft& draft, const Dissolve& edit) {
  const Result<const Markup*> found = group_of(draft, edit.group);
  if (!found) return tl::unexpected(found.error());
  const Markup& group = **found;
  if (parts_in(group).empty() ||
      (!is_group(parent_in(draft, group)) && parts_in(group).size() > 1)) {
    return tl::unexpected(refusal(
        "edit-outermost", "found \"" + edit.group +
                              "\", which holds all parts; expected one within a row or column"));
  }
  const std::size_t begin = group.all.begin;
  std::vector<std::size_t> grooves;
  for (const Markup& child : group.children) {
    if (child.name == "groove") grooves.push_back(child.all.begin);
  }
  for (auto it = grooves.rbegin(); it != grooves.rend(); ++it) {
    remove(draft, element_at(draft, *it));
  }
  const Markup& left = element_at(draft, begin);
  const std::string_view inside =
      std::string_view(draft.text()).substr(left.inside.begin, left.inside.end - left.inside.begin);
  const Span content{left.inside.begin + inside.find_first_not_of(blanks),
                     left.inside.begin + inside.find_last_not_of(blanks) + 1};
  const std::string outer = lead_of(draft.text(), left);
  const std::string inner = lead_of(draft.text(), left.children.front());
  draft.move(content, left.all.end, "", inner, outer);
  draft.remove(element_at(draft, begin).all);
  return {};
}

Done arrange(Draft& draft, const Arrange& edit) {
  const bool is_whole = tidy(edit.text).starts_with("<arrange");
  const std::string text = is_whole ? edit.text : "<arrange>" + edit.text + "</arrange>";
  Reading reading(text, {}, "arrange");
  pugi::xml_document document;
  load_document(reading, document);
  if (!reading.good()) return tl::unexpected(reading.problems());
  const std::string_view source = reading.source.text();
  const Markup taken = read_markup(source);
  const std::vector<const Markup*> parts = parts_in(taken);
  if (parts.size() != 1 || taken.children.size() != 1) {
    return tl::unexpected(
        refusal("edit-arrangement", "found " + std::to_string(taken.children.size()) +
                                        " elements in an arrangement; expected one opening, row or "
                                        "column"));
  }
  const Markup& section = section_of(draft, "arrange");
  const std::vector<const Markup*> old = parts_in(section);
  if (old.empty()) {
    const Slot slot = slot_at_end(draft, section);
    insert(draft, slot, Taken(draft, source).written(*parts.front(), slot.lead));
  } else {
    const Span span = old.front()->all;
    const std::string lead = lead_of(draft.text(), *old.front());
    const std::string written = Taken(draft, source).written(*parts.front(), lead);
    draft.replace(span, written);
  }
  return {};
}

}  // namespace mullion::edit
