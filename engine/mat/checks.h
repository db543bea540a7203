#pragma once

// What a master would look at before the first cut. Each check has a code, a severity and a
// reason; `check_table` lists them all.

#include <string_view>
#include <vector>

#include "engine/mat/mat.h"

namespace mullion {

struct CheckInfo {
  std::string_view code;
  Severity severity;
  std::string_view summary;  // one line
  std::string_view reason;   // why it matters and what to do
};

const std::vector<CheckInfo>& check_table();

// The findings, in the order of the table and then of the openings. A size that the layout moved
// ("layout-moved") is in Layout::notes and is not repeated here.
Problems check_mat(const Job& job, const Layout& layout, const Mat& mat);

}  // namespace mullion
