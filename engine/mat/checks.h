#pragma once

// What a master would look at before the first cut. Each check has a code, a severity, a reason
// and an advice; `check_table` lists them all, with those of engine/cuts/refusal.h.

#include <vector>

#include "engine/mat/mat.h"
#include "engine/xml/explanation.h"

namespace mullion {

const std::vector<Explanation>& check_table();

// The findings, in the order of the table and then of the openings. A size that the layout moved
// ("layout-moved") is in Layout::notes and is not repeated here. In the locale's language.
Problems check_mat(const Job& job, const Layout& layout, const Mat& mat, const Locale& locale = {});

}  // namespace mullion
