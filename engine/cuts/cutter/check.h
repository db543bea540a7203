#pragma once

// Measuring up a cutter: what to cut on scrap, and what to correct in the profile by what was
// measured on it. All lengths are exact ticks.

#include <optional>
#include <string>
#include <tl/expected.hpp>
#include <vector>

#include "engine/cuts/cutter/profile.h"

namespace mullion {

// The settings of the first test cut, as the scales show them, and the scrap it is made on.
struct TestCut {
  Length scrap;      // side of a square piece
  Length thickness;  // of the board
  std::optional<Length> guide, near_stop, far_stop;
};

TestCut test_cut(const CutterProfile& cutter, Length thickness);

// What the user found on the scrap, with a rule. All but the thickness may be left out.
struct TestMeasures {
  Length thickness;
  std::optional<Length> line;      // from the edge at the guide to the cut, on the back
  std::optional<Length> near_end;  // from the edge at the squaring arm to the cut's near end
  std::optional<Length> far_end;   // and to its far end
  std::optional<Length> mark;      // past a pencil line, where a cut ended with the mark on it
  std::optional<Length> corner;    // past the corner on the face; short of it: below zero
};

struct CutterCorrection {
  std::string what;
  Length was, becomes;
  std::string reason;  // how it was worked out, a sentence
};

struct MeasuredUp {
  CutterProfile cutter;
  std::vector<CutterCorrection> corrections;
};

// zero = shown - measured for the guide. A stop's zero refers to the head's mark: shown -
// (near end + mark lead), shown - (far end - mark lead). The over-cut for the thickness is the one
// used less what was seen past the corner. The error is a sentence: a measure that no cutter gives.
tl::expected<MeasuredUp, std::string> measure_up(const CutterProfile& cutter,
                                                 const TestMeasures& measures);

}  // namespace mullion
