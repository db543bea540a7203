#pragma once

// What follows where parts are renamed, counted anew or gone: rules, `only`, `picture`, and the
// numbers of layers.

#include "engine/edit/draft.h"
#include "engine/xml/problem.h"

namespace mullion::edit {

// Brings the draft's mentions from the names of its text before to those that it has now. A rule
// that is left with too few names goes.
tl::expected<void, Problems> follow_names(Draft& draft);

// Gaps that are not between two neighbours any more, rows and columns left empty or with one part.
void tidy_arrangement(Draft& draft);

}  // namespace mullion::edit
