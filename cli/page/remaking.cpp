#include "cli/page/remaking.h"

#include <sys/stat.h>

#include <cstdio>
#include <filesystem>

#include "cli/page/desk.h"
#include "engine/job/read.h"

namespace mullion::cli::page {

Remaking::Remaking(std::string job, std::string folder, PaperWishes wishes)
    : job_(std::move(job)), folder_(std::move(folder)), wishes_(std::move(wishes)) {
  begin();
}

Remaking::~Remaking() {
  halt_.now();
  if (thread_.joinable()) thread_.join();
}

std::vector<Stamp> Remaking::stamps() const {
  std::vector<Stamp> out;
  for (const std::string& file : files_) out.push_back(stamp_of_path(file));
  return out;
}

void Remaking::look() {
  if (runs_) return;
  const std::vector<Stamp> now = stamps();
  const bool rests = now == seen_;
  seen_ = now;
  if (rests && now != made_of_) begin();
}

void Remaking::begin() {
  if (thread_.joinable()) thread_.join();
  files_ = {job_};
  Laid laid;
  if (auto job = read_job(job_, Need::pictures)) laid.job = std::move(*job);
  for (std::string& file : Desk::named_files(job_, laid)) files_.push_back(std::move(file));
  for (const std::string& file : {wishes_.shop, wishes_.prices, wishes_.cutter}) {
    if (!file.empty()) files_.push_back(file);
  }
  made_of_ = seen_ = stamps();
  runs_ = true;
  thread_ = std::thread([this, version = ++version_] {
    const MadeAnew made = make_anew(job_, folder_, wishes_, halt_);
    if (!halt_.is_asked()) {
      std::fputs(made.problems.c_str(), stderr);
      std::printf("save %d: %s\n", version,
                  made.failed == 0 ? "all is made anew"
                  : made.made == 0 ? "nothing is made anew"
                                   : "some is not made anew");
      std::fflush(stdout);
    }
    runs_ = false;
  });
}

}  // namespace mullion::cli::page
