#pragma once

// Whether a mat can be cut on a cutter: the board across its rail, the longest cut along it. The
// findings are checks like those of engine/mat/checks.h: "check-cutter-wide", "check-cutter-long",
// each at most once.

#include "engine/cuts/cutter/profile.h"
#include "engine/layout/layout.h"
#include "engine/mat/mat.h"

namespace mullion {

Problems check_on_cutter(const Job& job, const Layout& layout, const Mat& mat,
                         const CutterProfile& cutter);

}  // namespace mullion
