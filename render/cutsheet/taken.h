#pragma once

// What lies in a diagram already, so that a number finds a place beside it.

#include <optional>
#include <utility>
#include <vector>

#include "render/paper/path.h"

namespace mullion::cutsheet {

class Taken {
 public:
  void add(paper::Spot a, paper::Spot b) { lines_.push_back({a, b}); }
  void add(const std::vector<paper::Spot>& way);  // from each to the next
  void add(const paper::Box& box) { boxes_.push_back(box); }

  bool is_free(const paper::Box& box) const;

 private:
  std::vector<std::pair<paper::Spot, paper::Spot>> lines_;
  std::vector<paper::Box> boxes_;
};

// Where a text's ink may be that is centred there, with a little air around it.
paper::Box text_box(paper::Spot middle, double width, double type);

double distance_between(paper::Spot spot, paper::Spot a, paper::Spot b);  // to the line from a to b

}  // namespace mullion::cutsheet
