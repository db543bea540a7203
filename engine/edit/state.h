#pragma once

// How a value comes into the text: which attribute says it, what it cannot stand beside, and where
// it is made if it is not there.

#include "engine/edit/draft.h"
#include "engine/edit/edit.h"

namespace mullion::edit {

tl::expected<void, Problems> state(Draft& draft, const State& edit);

// The lengths of an element that may go without a unit.
bool is_length(std::string_view element, std::string_view attribute);

}  // namespace mullion::edit
