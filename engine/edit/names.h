#pragma once

// What the names of edits stand for in the text of a job (edit.h says what names there are).

#include <string>
#include <string_view>
#include <vector>

#include "engine/edit/markup.h"
#include "engine/xml/problem.h"

namespace mullion::edit {

// An opening, a row, a column, a ring, places or a gap of the arrangement.
struct NamedPart {
  const Markup* element = nullptr;
  const Markup* parent = nullptr;
  std::string id;  // an opening's usual one where it has none of its own; else empty
};

// In the order of the file.
std::vector<NamedPart> named_parts(const Markup& job);

// Openings and groups among the children of a group or of arrange.
std::vector<const Markup*> parts_in(const Markup& group);

bool is_line(const Markup& element);   // a row or a column
bool is_group(const Markup& element);  // or a ring, or places on the mat
bool is_part(const Markup& element);   // or an opening

struct Target {
  const Markup* element = nullptr;  // null where it is not there and would have to be made:
  const Markup* parent = nullptr;   // in here,
  std::string element_name;         // as this,
  const Markup* after = nullptr;    // behind this part, if it is a gap,
  std::string layer;                // for this layer, if it is a reveal
  std::string attribute;            // empty where the name ends with the element

  bool is(std::string_view name) const { return element_name == name; }
};

Result<Target> target_of(const Markup& job, std::string_view name);

// An element that is there, without an attribute.
Result<const Markup*> element_of(const Markup& job, std::string_view name);

// One problem without a place.
Problems refusal(std::string code, std::string message);

}  // namespace mullion::edit
