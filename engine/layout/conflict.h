#pragma once

// Puts a conflict of rules into a framer's words, with a change that would resolve it.

#include "engine/layout/model.h"
#include "engine/layout/told_conflict.h"

namespace mullion::layout {

// The first problem states the conflict at the place of its first statement; notes at the places
// of all its statements follow. Then come, in the same way, conflicts among other statements: the
// height's beside the width's.
Problems describe_conflict(const Job& job, const Model& model, const solver::Conflict& conflict,
                           const Locale& locale = {});

// The same as values.
std::vector<ToldConflict> conflicts_of(const Job& job, const Model& model,
                                       const solver::Conflict& conflict, const Locale& locale);

}  // namespace mullion::layout
