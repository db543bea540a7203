#pragma once

// What stands at the top of every sheet: what it is for, the cautions, and the straight cuts.

#include "engine/cuts/cutter/profile.h"
#include "engine/locale/locale.h"
#include "render/cutsheet/flow.h"

namespace mullion::cutsheet {

// US Letter or A4 as is usual in the territory; without one, by the unit of the cutter's scales.

void add_head(Flow& flow, const std::string& title, const std::string& summary,
              const std::vector<std::string>& cautions, const Locale& locale, const Look& look);

void add_blanks(Flow& flow, const std::vector<std::string>& blanks, const Locale& locale,
                const Look& look);

}  // namespace mullion::cutsheet
