#pragma once

// A run in words, and as plain text for a terminal.

#include <string>
#include <vector>

#include "engine/cuts/run/run.h"
#include "engine/cuts/sheet/plan_lines.h"
#include "engine/locale/locale.h"

namespace mullion {

std::string run_to_text(const CuttingRun& run);
void write_run(TextLines& out, const CuttingRun& run);

std::string numbers_text(const std::vector<int>& ascending);  // "1–4, 6"

std::string kind_text(const RunKind& kind,
                      const Locale& locale);  // "12 for W-0101, 2 for W-0107 (3, 5)"
// "arm stop 20 in: cut 16 in long: 24 for kind 1 (layers 1, 2)"
std::string blank_text(const CuttingRun& run, const RunBlank& blank, const Locale& locale);
// For a terminal: "set guide 3 in and far stop 13 in", "all stays as it is": what a step changes.
std::string moves_text(const CuttingRun& run, const RunStep& step);
// Whether the work is the first of its stage, or the last.
bool begins_stage(const RunWork& work);
bool ends_stage(const CuttingRun& run, const RunWork& work);
// The usual cautions, those of the kinds, and those of cutting several kinds in turn.
std::vector<std::string> cautions(const CuttingRun& run, const Locale& locale);

// The set-up of a work as a run shows it: other boards may have lain there since the one before, so
// that its first placement is laid anew.
SetUp laid_anew(const Stage& stage, const RunWork& work);

const RunKind& kind_of(const CuttingRun& run, const RunWork& work);
const Stage& stage_of(const CuttingRun& run, const RunWork& work);

}  // namespace mullion
