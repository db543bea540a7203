#pragma once

// Edits made, for tests.

#include <string>

#include "engine/edit/edit.h"

namespace test {

// The text after the edit; the inverse was tried too. Throws std::runtime_error where it is
// refused.
std::string edited(const std::string& text, const mullion::edit::Edit& edit);

// "sentence [code]" of the first reason; empty where it is not refused.
std::string refused(const std::string& text, const mullion::edit::Edit& edit);

}  // namespace test
