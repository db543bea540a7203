#pragma once

// A proof on as many pages of the paper as it takes: the pictures first, a row of choices on a page
// of its own where two would be too small, then what they are made of, and the line to sign whole.

#include <vector>

#include "render/proof/sheet.h"

namespace mullion::proof {

// Errors are picture files that cannot be decoded.
Result<std::vector<paper::Page>> draw_pages(const Sheet& sheet, paper::Format format);

}  // namespace mullion::proof
