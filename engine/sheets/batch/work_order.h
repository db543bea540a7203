#pragma once

// The order of work from sheets to finished mats, in parts: first the blanks of a stage
// (engine/sheets/plan/stages.h), then the mats that have all of theirs, as one run. Then the
// fallouts that become blanks of a later part are set aside; all of them lie in their windows until
// then. Kinds and steps are numbered through all parts. A mat that lacks a blank is in no part.

#include <string>
#include <vector>

#include "engine/sheets/batch/batch.h"

namespace mullion {

struct SetAside {
  std::string order, layer;
  int copy = 1;     // of the order's mats
  int opening = 0;  // the first of the window's
  int sheet = 0;    // the number under which it is cut
};

struct WorkPart {
  int stage = 1;
  std::vector<int> sheets;          // numbers of those to cut into blanks
  CuttingRun run;                   // without its blanks, which the sheets' cuts make
  std::vector<SetAside> set_aside;  // when the run is done
};

// The plan is of these jobs' blanks. Errors: as those of plan_run.
Result<std::vector<WorkPart>> order_of_work(const std::vector<BatchJob>& jobs,
                                            const SheetPlan& plan, const CutterProfile& cutter,
                                            const PlanOptions& options);

// "Sheets 1–4, 6: cut them into blanks."
std::string sheets_text(const WorkPart& part, const Locale& locale);
// "A-1, Top mat, mat 2, opening 1: sheet 5"
std::string set_aside_text(const SetAside& fallout, const Locale& locale);

std::string work_to_text(const std::vector<WorkPart>& work);
std::string work_to_json(const std::vector<WorkPart>& work);

}  // namespace mullion
