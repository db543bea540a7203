#include "engine/mat/findings.h"
#include "engine/mat/rect.h"

namespace mullion {
namespace {

Length way_between(const Outline& a, const Outline& b) {
  return Length::from_ticks(std::llround(distance(a, b, measuring_tolerance)));
}

void check_windows_beside(Findings& f, const MatGroove& groove) {
  for (const Window& window : f.mat.layers.front().windows) {
    const Length half = half_rounded_down(groove.width);
    if (gap_between(bounding_box(groove.line), window.face) > half) continue;
    const Length way = way_between(groove.line, window.face_edge);
    if (way > half) continue;
    f.add("check-groove-bevel",
          f.say("a groove of %1 runs into the bevel of %2: its middle passes the bevel's edge at "
                "%3",
                f.text(groove.width), f.name(window), f.text(way)),
          groove.place);
  }
}

}  // namespace

void check_grooves(Findings& f) {
  const auto& grooves = f.mat.grooves;
  for (std::size_t i = 0; i < grooves.size(); ++i) {
    check_windows_beside(f, grooves[i]);
    const Length half = half_rounded_down(grooves[i].width);
    if (!contains(outset(f.mat.outer, -half), bounding_box(grooves[i].line))) {
      f.add("check-groove-beyond", f.say("a groove runs off the board"), grooves[i].place);
    }
    for (std::size_t j = i + 1; j < grooves.size(); ++j) {
      const Length both = half_rounded_down(grooves[i].width + grooves[j].width);
      if (way_between(grooves[i].line, grooves[j].line) > both) continue;
      f.add("check-grooves-cross", f.say("two grooves cross or touch"), grooves[j].place);
    }
  }
}

}  // namespace mullion
