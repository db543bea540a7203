#pragma once

// The outline of an opening in an SVG file: one `path` element, by its id or the only one there.
//
// Transforms of the path and of the groups around it are applied; size, position and proportion are
// then those of the opening. Refuses files above 4 MiB and whatever parse_path refuses. Problems
// name the SVG file and the place of the path in it.

#include <string>

#include "engine/mat/svg_path.h"
#include "engine/xml/problem.h"

namespace mullion {

Result<FreePath> read_svg_path(const std::string& file, const std::string& id);

// As above from the file's bytes; `name` is for messages.
Result<FreePath> find_svg_path(const std::string& bytes, const std::string& id,
                               const std::string& name);

}  // namespace mullion
