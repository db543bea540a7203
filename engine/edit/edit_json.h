#pragma once

// Edits as JSON, for the page and for other programs. One object each:
//
//   {"kind": "state", "name": "border.left", "value": "3"}         value null takes it out
//   {"kind": "add", "element": "picture", "attributes": {"width": "8", ...}, "opening": {...},
//    "at": {"where": "right", "part": "opening.dune"}}             all but element may be left out
//   {"kind": "remove", "part": "layer.2"}
//   {"kind": "copy", "part": "picture.dune", "id": "dune-2"}       id may be left out
//   {"kind": "move", "part": "opening.dune", "to": {"where": "before", "part": "opening.pier"}}
//   {"kind": "group", "along": "row", "parts": ["opening.dune", ...], "attributes": {...}}
//   {"kind": "turn", "group": "arrange.1"}
//   {"kind": "dissolve", "group": "arrange.1.2"}
//   {"kind": "arrange", "text": "<column>...</column>"}
//   {"kind": "change", "changes": [{"offset": 10, "removed": "3", "inserted": "4"}]}
//   {"kind": "several", "edits": [...]}
//
// where: before, after, left, right, above, below, first_in, last_in. Names and values in edit.h.

#include <string>
#include <string_view>

#include "engine/edit/edit.h"

namespace mullion::edit {

inline constexpr std::size_t most_edits = 10'000;  // in one
inline constexpr std::size_t deepest_edits = 8;    // within one another

// What is not of that form is refused: one sentence that says where, code "edit-json".
Result<Edit> edit_from_json(std::string_view json);

// Keys in the order above; what is empty is left out. Text that is no UTF-8 becomes U+FFFD.
std::string edit_to_json(const Edit& edit);

}  // namespace mullion::edit
