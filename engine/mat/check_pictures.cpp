#include <algorithm>

#include "engine/mat/findings.h"
#include "engine/mat/rect.h"

namespace mullion {
namespace {

// Less leaves no room for a picture that is not square or moves with the weather. Our own figure.
constexpr Length least_overlap = sixty_fourths(4);
// More of a picture than this is seldom hidden on purpose. Our own figure.
constexpr Length much_hidden = sixty_fourths(32);
// A narrower strip of board around a floated edge reads as a crooked overlap. Our own figure.
constexpr Length least_float = sixty_fourths(8);

std::string quoted_id(const Findings& f, const MatPicture& picture) {
  return f.say("picture \"%1\"", picture.picture.id);
}

// What is hidden of the picture on a side, least and most; negative where board is seen beside it.
std::pair<Length, Length> hidden(const MatPicture& picture) {
  const Rect &sight = picture.sight, &edge = picture.rect;
  return std::minmax({sight.left - edge.left, sight.top - edge.top, edge.right - sight.right,
                      edge.bottom - sight.bottom});
}

// The lowest edge of a window for this opening alone that is no rectangle; null where there is
// none.
const Outline* shaped_edge(const Mat& mat, int opening) {
  const Outline* edge = nullptr;
  for (const MatLayer& layer : mat.layers) {
    for (const Window& window : layer.windows) {
      if (!window.seen || window.openings != std::vector<int>{opening}) continue;
      edge = window.shape.kind == ShapeKind::rectangle ? nullptr : &window.back_edge;
    }
  }
  return edge;
}

// Board beside a floated picture where it is narrowest; negative where the mat hides some of it.
Length board_around(const MatPicture& picture, const Outline* shaped) {
  if (shaped == nullptr) return -hidden(picture).second;
  const Outline paper = rectangle(picture.rect);
  const Length way =
      Length::from_ticks(std::llround(distance(paper, *shaped, measuring_tolerance)));
  Length deepest;
  for (const Segment& side : paper.segments) {
    if (contains(*shaped, side.to)) continue;
    const Outline corner = polygon({side.to});
    const double depth = distance(corner, *shaped, measuring_tolerance);
    deepest = std::max(deepest, Length::from_ticks(std::llround(depth)));
  }
  return deepest > Length() ? -deepest : way;
}

void check_float(Findings& f, const MatPicture& picture) {
  const Outline* shaped = shaped_edge(f.mat, picture.opening);
  const Length gap = board_around(picture, shaped);
  if (gap >= least_float) return;
  if (shaped != nullptr && gap <= Length()) {
    const std::string opening = f.name(picture.opening), what = quoted_id(f, picture);
    f.add("check-float-hidden",
          gap < Length() ? f.say("the shape of %1 hides edges of the floated %2, its corners by %3",
                                 opening, what, f.text(-gap))
                         : f.say("the shape of %1 hides edges of the floated %2", opening, what),
          picture.picture.place);
    return;
  }
  f.add("check-float-small",
        f.say("the board around the floated %1 is %2 wide", quoted_id(f, picture), f.text(gap)),
        picture.picture.place);
}

void check_overlap(Findings& f, const MatPicture& picture) {
  const auto [least, most] = hidden(picture);
  const Length asked = picture.picture.overlap.value_or(default_overlap);
  const Place place = picture.picture.place;
  const std::string what = quoted_id(f, picture), opening = f.name(picture.opening);
  if (least <= Length()) {
    f.add("check-not-held",
          least == Length()
              ? f.say("%1 is not held in %2: its edge lies on that of the mat", what, opening)
              : f.say("%1 is not held in %2: %3 is open beside it", what, opening, f.text(-least)),
          place);
  } else if (least < asked) {
    f.add("check-overlap-less",
          f.say("the mat covers the edge of %1 by %2; %3 is asked for", what, f.text(least),
                f.text(asked)),
          place);
  } else if (least < least_overlap) {
    f.add("check-overlap-small",
          f.say("the mat covers the edge of %1 by only %2", what, f.text(least)), place);
  }
  if (most > std::max(much_hidden, asked)) {
    f.add("check-much-hidden", f.say("the mat hides %1 of %2 on one side", f.text(most), what),
          place);
  }
}

// Behind the bars the pictures lie side by side on the backing.
void check_neighbours(Findings& f, const MatPicture& a, const MatPicture& b) {
  const Length gap = gap_between(a.rect, b.rect);
  if (gap >= Length()) return;
  f.add("check-pictures-overlap",
        f.say("%1 and %2 overlap by %3 behind the bar", quoted_id(f, a), quoted_id(f, b),
              f.text(-gap)),
        b.picture.place);
}

void check_unused(Findings& f) {
  for (const Picture& picture : f.job.pictures) {
    const bool is_shown =
        std::any_of(f.mat.pictures.begin(), f.mat.pictures.end(),
                    [&](const MatPicture& placed) { return placed.picture.id == picture.id; });
    if (is_shown) continue;
    f.add("check-picture-unused", f.say("picture \"%1\" is in no opening", picture.id),
          picture.place);
  }
}

}  // namespace

void check_pictures(Findings& f) {
  check_unused(f);
  const auto& pictures = f.mat.pictures;
  for (std::size_t i = 0; i < pictures.size(); ++i) {
    if (pictures[i].picture.float_gap) {
      check_float(f, pictures[i]);
    } else {
      check_overlap(f, pictures[i]);
    }
    if (!contains(f.mat.outer, pictures[i].rect)) {
      f.add("check-picture-beyond",
            f.say("%1 is larger than the board around it", quoted_id(f, pictures[i])),
            pictures[i].picture.place);
    }
    for (std::size_t j = i + 1; j < pictures.size(); ++j) {
      check_neighbours(f, pictures[i], pictures[j]);
    }
  }
}

}  // namespace mullion
