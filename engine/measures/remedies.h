#pragma once

// What would resolve a conflict, as edits: each is tried on the job before it is offered.

#include <string>
#include <vector>

#include "engine/edit/edit.h"
#include "engine/layout/told_conflict.h"

namespace mullion {

struct Remedy {
  std::string words;  // "an outer width of 26 in", "leave the outer width free: it becomes 26 in"
  edit::Edit edit;
};

inline constexpr std::size_t most_remedies = 6;

// Of a job that cannot be laid out for these conflicts: the numbers that the conflicts' sentences
// propose, one for each conflict, then stated sizes that may be left free. Each was applied to the
// job's text, read, laid out, and no check finds an error in it. Empty where none helps.
std::vector<Remedy> remedies_for(const std::string& text, const Job& job,
                                 const std::vector<layout::ToldConflict>& conflicts,
                                 const Locale& locale = {});

}  // namespace mullion
