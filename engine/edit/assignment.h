#pragma once

// Edits as somebody types them: NAME=VALUE, with the names of edit.h. "border.left=3" states,
// "outer.width=free" frees, "layer.2.board=" takes the attribute out of the file. Blanks around the
// name and the value do not count.

#include <string>
#include <vector>

#include "engine/edit/edit.h"

namespace mullion::edit {

// All of them as one edit. A text without "=", or without a name, is refused ("usage").
Result<Edit> edit_of(const std::vector<std::string>& assignments);

// The lines of a text before and after an edit, without the blanks around them.
struct ChangedLines {
  int line = 0;                            // of the first one, in the text after
  std::vector<std::string> before, after;  // empty where lines came or went
};

std::vector<ChangedLines> changed_lines(const std::string& before, const EditedText& edited);

}  // namespace mullion::edit
