#pragma once

// The XML below the job file: parses it with pugixml, and refuses what a job file has no use for
// (document type declarations, other encodings than UTF-8, excessive depth) and what pugixml lets
// pass although it is not well-formed XML 1.0.

#include <pugixml.hpp>

#include "engine/xml/reading.h"

namespace mullion {

// The root element, named as the reading says, or a null node after a problem that makes further
// reading pointless. The document owns the nodes; their offset_debug() is an offset into the
// reading's source.
pugi::xml_node load_document(Reading& reading, pugi::xml_document& document);

// Offset of an element's "<", or of the first byte of a text.
std::size_t offset_of(const pugi::xml_node& node);

// Of the first character that is no blank in a text.
std::size_t offset_of_text(const Reading& reading, const pugi::xml_node& node);

// Reports an entity reference that XML does not define or a character reference it does not
// allow, in the raw text that begins at `offset` of the source.
void check_references(Reading& reading, std::string_view raw, std::size_t offset);

}  // namespace mullion
