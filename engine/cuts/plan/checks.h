#pragma once

// What a rule must show while a stage is cut, so that a mistake is found before it is repeated:
// where the first two lines lie, the size of the first fallout, the openings at the end, and the
// reveal that a trial on scrap shows before an under-mat is cut.

#include "engine/cuts/plan/plan.h"

namespace mullion {

void add_checks(Stage& stage, const Mat& mat);

}  // namespace mullion
