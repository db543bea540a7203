#pragma once

// Puts elements into a draft and takes them out, line by line as a person would: what stands on a
// line of its own gets one, what stands within a line stays within it, and a comment that follows
// an element on its line stays with it.

#include <string>
#include <string_view>

#include "engine/edit/draft.h"
#include "engine/edit/edit.h"

namespace mullion::edit {

// The line's end and the blanks before an element that begins its line; else nothing.
std::string lead_of(std::string_view text, const Markup& element);

// The blanks by which what stands within another thing is set in.
std::string step_of(Draft& draft);

// A place for one more element, and the lead that it has there.
struct Slot {
  std::size_t at = 0;
  std::string lead;
};
Slot slot_after(std::string_view text, const Markup& element);
Slot slot_before(std::string_view text, const Markup& parent, const Markup& element);

// Behind the last child. An element with one tag gets two: this changes the draft, so that the
// parent is found by its place in the text afterwards.
Slot slot_at_end(Draft& draft, const Markup& parent);

// The element's tag, with nothing in it.
std::string tag_of(std::string_view name, const Attributes& attributes);

void insert(Draft& draft, const Slot& slot, std::string_view element);
// With what follows on its line; `element` belongs to the draft as it is.
void move(Draft& draft, const Markup& element, const Slot& slot);
// The comment on its line stays.
void remove(Draft& draft, const Markup& element);

// Removes it, if there is nothing left in it.
void remove_if_empty(Draft& draft, std::string_view section);

// A child of the job that is there afterwards: made at its usual place if need be, which is that of
// the job file's description.
const Markup& section_of(Draft& draft, std::string_view name, const Attributes& attributes = {});

void set_attribute(Draft& draft, const Markup& element, std::string_view name,
                   std::string_view value);
// In place of another attribute.
void exchange_attribute(Draft& draft, const WrittenValue& old, const Attributes& attributes);
void remove_attribute(Draft& draft, const Markup& element, std::string_view name);

// The element that begins there in the draft as it is.
const Markup& element_at(Draft& draft, std::size_t begin);
// The same element after changes, by where it stood before; null where it is gone.
const Markup* element_from(Draft& draft, std::size_t origin);

}  // namespace mullion::edit
