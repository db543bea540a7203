#pragma once

// Marking sticks: for each layer a strip of paper as long as its board is wide, and one as long as
// it is high, with every line on it. Laid along an edge of the board, from behind, its ticks are
// marked off there; the same at the opposite edge, and a straightedge joins the marks.
//
// Strips are longer than sheets: they come in pieces, which are laid over one another at the joins.

#include "render/template/pages.h"

namespace mullion {

// All layers of the views, on as few sheets as their pieces fill. The sheet is the one asked for,
// or office paper, across. Errors: paper that is too small.
Result<Pages> stick_pages(const std::vector<BoardView>& views, const TemplateOptions& options);

}  // namespace mullion
