#pragma once

// The instances gcut1 to gcut13; tests/data/gcut/SOURCE.md names their source.

#include <fstream>
#include <string>
#include <vector>

#include "engine/sheets/guillotine/best_pattern.h"
#include "tests/oracle/program.h"

struct GcutInstance {
  mullion::Length width, height;
  std::vector<mullion::BlankSize> blanks;
  std::vector<std::int64_t> values;
  bool complete = false;
};

inline GcutInstance read_gcut(int number, bool may_turn) {
  using mullion::Length;
  std::ifstream file(oracle::test_data("gcut/gcut" + std::to_string(number) + ".txt"));
  std::int64_t count = 0, width = 0, height = 0, value = 0;
  file >> count >> width >> height;
  GcutInstance instance{Length::from_ticks(width), Length::from_ticks(height), {}, {}, false};
  for (std::int64_t i = 0; i < count; ++i) {
    file >> width >> height >> value;
    instance.blanks.push_back({Length::from_ticks(width), Length::from_ticks(height), may_turn});
    instance.values.push_back(value);
  }
  instance.complete = static_cast<bool>(file);
  return instance;
}
