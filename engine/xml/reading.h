#pragma once

// What the parts of the reader share while one job file is read: the source text, the problems
// found so far, and the unit and scale that lengths without a unit are in. Other files of ours are
// read by the same means; they differ in the name of their root element.

#include <string>
#include <string_view>

#include "engine/length/format.h"
#include "engine/xml/limits.h"
#include "engine/xml/problem.h"
#include "engine/xml/source_text.h"

namespace mullion {

class Reading {
 public:
  // A byte order mark is no part of the source.
  Reading(std::string_view text, std::string file, std::string_view root_name = "job",
          std::size_t most = most_problems);

  // Keeps the first `most` and counts the rest. In a file other than a job, a code that
  // begins with "job-" begins with the root's name instead.
  void problem(std::size_t offset, std::string code, std::string message);
  // What was taken otherwise than it stands there, and is no fault. The code as in `problem`.
  void note(std::size_t offset, std::string code, std::string message);
  // No more will be listed: what would only find more problems may stop.
  bool full() const;
  bool good() const { return problems_.empty(); }
  // `; did you mean "x"?` where a candidate is near; else `; expected ` and all the candidates,
  // when they are few; else nothing.
  std::string hint(std::string_view found, const std::vector<std::string_view>& candidates) const;
  // In the order of their places; a last note says how many are not listed.
  Problems problems() const;
  const Problems& notes() const { return notes_; }

  const SourceText source;
  const std::string root;
  Scale scale;

 private:
  std::string file_;
  std::size_t most_;
  std::string of_root(std::string code) const;

  Problems problems_, notes_;
  std::size_t unlisted_ = 0;
};

// `"a", "b" or "c"`.
std::string alternatives(const std::vector<std::string_view>& words);

// At most 60 characters of the text, in double quotes.
std::string quoted(std::string_view text);

}  // namespace mullion
