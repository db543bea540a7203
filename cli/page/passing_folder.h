#pragma once

#include <string>

namespace mullion::cli::page {

// A new folder for files that pass, which is taken away at the end. Throws std::runtime_error.
class PassingFolder {
 public:
  PassingFolder();
  ~PassingFolder();
  PassingFolder(const PassingFolder&) = delete;
  PassingFolder& operator=(const PassingFolder&) = delete;

  const std::string& path() const { return path_; }

 private:
  std::string path_;
};

}  // namespace mullion::cli::page
