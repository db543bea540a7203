#pragma once

// What Cairo does not write into a PDF.

#include <string>
#include <vector>

#include "render/paper/kept_jpegs.h"

namespace mullion::paper {

// Asks the viewer for no print scaling (ISO 32000-1, table 150), puts photographs in place and
// states their colours (pdf_images.h), gives the file an ID that depends on its contents alone, and
// makes the layers that each page has begun (pdf_layers.h).
std::string finish_pdf(const std::string& pdf,
                       const std::vector<std::vector<std::string>>& layers_by_page,
                       const KeptJpegs& jpegs);

}  // namespace mullion::paper
