#pragma once

// What stands at the top of every sheet: what it is for, the cautions, and the straight cuts.

#include "engine/cutting/cutter/profile.h"
#include "render/cutsheet/flow.h"

namespace mullion::cutsheet {

// US Letter where the cutter's scales are in inches, else A4.
paper::PageSize page_for(const CutterProfile& cutter);

void add_head(Flow& flow, const std::string& title, const std::string& summary,
              const std::vector<std::string>& cautions, const Look& look);

void add_blanks(Flow& flow, const std::vector<std::string>& blanks, const Look& look);

}  // namespace mullion::cutsheet
