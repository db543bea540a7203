#pragma once

// The outline of an opening in an SVG file: one `path` element, by its id or the only one there.
//
// Transforms of the path and of the groups around it are applied; size, position and proportion are
// then those of the opening. Refuses files above largest_svg_file and whatever parse_path refuses.
// Problems name the SVG file and the place of the path in it.

#include <string>
#include <vector>

#include "engine/mat/svg_path.h"
#include "engine/xml/problem.h"

namespace mullion {

inline constexpr std::size_t largest_svg_file = 4u << 20;

Result<FreePath> read_svg_path(const std::string& file, const std::string& id);

// As above from the file's bytes; `name` is for messages.
Result<FreePath> find_svg_path(const std::string& bytes, const std::string& id,
                               const std::string& name);

// By what ids outlines are found in it, in their order; an empty one where there is only one path,
// without an id. Those that are refused are left out; where all are, the problem of the first.
Result<std::vector<std::string>> svg_path_ids(const std::string& bytes, const std::string& name);

}  // namespace mullion
