#pragma once

// What every template page carries besides the board: heading, check rules, cautions.

#include "engine/job/job.h"
#include "engine/mat/mat.h"
#include "render/paper/canvas.h"

namespace mullion {

void draw_heading(paper::Canvas& canvas, const Job& job, const MatLayer& layer, int layers,
                  const paper::Box& box);

// A 4 in rule, a 100 mm rule, and a square of 1 in, whose diagonal is 1.414 in (35.9 mm).
void draw_check_rules(paper::Canvas& canvas, paper::Spot upper_left);

void draw_cautions(paper::Canvas& canvas, paper::Spot upper_left, double width);

}  // namespace mullion
