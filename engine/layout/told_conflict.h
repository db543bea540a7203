#pragma once

// Why a job cannot be laid out, and what a framer could state otherwise: the values of what the
// messages of lay_out say (engine/layout/layout.h).

#include <optional>
#include <string>
#include <vector>

#include "engine/layout/statement.h"
#include "engine/locale/locale.h"

namespace mullion {

namespace layout {

// One change. The statements take one number together, or the one statement is left out.
struct Way {
  std::vector<Statement> what;
  std::optional<Length> number;
  std::string words;  // "an outer width of 26 in"
};

struct ToldConflict {
  std::vector<Statement> parts;  // what cannot all hold
  std::vector<Way> ways;         // each settles this conflict; one of each conflict is needed
};

}  // namespace layout

// In the order of their sentences. Empty where the job can be laid out.
std::vector<layout::ToldConflict> conflicts_of(const Job& job, const Locale& locale = {});

}  // namespace mullion
