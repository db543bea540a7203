#pragma once

// What Cairo does not write into a PDF.

#include <string>

namespace mullion::paper {

// Asks the viewer for no print scaling (ISO 32000-1, table 150) and gives the file an ID that
// depends on its contents alone.
std::string finish_pdf(const std::string& pdf);

}  // namespace mullion::paper
