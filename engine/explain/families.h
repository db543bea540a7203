#pragma once

// The explanations by family.

#include <vector>

#include "engine/xml/explanation.h"

namespace mullion::explain {

std::vector<Explanation> file_codes();     // files, options
std::vector<Explanation> job_codes();      // the form of a job file, and of other XML files
std::vector<Explanation> edit_codes();     // edits of a job
std::vector<Explanation> picture_codes();  // what a job says of its pictures and openings
std::vector<Explanation> mat_codes();      // layout and mat
std::vector<Explanation> suggest_codes();  // suggestions, frames
std::vector<Explanation> cutting_codes();  // cutters and cutting plans
std::vector<Explanation> sheet_codes();    // stock, sheets, prices
std::vector<Explanation> page_codes();     // the page of `mullion open`
std::vector<Explanation> output_codes();   // template, printer, proof

}  // namespace mullion::explain
