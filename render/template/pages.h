#pragma once

// The pages that a template is made of, before they are written.

#include <string>
#include <vector>

#include "render/template/board_drawing.h"
#include "render/template/template.h"

namespace mullion {

using SheetPage = paper::Page;
using Pages = std::vector<SheetPage>;

// One page of the board's size.
SheetPage board_page(const BoardView& view, const TemplateOptions& options);

// An overview, then the sheets of the whole board in rows.
Result<Pages> tiled_pages(const BoardView& view, const TemplateOptions& options);

// An overview, then sheets with a small piece for each corner, located from the board's edges.
Result<Pages> corner_pages(const BoardView& view, const TemplateOptions& options);

Problem template_problem(std::string code, std::string message);

}  // namespace mullion
