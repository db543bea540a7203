#pragma once

// The layers of a PDF, optional content by ISO 32000-1, 8.11, as qpdf finds them.

#include <string>
#include <vector>

namespace oracle {

// The names, in the order in which a viewer lists them. Throws std::runtime_error where the file
// cannot be read or a listed layer is none.
std::vector<std::string> pdf_layers(const std::string& path);

// A copy of the file in which the layer of that name starts hidden; the copy's path. Throws
// std::runtime_error where there is no such layer.
std::string without_layer(const std::string& path, const std::string& name);

}  // namespace oracle
