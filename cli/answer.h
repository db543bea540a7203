#pragma once

// How a verb answers. In words: results on standard output, problems on standard error. With
// --json: one document on standard output that holds both, and nothing on standard error.

#include <string>

#include "cli/load.h"
#include "engine/report/report.h"

namespace mullion::cli {

class Answer {
 public:
  explicit Answer(std::string verb) : verb_(std::move(verb)) {}

  void add_option(const Verb& verb);
  bool is_json() const { return json_; }

  // What stops the verb. Returns the exit status.
  int fail(const Problems& problems) const;
  int fail(Problem problem) const { return fail(Problems{std::move(problem)}); }
  int fail_option(const char* option, const std::string& why) const {
    return fail(option_problem(option, why));
  }
  // A job that is wrong as a whole.
  int fail_job(std::string code, std::string message) const;

  // Replaces a file that the verb makes. Says what is wrong and returns the status.
  int save(const std::string& path, std::string_view bytes) const;

  // The result in whichever form was asked for.
  template <class Words, class Json>
  int give(Words words, Json json) const {
    return write_output("-", json_ ? json() : words());
  }

 private:
  std::string verb_;
  bool json_ = false;
};

}  // namespace mullion::cli
