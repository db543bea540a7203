#pragma once

// A job in which one statement has another number, or is left out.

#include "engine/layout/statement.h"

namespace mullion::layout {

// `number` is in place of the statement's value: an outer size where the frame states it. Nothing:
// left out. Unchanged where the statement has no number of its own.
void change(Job& job, const Statement& statement, std::optional<Length> number);

}  // namespace mullion::layout
