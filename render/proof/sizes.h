#pragma once

// Sizes in words, in the customer's two units.

#include <string>
#include <utility>
#include <vector>

#include "engine/mat/mat.h"

namespace mullion::proof {

struct SizeText {
  std::string own, other;  // in the job's unit; inches where that is metric, else centimetres
};
SizeText size_text(Length width, Length height, const Scale& scale);
SizeText length_text(Length length, const Scale& scale);

// Openings of one shape and size, by number: {"1-3, 5", ...}.
struct SizeGroup {
  std::string numbers;
  bool several = false;
  std::string shape;  // empty for a rectangle
  Rect sight;
};
std::vector<SizeGroup> group_by_size(const Mat& mat);

// Every opening of a mat and the place where its picture shows, by number.
struct SeenOpening {
  int number = 0;
  ShapeKind shape = ShapeKind::rectangle;
  Rect sight;
};
std::vector<SeenOpening> seen_openings(const Mat& mat);

}  // namespace mullion::proof
