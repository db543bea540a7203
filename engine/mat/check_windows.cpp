#include <algorithm>
#include <optional>

#include "engine/job/standing.h"
#include "engine/mat/findings.h"
#include "engine/mat/rect.h"

namespace mullion {
namespace {

// Narrower strips show every unevenness. Our own figure.
constexpr Length narrow_reveal = sixty_fourths(8);

// Less is hardly seen. Our own figure.
constexpr Length seen_reach = sixty_fourths(2);

// By how much `inner` reaches out of `outer`, at most on any side; negative: how deep it lies.
Length reach(const Rect& inner, const Rect& outer) {
  return std::max({outer.left - inner.left, outer.top - inner.top, inner.right - outer.right,
                   inner.bottom - outer.bottom});
}

void check_within_board(Findings& f, const MatLayer& layer, const Window& window) {
  const Place place = f.place(window.openings.front());
  if (const Length beyond = reach(window.back, f.mat.outer); beyond > Length()) {
    f.add(
        "check-beyond-board",
        f.say("%1 reaches %2 beyond the edge of %3", f.name(window), f.text(beyond), f.name(layer)),
        place);
  } else if (const Length over = reach(window.face, f.mat.outer); over >= Length()) {
    f.add("check-border-bevel",
          f.say("%1 has %2 of %3 beside it, and its bevel takes %4", f.name(window),
                f.text(-beyond), f.name(layer), f.text(layer.run)),
          place);
  }
}

void check_reveal(Findings& f, const MatLayer& layer, int opening, Length reveal) {
  const Place place = f.place(opening);
  if (reveal <= Length()) {
    f.add("check-reveal-hidden",
          f.say("nothing is seen of the face of %1 in %2: its bevel of %3 lies under the edge "
                "above by %4",
                f.name(layer), f.name(opening), f.text(layer.run), f.text(-reveal)),
          place);
  } else if (reveal < narrow_reveal) {
    f.add("check-reveal-narrow",
          f.say("only %1 is seen of %2 in %3", f.text(reveal), f.name(layer), f.name(opening)),
          place);
  }
}

void check_below(Findings& f, const MatLayer& layer, const Window& upper, const Window& lower) {
  const Place place = f.place(lower.openings.front());
  if (const Length beyond = reach(lower.back, upper.back); beyond > Length()) {
    f.add("check-layer-order",
          f.say("the window of %1 for %2 reaches %3 beyond the window above it", f.name(layer),
                f.name(lower), f.text(beyond)),
          place);
    return;
  }
  check_reveal(f, layer, lower.openings.front(), -reach(lower.face, upper.back));
}

// One window for one opening, above and below, can be compared.
const Window* seen_window(const MatLayer& layer, int opening) {
  for (const Window& window : layer.windows) {
    if (window.seen && window.openings == std::vector<int>{opening}) return &window;
  }
  return nullptr;
}

void check_layers_of(Findings& f, int opening) {
  const Window* upper = nullptr;
  for (const MatLayer& layer : f.mat.layers) {
    const Window* window = seen_window(layer, opening);
    if (window == nullptr) continue;
    if (upper != nullptr) check_below(f, layer, *upper, *window);
    upper = window;
  }
}

// Where windows are shared, an opening has edges to be seen on some of its sides only.
void check_shared(Findings& f, const Standing& standing, int opening) {
  for (const MatLayer& layer : f.mat.layers) {
    const Sides inset = line_inset(f.job, standing, layer.number);
    std::optional<Length> least;
    for (const auto side : every_side) {
      if (inset.*side == Length()) continue;
      least = std::min(least.value_or(inset.*side), inset.*side);
    }
    if (least) check_reveal(f, layer, opening, *least - layer.run);
  }
}

// The layout leaves room for an outline's box, moved outward; a mitred point reaches beyond it.
void check_points(Findings& f, const Window& window) {
  if (window.shape.kind != ShapeKind::outline) return;
  const int opening = window.openings.front();
  const Rect& placed = f.layout.openings.at(static_cast<std::size_t>(opening) - 1).rect;
  const Length beyond = reach(window.back, placed);
  if (beyond < seen_reach) return;
  f.add("check-outline-point",
        f.say("a point of %1 reaches %2 beyond the opening's size, into the border or bar beside "
              "it",
              f.name(opening), f.text(beyond)),
        f.place(opening));
}

// Lines that cannot be set on the rule as they are. The layout sees to those of the top mat.
void check_rule(Findings& f, const MatLayer& layer) {
  const std::int64_t step = f.job.scale.increment.ticks();
  for (const Window& window : layer.windows) {
    if (!window.seen || window.shape.kind == ShapeKind::outline) continue;
    for (Length line : {window.back.left, window.back.top, f.mat.outer.right - window.back.right,
                        f.mat.outer.bottom - window.back.bottom}) {
      if (line.ticks() % step == 0) continue;
      f.add("check-off-rule",
            f.say("lines of %1 lie between the steps of the rule: one of %2 is %3 from the edge",
                  f.name(layer), f.name(window), f.text(line)),
            layer.board.place);
      return;
    }
  }
}

}  // namespace

void check_windows(Findings& f) {
  for (const MatLayer& layer : f.mat.layers) {
    for (const Window& window : layer.windows) {
      check_within_board(f, layer, window);
      if (layer.number == 1) check_points(f, window);
    }
    if (layer.number > 1) check_rule(f, layer);
  }
  int opening = 0;
  for (const Standing& standing : standings_of(f.job.arrangement)) {
    ++opening;
    if (standing.joined.empty()) {
      check_layers_of(f, opening);
    } else {
      check_shared(f, standing, opening);
    }
  }
}

}  // namespace mullion
