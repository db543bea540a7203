#pragma once

#include <string>

#include "cli/answer.h"

namespace mullion::cli {

// Undoes what was last done to a stock file, by its ledger, and says what that was. Returns the
// exit status.
int undo_last(const std::string& stock, std::string_view verb, const Answer& answer);

}  // namespace mullion::cli
