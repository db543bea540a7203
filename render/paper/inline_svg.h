#pragma once

// An SVG made to stand among the elements of an HTML page: its inner elements, with ids that begin
// with a prefix, and attributes in place of style attributes, which a strict policy does not allow.

#include <string>

namespace mullion::paper {

// Empty where it is no XML.
std::string inline_elements(const std::string& svg, const std::string& prefix);

}  // namespace mullion::paper
