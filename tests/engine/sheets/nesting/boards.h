#pragma once

// Published instances of many blanks; tests/data/boards/SOURCE.md names their sources.

#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "engine/sheets/nesting/nesting.h"
#include "tests/oracle/program.h"

struct BoardInstance {
  std::string name;
  std::int64_t best = 0;  // the least cost that is published
  mullion::NestingProblem problem;
};

// Those of one file in tests/data/boards. Their unit is taken for an eighth of an inch.
inline std::vector<BoardInstance> read_boards(const std::string& file, bool may_turn) {
  const auto length = [](std::int64_t units) { return mullion::sixty_fourths(8 * units); };
  std::vector<BoardInstance> instances;
  std::ifstream lines(oracle::test_data("boards/" + file));
  std::string line, kind, word;
  while (std::getline(lines, line)) {
    std::istringstream words(line);
    std::int64_t width = 0, height = 0, number = 0;
    words >> kind;
    if (kind == "instance") {
      instances.emplace_back();
      words >> instances.back().name >> word >> instances.back().best;
      continue;
    }
    mullion::NestingProblem& problem = instances.back().problem;
    words >> width >> height;
    if (kind == "sheet") {
      words >> word >> number;
      problem.stock.push_back({length(width), length(height), number, {}});
    } else {
      words >> number;
      problem.blanks.push_back({length(width), length(height), may_turn});
      problem.demands.push_back(static_cast<int>(number));
    }
  }
  return instances;
}
