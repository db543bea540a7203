#pragma once

// The papers of a job, made anew whenever it or a file that it names is saved.

#include <memory>
#include <string>
#include <thread>
#include <vector>

#include "cli/page/files.h"
#include "cli/page/halt.h"
#include "cli/page/papers.h"

namespace mullion::cli::page {

class Remaking {
 public:
  Remaking(std::string job, std::string folder, PaperWishes wishes);
  ~Remaking();  // halts what runs
  Remaking(const Remaking&) = delete;
  Remaking& operator=(const Remaking&) = delete;

  // Called now and then: begins where a file has changed and then stayed as it is for one look, and
  // nothing is being made. Says on standard output what became of it.
  void look();

 private:
  std::vector<Stamp> stamps() const;
  void begin();

  std::string job_, folder_;
  PaperWishes wishes_;
  std::vector<std::string> files_;
  std::vector<Stamp> seen_, made_of_;
  int version_ = 0;
  Halt halt_;
  std::atomic<bool> runs_ = false;
  std::thread thread_;
};

}  // namespace mullion::cli::page
