#pragma once

// What a printed sheet tells to do, in the form that the simulator plays (engine/cuts/sheet/json.h
// has it too). Nothing of the plan is known but what stands on paper: what a framer has in hand
// besides, the boards, the machine and the templates, is told here.

#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "engine/cuts/plan/plan.h"
#include "printed_sheet.h"
#include "simulator.h"

namespace printed {

struct Bench {
  simulator::Cutter cutter;
  const mullion::Mat* mat = nullptr;
  // Curves that are cut along a template, and lines of one that is taped on: theirs are on the
  // template.
  nlohmann::json templates;
  mullion::Length slack;  // how far two lengths of one place may differ, both being rounded
};

struct Told {
  nlohmann::json plan;
  std::vector<std::string> faults;  // where the sheet contradicts itself, or does not say enough
};

Told plan_of(const std::vector<Part>& parts, const Bench& bench);

}  // namespace printed
