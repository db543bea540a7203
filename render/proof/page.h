#pragma once

// The proof as one HTML file that stands alone: it loads nothing, runs a few lines of script, and
// reads without them. Its picture is vectors and photographs sampled down for a screen; layers and
// choices can be hidden, openings tell their sizes, and it prints on one or two sheets.

#include "render/proof/sheet.h"

namespace mullion::proof {

// Errors are picture files that cannot be decoded.
Result<std::string> render_page(const Sheet& sheet);

}  // namespace mullion::proof
