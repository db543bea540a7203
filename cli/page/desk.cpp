#include "cli/page/desk.h"

#include <algorithm>
#include <filesystem>

#include "engine/edit/text_change.h"
#include "engine/xml/limits.h"

namespace mullion::cli::page {
namespace {

constexpr std::size_t most_jobs = 24, most_recent = 12, most_looked_behind = 200;

}  // namespace

Desk::OpenedJob& Desk::opened(const std::string& name) {
  if (!jobs_.contains(name) && jobs_.size() >= most_jobs) {
    jobs_.erase(std::min_element(jobs_.begin(), jobs_.end(), [](const auto& a, const auto& b) {
      return a.second.used < b.second.used;
    }));
  }
  OpenedJob& job = jobs_[name];
  job.used = ++clock_;
  return job;
}

std::vector<std::string> Desk::named_files(const std::string& name, const Laid& laid) {
  std::vector<std::string> out;
  if (!laid.job) return out;
  for (const Picture& picture : laid.job->pictures) {
    if (!picture.image.empty()) out.push_back(picture.image);
  }
  const std::vector<std::string> outlines = outlines_of(*laid.job);
  out.insert(out.end(), outlines.begin(), outlines.end());
  const std::filesystem::path folder = std::filesystem::path(name).parent_path();
  for (std::string& file : out) file = (folder / file).string();
  return out;
}

std::vector<Stamp> Desk::stamps_of(const std::string& name, const OpenedJob& job) const {
  std::vector<Stamp> out{files_.stamp(file_of(name))};
  for (const std::string& file : job.named) out.push_back(files_.stamp(file));
  return out;
}

LaidPtr Desk::keep(OpenedJob& job, LaidPtr laid) {
  std::erase_if(job.recent,
                [&](const LaidPtr& one) { return one->fingerprint == laid->fingerprint; });
  job.recent.push_back(laid);
  if (job.recent.size() > most_recent) job.recent.pop_front();
  return laid;
}

Surroundings Desk::around(const std::string& name) const {
  const std::filesystem::path folder = std::filesystem::path(name).parent_path();
  return {cutter_ ? &*cutter_ : nullptr, locale_, [this, folder](const std::string& outline) {
            return !files_.is_outside((folder / outline).string());
          }};
}

LaidPtr Desk::laid(OpenedJob& job, const std::string& name, std::string text) const {
  const auto out = lay(std::move(text), files_.path_of(file_of(name)), job.open, around(name));
  find_remedies(*out, locale_);
  return out;
}

LaidPtr Desk::now(const std::string& name) {
  if (files_.stamp(file_of(name)) == Stamp{}) {
    return nullptr;
  }
  OpenedJob& job = opened(name);
  std::vector<Stamp> stamps = stamps_of(name, job);
  if (job.current && stamps == job.stamps) return job.current;
  auto text = files_.read(file_of(name), largest_job_file);
  if (!text) return nullptr;
  const bool same_text = job.current && job.current->text == *text;
  const bool same_files = same_text && std::equal(stamps.begin() + 1, stamps.end(),
                                                  job.stamps.begin() + 1, job.stamps.end());
  if (!same_files) {
    job.current = laid(job, name, std::move(*text));
    job.named = named_files(name, *job.current);
    const Stamp own = stamps.front();
    stamps = stamps_of(name, job);
    stamps.front() = own;  // of before it was read
  }
  job.stamps = std::move(stamps);
  if (job.current->mat) job.closed = job.current;
  return keep(job, job.current);
}

LaidPtr Desk::lately(const std::string& name, const std::string& fingerprint) {
  const auto job = jobs_.find(name);
  if (job == jobs_.end()) return nullptr;
  for (const LaidPtr& laid : job->second.recent) {
    if (laid->fingerprint == fingerprint) return laid;
  }
  return nullptr;
}

LaidPtr Desk::preview(const std::string& name, std::string text) {
  if (LaidPtr known = lately(name, edit::fingerprint(text)); known && known->text == text) {
    return known;
  }
  OpenedJob& job = opened(name);
  return keep(job, laid(job, name, std::move(text)));
}

LaidPtr Desk::last_closed(const std::string& name, const edit::History& history) {
  const LaidPtr current = now(name);
  if (!current) return nullptr;
  OpenedJob& job = opened(name);
  if (job.closed || job.looked_behind == current->fingerprint) return job.closed;
  job.looked_behind = current->fingerprint;
  const auto closes = [&](const std::string& text) {
    const auto before = lay(text, files_.path_of(file_of(name)), job.open, around(name));
    if (before->mat) job.closed = before;
    return before->mat.has_value();
  };
  history.earlier(current->text, closes, most_looked_behind);
  return job.closed;
}

Desk::Change Desk::look(const std::string& name) {
  const auto found = jobs_.find(name);
  const std::vector<Stamp> nothing(1);
  if (files_.stamp(file_of(name)) == Stamp{}) {
    const bool was_there = found != jobs_.end() && found->second.seen != nothing;
    if (found != jobs_.end()) found->second.seen = nothing;
    return was_there ? Change::gone : Change::none;
  }
  if (found == jobs_.end()) return Change::none;
  std::vector<Stamp> stamps = stamps_of(name, found->second);
  std::vector<Stamp>& seen = found->second.seen;
  const bool first = seen.empty(), same = stamps == seen;
  const bool same_text = !first && stamps.front() == seen.front();
  seen = std::move(stamps);
  return first || same ? Change::none : same_text ? Change::named_files : Change::text;
}

}  // namespace mullion::cli::page
