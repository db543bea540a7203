#include "cli/load.h"

#include <algorithm>
#include <cctype>
#include <cstdio>
#include <filesystem>

#include "cli/verb.h"
#include "engine/cuts/cutter/profile_file.h"
#include "engine/file/file.h"
#include "engine/job/read.h"

namespace mullion::cli {

Result<Loaded> load(const std::string& path) {
  Result<Job> job = read_job(path);
  if (!job) return tl::unexpected(std::move(job.error()));
  Result<Layout> layout = lay_out(*job);
  if (!layout) return tl::unexpected(std::move(layout.error()));
  Result<Mat> mat = build_mat(*job, *layout);
  if (!mat) return tl::unexpected(std::move(mat.error()));
  return Loaded{std::move(*job), std::move(*layout), std::move(*mat)};
}

int write_output(const std::string& path, std::string_view bytes) {
  if (path == "-") {
    const bool written = std::fwrite(bytes.data(), 1, bytes.size(), stdout) == bytes.size() &&
                         std::fflush(stdout) == 0;
    if (written) return success;
    return refuse(bad_file, "cannot write to standard output");
  }
  const auto written = replace_file(path, bytes);
  if (written) return success;
  return refuse(bad_file, written.error());
}

std::string ending_of(const std::string& path) {
  std::string ending = std::filesystem::path(path).extension().string();
  if (!ending.empty()) ending.erase(0, 1);
  std::transform(ending.begin(), ending.end(), ending.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return ending;
}

std::optional<paper::Format> format_of(const std::string& path) {
  const std::string ending = ending_of(path);
  if (path == "-" || ending == "pdf") return paper::Format::pdf;
  if (ending == "svg") return paper::Format::svg;
  if (ending == "png") return paper::Format::png;
  return std::nullopt;
}

int report_unknown_ending(const std::string& path) {
  return refuse(bad_usage,
                "found the output \"" + path + "\"; expected an ending of .pdf, .svg or .png");
}

Result<CutterProfile> cutter_for(const std::string& name_or_path, Unit unit) {
  if (!name_or_path.empty()) return find_cutter(name_or_path);
  return generic_cutter_for(unit);
}

}  // namespace mullion::cli
