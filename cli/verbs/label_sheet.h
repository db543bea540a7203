#pragma once

// --label-sheet and --skip-labels, as every verb has them that prints labels.

#include "cli/command_line.h"
#include "render/sheetplan/labels.h"

namespace mullion::cli {

struct LabelSheetWords {
  std::string sheet;
  int skip = 0;
};

void add_label_sheet_options(const Verb& verb, LabelSheetWords& words);

// The sheet that was named, else the usual one of the unit's countries.
const LabelSheet& label_sheet(const LabelSheetWords& words, Unit unit);

}  // namespace mullion::cli
