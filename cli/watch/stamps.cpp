#include "cli/watch/stamps.h"

#include <sys/stat.h>

#include <filesystem>

#include "engine/job/read.h"

namespace mullion::cli::watch {
namespace {

void list_outlines(const Node& node, std::vector<std::string>& out) {
  if (const auto* opening = std::get_if<Opening>(&node.what)) {
    if (!opening->shape.file.empty()) out.push_back(opening->shape.file);
    return;
  }
  for (const Node& child : std::get<Group>(node.what).children) list_outlines(child, out);
}

}  // namespace

Stamps stamps_of(const std::vector<std::string>& files) {
  Stamps out;
  for (const std::string& file : files) {
    struct stat now {};
    if (::stat(file.c_str(), &now) != 0) now = {};
    out.push_back({now.st_ino, now.st_size, now.st_mtim.tv_sec, now.st_mtim.tv_nsec});
  }
  return out;
}

std::vector<std::string> files_of(const std::string& job_file) {
  std::vector<std::string> out{job_file};
  const auto job = read_job(job_file, Need::pictures);
  if (!job) return out;
  const std::filesystem::path folder = std::filesystem::path(job_file).parent_path();
  std::vector<std::string> named;
  for (const Picture& picture : job->pictures) {
    if (!picture.image.empty()) named.push_back(picture.image);
  }
  list_outlines(job->arrangement, named);
  for (const std::string& file : named) out.push_back(folder / file);
  return out;
}

}  // namespace mullion::cli::watch
