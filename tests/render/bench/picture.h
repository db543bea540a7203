#pragma once

// Whether the pictures of a page are true: the board's edges, the line and its direction, the stops
// and what is cut already lie where the plan's JSON has them, to 1/500 of the board.

#include <nlohmann/json.hpp>
#include <string>
#include <vector>

namespace bench_test {

// `kind` as in as_shown.h.
std::vector<std::string> untrue_pictures(const std::string& html, const nlohmann::json& plan,
                                         int kind = 0);

}  // namespace bench_test
