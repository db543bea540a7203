#pragma once

// The cutter file: one `cutter` element in XML, described by cutter.xsd beside this header. Lengths
// without a unit are in the file's unit. Problems carry the place of what is wrong; all are
// reported.

#include "engine/cuts/cutter/profile.h"
#include "engine/xml/problem.h"

namespace mullion {

inline constexpr std::size_t largest_cutter_file = 1 << 20;

Result<CutterProfile> parse_cutter(std::string_view xml, const std::string& file);
Result<CutterProfile> read_cutter(const std::string& path);

// parse_cutter reads it back as the same profile.
std::string write_cutter(const CutterProfile& cutter);

// A generic cutter's id, or the path of a cutter file.
Result<CutterProfile> find_cutter(const std::string& name_or_path);

}  // namespace mullion
