#pragma once

// Finishes of the shop's file (engine/shop/shop.h): how a job takes one, and how one is kept.

#include "engine/edit/edit.h"
#include "engine/shop/shop.h"

namespace mullion::edit {

// By which a job comes to have the finish: its layers take these boards, are added or removed; a
// frame that it has takes the moulding. Lengths keep their size where the job has another unit.
Edit taking(const Finish& finish, const Job& job);

// The text of a shop's file with the finish in it, in place of one of its name; every other byte
// stays. Refused where the file would not be valid: problems are those of the shop's reader.
Result<EditedText> keeping(const Finish& finish, const std::string& shop, const std::string& file);

// A shop's file that says its name alone.
std::string new_shop(const std::string& name);

}  // namespace mullion::edit
