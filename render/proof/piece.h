#pragma once

// The finished piece as it will hang, seen from the front and lit from the upper left: pictures
// cropped as the windows crop them, mats with bevels and shadows, grooves, moulding. To scale:
// every edge lies where the mat has it. What is shade (shadows, profile, glare) is an impression
// and no dimension.

#include <map>
#include <set>
#include <string>

#include "engine/mat/mat.h"
#include "render/paper/image.h"
#include "render/proof/view.h"

namespace mullion::proof {

// Files by the path that the job gives them.
using Photographs = std::map<std::string, picture::Photograph>;

// Opens every picture file that a job names, relative to the job file. Problems stand at the
// pictures' places.
Result<Photographs> open_photographs(const Job& job);

struct Piece {
  const Job* job = nullptr;
  const Mat* mat = nullptr;
  const Photographs* photographs = nullptr;
};

struct PieceStyle {
  picture::Resolution resolution;
  bool glare = false;  // of the glass
};

// What the eye sees of a piece without the wall: the frame's outer edge, else the top mat's.
Rect seen_extent(const Job& job, const Mat& mat);
// The opening in the moulding: what the lip leaves of the mat. The mat where there is no frame.
Rect frame_sight(const Job& job, const Mat& mat);

// One layer of the drawing; the whole piece is all of them in order.
struct PiecePart {
  enum class Kind { wall_shadow, pictures, layer, grooves, glass, frame };
  Kind kind = Kind::pictures;
  int layer = 0;  // number, from 1 at the top
};
std::vector<PiecePart> parts_of(const Piece& piece, const PieceStyle& style);

Result<void> draw_part(paper::Drawing& page, paper::Format format, const Piece& piece,
                       const PiecePart& part, const View& view, const PieceStyle& style);
Result<void> draw_piece(paper::Drawing& page, paper::Format format, const Piece& piece,
                        const View& view, const PieceStyle& style);

}  // namespace mullion::proof
