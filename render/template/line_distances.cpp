#include "render/template/line_distances.h"

#include <algorithm>
#include <cmath>

#include "engine/mat/rect.h"
#include "render/template/running_dimensions.h"

namespace mullion {
namespace {

using paper::Box;
using paper::Spot;

const paper::TextStyle distance_style{9.5, false, {0, 0, 0}, paper::Anchor::centre, 0};
constexpr double capital = 0.73, beside_line = 3.5, beyond_ends = 40, label_every = 380;

// A level side of the outline, seen from behind.
struct Side {
  bool across = true;       // from left to right
  bool waste_after = true;  // the waste lies below it, or right of it
  Length at, from, to;
};

// The longest straight part on each side of the window's box.
std::vector<Side> sides_of(const Window& window, Length width) {
  const Rect box = mirrored(window.back, width);
  const Outline outline = mirrored(window.back_edge, width);
  std::vector<Side> sides{{true, true, box.top, {}, {}},
                          {true, false, box.bottom, {}, {}},
                          {false, true, box.left, {}, {}},
                          {false, false, box.right, {}, {}}};
  Point here = outline.start;
  for (const Segment& segment : outline.segments) {
    const Point from = here, to = here = segment.to;
    if (segment.curved) continue;
    for (Side& side : sides) {
      const bool along =
          side.across ? from.y == side.at && to.y == side.at : from.x == side.at && to.x == side.at;
      if (!along) continue;
      const auto [low, high] = side.across ? std::minmax(from.x, to.x) : std::minmax(from.y, to.y);
      if (high - low > side.to - side.from) {
        side.from = low;
        side.to = high;
      }
    }
  }
  std::erase_if(sides, [](const Side& side) { return side.from == side.to; });
  return sides;
}

std::string words_of(const Side& side, const BoardView& view, std::size_t index) {
  const Rect board = mirrored(view.layers.front()->blank, view.width());
  const Length before = side.at - (side.across ? board.top : board.left);
  const Length after = (side.across ? board.bottom : board.right) - side.at;
  const std::string arrow = before <= after ? "\xE2\x86\x91 " : "\xE2\x86\x93 ";  // up, down
  const std::string text =
      arrow + dimension_text(std::min(before, after), view.job->scale, view.locale);
  if (view.layers.size() == 1) return text;
  return view.locale.say("layer %1: %2", view.layers[index]->layer->number, text);
}

}  // namespace

std::vector<LineDistance> line_distances(const Window& window, const BoardView& view,
                                         std::size_t index, const std::vector<Box>& taken) {
  std::vector<LineDistance> distances;
  const bool outside = index + 1 < view.layers.size();
  const double high = capital * distance_style.size;
  for (const Side& side : sides_of(window, view.width())) {
    paper::TextStyle style = distance_style;
    if (!side.across) style.turn = -90;
    const paper::Text text(words_of(side, view, index), style);
    const double wide = text.width(), length = paper::points(side.to - side.from);
    if (wide + beyond_ends > length) continue;
    double off = beside_line;
    if (outside) off += paper::points(window.back.left - window.face.left);
    const double at = paper::points(side.at);
    const double across = side.waste_after != outside ? at + off + high : at - off;
    // So many that nearly every sheet of office paper that shows the line shows one.
    const int count = std::max(1, static_cast<int>(length / label_every));
    for (int i = 0; i < count; ++i) {
      const double along = paper::points(side.from) + length * (i + 0.5) / count;
      const Spot baseline = side.across ? Spot{along, across} : Spot{across, along};
      const Box box = side.across ? Box{along - wide / 2, across - high, wide, high}
                                  : Box{across - high, along - wide / 2, high, wide};
      const bool covers = std::any_of(taken.begin(), taken.end(), [&](const Box& other) {
        return paper::overlap(paper::grown(box, 1), other);
      });
      if (!covers) distances.push_back({text, baseline, box});
    }
  }
  return distances;
}

}  // namespace mullion
