#pragma once

// Edits of which parts there are and how they stand: what is added, taken away, copied, moved and
// grouped.

#include "engine/edit/draft.h"
#include "engine/edit/edit.h"
#include "engine/edit/placing.h"

namespace mullion::edit {

using Done = tl::expected<void, Problems>;

Done add(Draft& draft, const Add& edit);
Done remove(Draft& draft, const Remove& edit);
Done copy(Draft& draft, const Copy& edit);
Done move(Draft& draft, const Move& edit);
Done group(Draft& draft, const MakeGroup& edit);
Done turn(Draft& draft, const TurnGroup& edit);
Done dissolve(Draft& draft, const Dissolve& edit);
Done arrange(Draft& draft, const Arrange& edit);

// A place for a part of the arrangement; makes a row or a column around the part that it stands
// beside if need be. `moving` is where the part stood that goes there; nothing if it is new.
Result<Slot> slot_for_part(Draft& draft, const Position& position);

// A name that no picture, opening, row, column or gap has: the wish, or the wish and a number.
std::string free_id(Draft& draft, const std::string& wish);

}  // namespace mullion::edit
