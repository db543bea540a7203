#pragma once

// A file whose outermost element says it all, read into a value.

#include <utility>

#include "engine/xml/document.h"
#include "engine/xml/element.h"

namespace mullion {

// `read(root, value)` is called unless the text is no XML with that outermost element.
template <class T, class Read>
Result<T> parse_root(std::string_view xml, const std::string& file, std::string_view root_name,
                     T value, const Read& read) {
  Reading reading(xml, file, root_name);
  pugi::xml_document document;
  if (const pugi::xml_node node = load_document(reading, document)) {
    Element root(reading, node);
    read(root, value);
  }
  if (!reading.good()) return tl::unexpected(reading.problems());
  return value;
}

}  // namespace mullion
