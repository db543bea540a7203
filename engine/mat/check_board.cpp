#include <algorithm>
#include <array>
#include <cstdlib>

#include "engine/job/standing.h"
#include "engine/job/usual.h"
#include "engine/mat/findings.h"
#include "engine/mat/rect.h"

namespace mullion {
namespace {

// Sheets: 32 x 40 in standard, 40 x 60 in oversize. Common practice and suppliers' statements.
constexpr Length oversize_short = inches(40), oversize_long = inches(60);
// Twice a 4-ply board by common practice; thicker ones need more blade than many heads show.
constexpr Length thick_board = sixty_fourths(8);
// A difference of colour that is hardly seen, of 255 in each of red, green and blue. Our own.
constexpr int hardly_seen = 12;

// Of every_side.
constexpr std::array<const char*, 4> border_names{mark("the left border"), mark("the top border"),
                                                  mark("the right border"),
                                                  mark("the bottom border")};

struct Border {
  Length width;
  std::string name;  // "the left border"
};

Border narrowest(const Findings& f) {
  const Sides& borders = f.layout.borders;
  std::size_t least = 0;
  for (std::size_t i = 1; i < every_side.size(); ++i) {
    if (borders.*every_side[i] < borders.*every_side[least]) least = i;
  }
  return {borders.*every_side[least], f.say(border_names[least])};
}

Place borders_place(const Findings& f) {
  return f.job.borders.place.line > 0 ? f.job.borders.place : f.job.outer_place;
}

void check_frame(Findings& f, const Border& border) {
  if (!f.job.frame) return;
  const Length lip = f.job.frame->lip;
  if (lip >= border.width) {
    f.add("check-behind-lip",
          f.say("the frame's lip of %1 hides all of %2, which is %3", f.text(lip), border.name,
                f.text(border.width)),
          f.job.frame->place);
  } else if (lip * 2 > border.width) {
    f.add("check-under-lip",
          f.say("the frame's lip of %1 hides more than half of %2 of %3", f.text(lip), border.name,
                f.text(border.width)),
          f.job.frame->place);
  }
}

// The steps of the under-mats beside the border that carries them.
void check_stack(Findings& f) {
  for (const Standing& standing : standings_of(f.job.arrangement)) {
    const Sides stack = reveal_stack(f.job, *standing.opening);
    const Border border = narrowest(f);
    const Length steps = std::max({stack.left, stack.top, stack.right, stack.bottom});
    if (steps < border.width || steps == Length()) continue;
    f.add("check-border-stack",
          f.say("%1 is %2, and the layers below show %3 beside it", border.name,
                f.text(border.width), f.text(steps)),
          borders_place(f));
    return;
  }
}

void check_borders(Findings& f) {
  const Sides& borders = f.layout.borders;
  const Border border = narrowest(f);
  check_frame(f, border);
  check_stack(f);
  if (borders.bottom < borders.top) {
    f.add("check-bottom-light",
          f.say("the bottom border is %1, the top one %2", f.text(borders.bottom),
                f.text(borders.top)),
          borders_place(f));
  }
  const Unit unit = f.job.scale.unit;
  const bool is_small = is_small_board(f.mat.outer.width(), f.mat.outer.height(), unit);
  const Length wanted = is_small ? usual_for(unit).small_border : usual_for(unit).large_border;
  if (border.width < wanted) {
    f.add("check-borders-least",
          f.say("%1 is %2; a course sheet asks for %3 on a board of this size", border.name,
                f.text(border.width), f.text(wanted)),
          borders_place(f));
  }
}

bool nearly_alike(const Colour& a, const Colour& b) {
  return std::abs(a.red - b.red) <= hardly_seen && std::abs(a.green - b.green) <= hardly_seen &&
         std::abs(a.blue - b.blue) <= hardly_seen;
}

void check_layer(Findings& f, const MatLayer& layer) {
  if (layer.board.spacer) return;
  if (nearly_alike(layer.board.colour, layer.board.core)) {
    f.add("check-core-alike",
          f.say("the core of %1 has nearly the colour of its face, so its bevel hardly shows",
                f.name(layer)),
          layer.board.place);
  }
  if (layer.board.thickness > thick_board) {
    f.add("check-board-thick",
          f.say("%1 is %2 thick", f.name(layer),
                f.locale.measured(layer.board.thickness, f.job.scale.unit)),
          layer.board.place);
  }
}

}  // namespace

void check_board(Findings& f) {
  check_borders(f);
  const Rect& board = f.mat.outer;
  if (std::min(board.width(), board.height()) > oversize_short ||
      std::max(board.width(), board.height()) > oversize_long) {
    f.add("check-board-large",
          f.say("the board is %1 x %2; the largest usual sheet is %3 x %4", f.text(board.width()),
                f.text(board.height()), f.text(oversize_short), f.text(oversize_long)),
          f.job.outer_place.line > 0 ? f.job.outer_place : borders_place(f));
  }
  for (const MatLayer& layer : f.mat.layers) check_layer(f, layer);
  const MatLayer& top = f.mat.layers.front();
  if (top.board.only.empty()) return;
  f.add("check-top-only",
        f.say("%1 lists openings; every opening is cut in the top layer", f.name(top)),
        top.board.place);
}

}  // namespace mullion
