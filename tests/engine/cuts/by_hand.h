#pragma once

// The simulator's cuts that no guide leads: along the rail on a slanting line, with an ideal oval
// cutter, and along a template whose outline the plan's JSON gives.

#include <nlohmann/json.hpp>

#include "simulator.h"

namespace simulator {

mullion::Length length_of(const nlohmann::json& text);

// The board is laid askew so that the first point is the far one and both are under the rail.
Track along_rail(const nlohmann::json& cut, const Cutter& cutter, mullion::Length run);

// The blade leans away from the window and keeps at right angles to its way.
std::vector<Track> along_curve(const nlohmann::json& curve, mullion::Length run);

}  // namespace simulator
