#pragma once

// Which copy of which order's blank lies where: turns a nesting of sizes into sheets of named
// blanks, and finds for each fallout that is cut the very mat that it comes out of.

#include <vector>

#include "engine/sheets/plan/sheet_plan.h"

namespace mullion {

// What a nesting of one board was asked for.
struct BoardNesting {
  std::vector<int> size_of_line;         // index into the problem's blanks, for each order line
  std::vector<int> stock_of_kind;        // index into the stock's pieces; -1: a fallout
  std::vector<Fallout> fallout_of_kind;  // its size, where it is one
};

// Fills in the plan's sheets and what is missing; the plan holds its lines already.
void assign_blanks(const Nesting& nesting, const NestingProblem& problem, const BoardNesting& board,
                   const Stock& stock, BoardPlan& plan);

}  // namespace mullion
