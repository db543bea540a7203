#pragma once

// What the text of a job file comes to: the job, its layout and mat, and all that is wrong.

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "engine/cuts/cuts.h"
#include "engine/locale/locale.h"
#include "engine/measures/concern.h"
#include "engine/measures/remedies.h"

namespace mullion::cli::page {

// Stays where it is: the cuts refer to the mat.
struct Laid {
  Laid() = default;
  Laid(const Laid&) = delete;
  Laid& operator=(const Laid&) = delete;

  std::string text, fingerprint;  // edit::fingerprint of the text
  std::optional<Job> job;         // nothing: the text is no job
  std::optional<Layout> layout;   // nothing: not arranged yet, or there is a conflict
  std::optional<Mat> mat;
  std::optional<Cuts> cuts;       // of the mat
  std::vector<Remedy> remedies;   // where it is arranged and cannot be laid out
  std::vector<Concern> concerns;  // then: of each conflict, in the order of the errors
  Problems problems;              // of the text, the layout, the mat and the checks, in this order
};

using LaidPtr = std::shared_ptr<const Laid>;

// In which a text is laid out.
struct Surroundings {
  const CutterProfile* cutter = nullptr;  // null: the usual one of the job's unit
  Locale locale;                          // in which is said what is wrong
  std::function<bool(const std::string& outline)> may_read;  // as the job names it; unset: any
};

// `file` is where the text stands or would stand. `open` is the job's own.
std::shared_ptr<Laid> lay(std::string text, const std::string& file, OpenJob& open,
                          const Surroundings& around);

std::vector<std::string> outlines_of(const Job& job);  // files

// Of a job that is arranged and cannot be laid out: what would help, and what each conflict is
// about.
void find_remedies(Laid& laid, const Locale& locale);

}  // namespace mullion::cli::page
