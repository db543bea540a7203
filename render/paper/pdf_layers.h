#pragma once

// Layers of a PDF that a viewer can show and hide: optional content (ISO 32000-1, 8.11).

#include <string>
#include <vector>

class QPDF;

namespace mullion::paper {

// Cairo has marked each page's layers as elements of the document's structure, numbered from 0.
// They become optional content groups with the given names, page by page; the structure goes.
void make_layers(QPDF& document, const std::vector<std::vector<std::string>>& names_by_page);

}  // namespace mullion::paper
