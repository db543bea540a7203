#pragma once

// Every code that the program prints, explained: the one table that `mullion explain` reads. The
// checks' own entries are those of engine/mat/checks.h.
//
// Files of other kinds than jobs share the job reader, which names its problems after their
// outermost element: "prices-unknown-word" is explained by "job-unknown-word".

#include <string_view>
#include <vector>

#include "engine/xml/explanation.h"

namespace mullion {

// Families one after the other, each in the order in which a job meets them.
const std::vector<Explanation>& explanations();

// Null where there is none.
const Explanation* explanation_of(std::string_view code);

}  // namespace mullion
