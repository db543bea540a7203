#pragma once

// The way of the data up to the mat, and the end of it: bytes to files.

#include <optional>
#include <string>
#include <string_view>

#include "cli/report.h"
#include "engine/cuts/cutter/profile.h"
#include "engine/job/job.h"
#include "engine/layout/layout.h"
#include "engine/mat/checks.h"
#include "render/paper/document.h"

namespace mullion::cli {

struct Loaded {
  Job job;
  Layout layout;
  Mat mat;
};

Result<Loaded> load(const std::string& path);

// Writes beside `path` and renames; `-` is standard output. Returns the exit status.
int write_output(const std::string& path, std::string_view bytes);

// "pdf" of "a/b.PDF"; empty where there is none.
std::string ending_of(const std::string& path);

// What a file is to hold by its ending: .pdf, .svg or .png; a PDF where it is `-`.
std::optional<paper::Format> format_of(const std::string& path);
int report_unknown_ending(const std::string& path);

// The cutter of that name or file; where none is given, the generic one for the unit.
Result<CutterProfile> cutter_for(const std::string& name_or_path, Unit unit);

}  // namespace mullion::cli
