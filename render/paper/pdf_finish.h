#pragma once

// What Cairo does not write into a PDF.

#include <string>
#include <vector>

namespace mullion::paper {

// Asks the viewer for no print scaling (ISO 32000-1, table 150), states the colours of photographs
// (pdf_colours.h), gives the file an ID that depends on its contents alone, and makes the layers
// that each page has begun (pdf_layers.h).
std::string finish_pdf(const std::string& pdf,
                       const std::vector<std::vector<std::string>>& layers_by_page);

}  // namespace mullion::paper
