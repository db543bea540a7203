#pragma once

// The jobs that are being worked on: what their files hold now, and what was made of them lately.
// For one thread.

#include <deque>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "cli/page/files.h"
#include "cli/page/laid.h"
#include "engine/edit/history.h"

namespace mullion::cli::page {

class Desk {
 public:
  Desk(const Files& files, std::optional<CutterProfile> cutter, Locale locale)
      : files_(files), cutter_(std::move(cutter)), locale_(std::move(locale)) {}

  // What the job's file holds. Null where there is no such file, or none that may be read.
  LaidPtr now(const std::string& name);
  // A text of the job that was shown lately: the file's, an older one, a preview. Null: forgotten.
  LaidPtr lately(const std::string& name, const std::string& fingerprint);
  // A text that may become the file's.
  LaidPtr preview(const std::string& name, std::string text);

  // The last text of the file that could be laid out, for a job that no longer can. Where it was
  // not seen, the texts before the last edits are looked through. Null: there is none.
  LaidPtr last_closed(const std::string& name, const edit::History& history);

  // What has changed since the last look: the job's file, or only one that it names; `gone` where
  // there is no longer a file.
  enum class Change { none, text, named_files, gone };
  Change look(const std::string& name);

  // The images and outlines that the job names, below the folder.
  static std::vector<std::string> named_files(const std::string& name, const Laid& laid);
  static std::string file_of(const std::string& name) { return name + ".xml"; }

 private:
  struct OpenedJob {
    OpenJob open;
    LaidPtr current;
    LaidPtr closed;             // the last one with a mat
    std::string looked_behind;  // fingerprint of the text whose history was looked through
    std::deque<LaidPtr> recent;
    std::vector<std::string> named;  // images and outlines, below the folder
    std::vector<Stamp> stamps;       // of the file, then of those
    std::vector<Stamp> seen;         // by look(); empty: not looked at yet
    std::uint64_t used = 0;
  };

  OpenedJob& opened(const std::string& name);
  Surroundings around(const std::string& name) const;
  LaidPtr laid(OpenedJob& job, const std::string& name, std::string text) const;
  static LaidPtr keep(OpenedJob& job, LaidPtr laid);
  std::vector<Stamp> stamps_of(const std::string& name, const OpenedJob& job) const;

  const Files& files_;
  std::optional<CutterProfile> cutter_;
  Locale locale_;
  std::map<std::string, OpenedJob, std::less<>> jobs_;
  std::uint64_t clock_ = 0;
};

}  // namespace mullion::cli::page
