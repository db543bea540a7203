#pragma once

// A cutting plan with the language in which it is told. A plan itself knows of none: it is planned
// alike whoever reads it.

#include "engine/cuts/plan/plan.h"
#include "engine/locale/locale.h"

namespace mullion {

struct ToldPlan : CuttingPlan {
  Locale locale;
};

}  // namespace mullion
