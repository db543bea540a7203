#pragma once

// Measuring up a cutter: what to cut on scrap, and what to correct in the profile by what was
// measured on it. All lengths are exact ticks.

#include <optional>
#include <string>
#include <tl/expected.hpp>
#include <vector>

#include "engine/cuts/cutter/profile.h"

namespace mullion {

// The settings of the test cuts, as the scales show them, and the scrap they are made on.
struct TestCut {
  Length scrap;      // side of a square piece
  Length thickness;  // of the board
  std::optional<Length> guide, near_stop, far_stop;
  Length arm;              // of its stop, for the piece that is cut off
  Length mark_past;        // of the head's mark past a line where a test window's cuts end,
  Length start_mark_past;  // and where they start; below zero: short of it
};

TestCut test_cut(const CutterProfile& cutter, Length thickness);

// What the user found on the scrap, with a rule. All but the thickness may be left out.
struct TestMeasures {
  Length thickness;
  // From the edge at the guide to one long cut, at its near end and at its far end, on the back.
  // Two readings show whether the guide is parallel to the rail; one cannot.
  std::optional<Length> line, line_far;
  std::optional<Length> near_end;  // from the edge at the squaring arm to the cut's near end
  std::optional<Length> far_end;   // and to its far end
  // Past a pencil line, where a cut ended, or started, with the mark on it; short of it: below
  // zero.
  std::optional<Length> mark, start_mark;
  // Past the corner on the face where the test window's cuts end, or start; short: below zero.
  std::optional<Length> corner, start_corner;
  // From a line drawn along the rail's edge to a cut made with the board as it lay, away from the
  // guide; toward it: below zero.
  std::optional<Length> rail;
  std::optional<Length> piece;  // width of the piece cut off at the squaring arm's stop
  // The diagonals of a square cut on this machine, blank or window: from its corner at edges A and
  // B, and the other. Two show whether the arm is square to the rail.
  std::optional<Length> diagonal_ab, diagonal_bc;
};

struct CutterCorrection {
  std::string what;
  Length was, becomes;
  std::string reason;  // how it was worked out, a sentence
};

struct MeasuredUp {
  CutterProfile cutter;
  std::vector<CutterCorrection> corrections;
  std::vector<std::string> turn;  // what no figure corrects: what to turn on the machine, sentences
};

// zero = shown - measured for the guide, at the middle of its two readings. A stop's zero refers to
// the head's mark: shown - (near end + lead there), shown - (far end - lead there). The test window
// was cut with the mark `mark_past` the lines, so over-cut = old over-cut - old lead + lead -
// corner, and the same where cuts start. The error is a sentence: a measure that no cutter gives.
tl::expected<MeasuredUp, std::string> measure_up(const CutterProfile& cutter,
                                                 const TestMeasures& measures);

}  // namespace mullion
