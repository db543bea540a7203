#pragma once

// --separate and --trim, as every verb has them that tells of blanks or cuts.

#include <string>
#include <tl/expected.hpp>

#include "cli/command_line.h"
#include "engine/cuts/cuts.h"

namespace mullion::cli {

struct UnderMats {
  bool separate = false;
  std::string trim;
};

void add_under_mat_options(const Verb& verb, UnderMats& words);

// The error is a sentence about --trim.
tl::expected<CutOptions, std::string> cut_options(const UnderMats& words, Unit unit);

}  // namespace mullion::cli
