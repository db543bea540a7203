#pragma once

// The picture of a mat, measured in the pixels of a file: for jobs whose top mat is blue, whose
// core is red and whose wall is green.

#include <string>

namespace measured {

struct Piece {
  // Of the mat's outer edge, the face edge and the back edge of its only window, in pixels.
  double left = 0, right = 0, top = 0, bottom = 0;
  double face_left = 0, face_right = 0, face_top = 0, face_bottom = 0;
  double back_left = 0, back_right = 0, back_top = 0, back_bottom = 0;
};

Piece measure_png(const std::string& path);

}  // namespace measured
