#pragma once

// The page that lies beside the cutter on a tablet or telephone: a cutting plan or a run as one
// HTML file that needs no network. It shows one step at a time in large type, with the board as it
// lies and that step's cut alone; without its script it is a document that is read from top to
// bottom. It is well-formed XML too. All that it says comes from engine/cuts/sheet, and how a
// board lies from render/cutsheet/board_view.h.

#include <string>

#include "engine/cuts/run/run.h"
#include "engine/locale/locale.h"

namespace mullion {

std::string render_bench_page(const CuttingPlan& plan, const Locale& locale = {});
std::string render_bench_page(const CuttingRun& run, const Locale& locale = {});

}  // namespace mullion
