#pragma once

// Suggestions for jobs while one looks on: each search is a child process that can be stopped. What
// it finds is offered only where the edit that takes it gives a job that can be laid out, and is
// drawn as that job comes out. For the thread of the events.

#include <map>
#include <memory>
#include <string>
#include <vector>

#include "cli/page/laid.h"
#include "cli/page/state.h"

namespace mullion::cli::page {

class Ideas {
 public:
  Ideas();
  ~Ideas();  // stops what runs

  // False where too many searches run. An older search of the job is stopped and forgotten.
  bool begin(const std::string& name, const std::string& path, const LaidPtr& laid, int most,
             const std::string& sizes);
  void stop(const std::string& name);

  // {running, looked_at, every_one, suggestions [{number, width, height, words, svg, edits}],
  // problems}.
  Json told(const std::string& name) const;

  struct News {
    std::string name;
    bool running = false;
    std::uint64_t looked_at = 0;
  };
  std::vector<News> news();  // since it was last called

 private:
  struct Search;
  std::map<std::string, std::unique_ptr<Search>, std::less<>> searches_;
};

}  // namespace mullion::cli::page
