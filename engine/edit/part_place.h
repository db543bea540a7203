#pragma once

// The attributes that say where a part lies in its group, by what the group is: move-left and its
// like in a row, a column or a ring, centre in a ring, left and its like in places on the mat.

#include <string_view>
#include <vector>

#include "engine/edit/draft.h"

namespace mullion::edit {

// Those that are lengths.
const std::vector<std::string_view>& place_lengths();

// Takes away what the part's group does not understand, of the part that begins there.
void forget_foreign_place(Draft& draft, std::size_t part);

// What `from` says of its place, in place of what the part that begins there says of its own.
void set_place_of(Draft& draft, std::size_t part, const Markup& from);

// What the first says of its place goes to the group that was put around it and begins at `group`.
void take_place_of_first(Draft& draft, std::size_t group);

}  // namespace mullion::edit
