#pragma once

// Sizes in words, in the customer's two units.

#include <string>
#include <utility>
#include <vector>

#include "engine/locale/locale.h"
#include "engine/mat/mat.h"

namespace mullion::proof {

struct SizeText {
  std::string own, other;
};
// The first unit is the job's, unless the locale's is of the other system; the second is inches
// where the first is metric, else centimetres. In the job's own unit a length is exact or said to
// be "about" so much; in the other it is rounded to the scale.
struct Scales {
  Scale own, other;
};
Scales scales_for(const Scale& job, const Locale& locale);
SizeText size_text(Length width, Length height, const Scale& job, const Locale& locale);
SizeText length_text(Length length, const Scale& job, const Locale& locale);

// Rising numbers in words: "1-3, 5".
std::string ranges(const std::vector<int>& numbers);

// Openings of one shape and size, by number: {"1-3, 5", ...}.
struct SizeGroup {
  std::string numbers;
  bool several = false;
  ShapeKind shape = ShapeKind::rectangle;
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
