#pragma once

// What would resolve a conflict, as edits: each is tried on the job before it is offered.

#include <string>
#include <vector>

#include "engine/edit/edit.h"

namespace mullion {

struct Remedy {
  std::string words;  // "leave the outer width free: it becomes 26 in"
  edit::Edit edit;
};

inline constexpr std::size_t most_remedies = 4;

// Of a job that cannot be laid out: the stated sizes of which one, left free, makes that it can.
// Outer sizes come first, then borders, gaps and the least border. Empty where no single one helps.
// `text` is the job's file.
std::vector<Remedy> remedies_for(const std::string& text, const Job& job);

}  // namespace mullion
