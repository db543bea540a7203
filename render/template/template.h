#pragma once

// The full-scale template that is taped to the back of a board.
//
// One page a layer at 1:1, mirrored, since the board lies face down: outer edge, the cut lines with
// their over-cuts, the face edge dashed, the waste hatched, and running dimensions from the two
// edges that can rest against the guide. SVG and PNG hold one layer.

#include <string>

#include "engine/job/job.h"
#include "engine/mat/mat.h"
#include "render/paper/document.h"

namespace mullion {

struct TemplateOptions {
  paper::Format format = paper::Format::pdf;
  int layer = 0;  // from 1; 0: all of them in a PDF, the first in an SVG or PNG
  double png_dpi = 150;
};

std::string render_template(const Job& job, const Mat& mat, const TemplateOptions& options);

// Where the board's upper left corner lies on the page.
struct TemplatePage {
  paper::PageSize size;
  Length board_left, board_top;
};
TemplatePage template_page(const Mat& mat);

}  // namespace mullion
