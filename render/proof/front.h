#pragma once

// The finished piece from the front, as an SVG element for a page that shows it among its own: as
// the proof draws it, with pictures by their addresses instead of their bytes.
//
// The user unit is 1 mm; the origin is the mat's upper left corner as seen from the front. There is
// no style attribute or element, so that it may stand under a policy that allows none, and every id
// begins with "m-". Boards that are not known are white and hatched instead of coloured.

#include <functional>
#include <set>
#include <string>

#include "engine/mat/mat.h"
#include "engine/picture/header.h"

namespace mullion::proof {

struct FrontPicture {
  std::string address;  // of the upright picture; empty: there is none to be shown
  ImageHeader header;
};

struct FrontStyle {
  std::function<FrontPicture(const Picture&)> picture;  // unset: no pictures are shown
  std::set<int> unknown_boards;                         // numbers of layers
};

struct Millimetres {
  double left = 0, top = 0, width = 0, height = 0;
};

// What it shows: the piece with its frame and some of the wall.
Millimetres front_extent(const Job& job, const Mat& mat);

std::string front_svg(const Job& job, const Mat& mat, const FrontStyle& style);

// Frame, boards and windows alone, as a small SVG of its own.
std::string thumbnail_svg(const Job& job, const Mat& mat);

}  // namespace mullion::proof
