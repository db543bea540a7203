#pragma once

// A layer's name as it stands on paper: the job's; in the locale's words where the job file gave
// none and the layer has its usual name, "Top mat" or "Layer 2".

#include "engine/job/job.h"
#include "engine/locale/locale.h"

namespace mullion {

std::string name_on_paper(const std::string& name, int number, const Locale& locale);
// The board's name; the layer's where it has none.
std::string board_on_paper(const Layer& layer, int number, const Locale& locale);

}  // namespace mullion
