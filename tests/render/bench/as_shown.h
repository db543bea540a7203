#pragma once

// A plan as the page shows it, for the simulator: the plan's JSON with everything that the page
// says put in its stead, in the page's order.
//
// What the page does not show stays as the JSON has it: boards, over-cuts, templates. A length that
// the page rounds to what a rule shows counts as the exact one where it is that; else as it is
// shown.

#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "shown_page.h"

namespace bench_test {

struct AsShown {
  nlohmann::json plan;
  std::vector<std::string> faults;  // what a framer could not follow
};

// `kind`: of a run's page, the steps of that kind of mat alone; 0: all.
AsShown as_shown(const std::string& html, const nlohmann::json& plan, int kind = 0);

}  // namespace bench_test
