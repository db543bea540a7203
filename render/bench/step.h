#pragma once

// The page beside the cutter, step by step, before it is written: a step is what is seen at one
// time.

#include <string>
#include <vector>

#include "engine/cuts/sheet/dials.h"

namespace mullion::bench {

struct Sentence {
  enum class Weight { plain, strong, quiet, large };
  std::string text;
  const char* name = "";  // what it tells: "lie", "turn", "cut", "ends", ...
  Weight weight = Weight::plain;
};

// SVG elements. What lies below and above the rest is alike for many steps: the page holds it once.
struct Picture {
  std::string under, between, over, now;
  std::string box, label;
  bool empty() const { return box.empty(); }
};

struct Step {
  enum class Kind { read, work, check };  // what is done or measured gets a tick
  Kind kind = Kind::work;
  // The steps of a group follow one another, and are gone through for each of so many mats.
  int group = 0, pieces = 1;
  bool once = false;  // with the first mat alone
  std::string heading;
  std::vector<std::string> where;  // in the work: the layer, the set-up
  std::vector<Dial> dials;
  std::vector<Sentence> sentences;
  Picture picture;
};

}  // namespace mullion::bench
