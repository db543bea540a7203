#pragma once

// The line of a file in which a place lies, with a caret under the place:
//
//    12 |   <opning picture="dune"/>
//       |   ^~~~~~~

#include <string>
#include <string_view>

#include "cli/terminal.h"
#include "engine/xml/problem.h"

namespace mullion::cli {

// Two lines; empty where the text has no such place. Tabs are kept in both lines, so that they
// agree at every tab width. What lies far from the place in a long line is left out.
std::string excerpt(std::string_view source, Place place, const Paint& paint, Ink ink);

}  // namespace mullion::cli
