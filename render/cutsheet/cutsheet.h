#pragma once

// The sheet that lies beside the cutter: a cutting plan as a PDF in large type, with the board as
// it lies for every set-up, a box to tick for every cut, and a tally for runs. One page where a
// single mat's plan fits on one; US Letter where the cutter's scales are in inches, else A4.

#include <string>

#include "engine/cuts/run/run.h"
#include "engine/locale/locale.h"
#include "engine/sheets/batch/work_order.h"

namespace mullion {

// `date` as in paper::DocumentInfo.
std::string render_cutsheet(const CuttingPlan& plan, const std::string& date = {},
                            const Locale& locale = {});

// What to pencil on the back of every layer and nothing else: each line as its distance from an
// edge, with the back drawn. For a plan that is cut with pencil lines.
std::string render_marking_sheet(const CuttingPlan& plan, const std::string& date = {},
                                 const Locale& locale = {});

// The sheet of a run: its kinds and orders, the blanks, then step by step what to set and which
// mats to cut with it, with a tally box for every mat.
std::string render_run_sheet(const CuttingRun& run, const std::string& date = {},
                             const Locale& locale = {});

// The same from sheets to finished mats, part by part: which sheets are cut first, the run, and the
// fallouts that are set aside.
std::string render_work_sheet(const std::vector<WorkPart>& work, const Scale& scale,
                              const std::string& date = {}, const Locale& locale = {});

}  // namespace mullion
