#pragma once

// What the text of a job file comes to: the job, its layout and mat, and all that is wrong.

#include <memory>
#include <optional>
#include <string>

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

// `file` is where the text stands or would stand. `open` is the job's own; `cutter` is asked
// whether the mat can be cut on it, the usual one of the job's unit where it is null. What is wrong
// is said in the locale's language.
std::shared_ptr<Laid> lay(std::string text, const std::string& file, OpenJob& open,
                          const CutterProfile* cutter, const Locale& locale);

// Of a job that is arranged and cannot be laid out: what would help, and what each conflict is
// about.
void find_remedies(Laid& laid, const Locale& locale);

}  // namespace mullion::cli::page
