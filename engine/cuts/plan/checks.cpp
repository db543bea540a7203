#include "engine/cuts/plan/checks.h"

#include <algorithm>
#include <map>

namespace mullion {
namespace {

Check reveal_check(BoardEdge edge, Length distance) {
  Check check;
  check.kind = Check::Kind::reveal;
  check.edge = edge;
  check.distance = distance;
  return check;
}

void add_reveals(Stage& stage, const MatLayer& layer) {
  const bool seen = std::any_of(layer.windows.begin(), layer.windows.end(),
                                [](const Window& window) { return window.seen; });
  if (layer.number < 2 || !seen) return;
  const Sides& reveal = layer.board.reveal;
  stage.checks.push_back(reveal_check(BoardEdge::top, reveal.top));
  if (reveal == Sides{reveal.top, reveal.top, reveal.top, reveal.top}) return;
  stage.checks.push_back(reveal_check(BoardEdge::left, reveal.left));
  stage.checks.push_back(reveal_check(BoardEdge::bottom, reveal.bottom));
  stage.checks.push_back(reveal_check(BoardEdge::right, reveal.right));
}

Check size_check(Check::Kind kind, const Window& window, int after_cut) {
  Check check;
  check.kind = kind;
  check.after_cut = after_cut;
  check.openings = window.openings;
  check.width = window.back.width();
  check.height = window.back.height();
  return check;
}

// The cut with which each window that has straight lines alone falls out.
std::map<std::vector<int>, int> last_cuts(const Stage& stage) {
  std::map<std::vector<int>, int> last;
  for (const BevelCut* cut : cuts_of(stage)) {
    last[cut->openings] = std::max(last[cut->openings], cut->number);
  }
  for (const SkewCut& cut : stage.skew_cuts) last.erase(cut.openings);
  for (const CurveCut& curve : stage.curves) last.erase(curve.openings);
  return last;
}

void add_lines(Stage& stage) {
  std::size_t cuts = 0;
  for (const SetUp& set_up : stage.set_ups) {
    for (const Placement& placement : set_up.placements) {
      for (const BevelCut& cut : placement.cuts) {
        if (++cuts > 2) return;
        Check check;
        check.after_cut = cut.number;
        check.edge = placement.edge;
        check.distance = cut.distance;
        check.openings = cut.openings;
        stage.checks.push_back(check);
      }
    }
  }
}

void add_fallout(Stage& stage, const MatLayer& layer) {
  const Window* first = nullptr;
  int after = 0;
  for (const auto& [openings, cut] : last_cuts(stage)) {
    if (first != nullptr && cut > after) continue;
    const auto window =
        std::find_if(layer.windows.begin(), layer.windows.end(),
                     [&, wanted = openings](const Window& w) { return w.openings == wanted; });
    if (window == layer.windows.end()) continue;
    first = &*window;
    after = cut;
  }
  if (first != nullptr) stage.checks.push_back(size_check(Check::Kind::fallout, *first, after));
}

// Those of one size are named together, but for windows that several openings share.
void add_openings(Stage& stage, const MatLayer& layer) {
  std::vector<Check> sizes;
  for (const Window& window : layer.windows) {
    Check check = size_check(Check::Kind::opening, window, 0);
    check.joined = window.openings.size() > 1;
    const auto same = std::find_if(sizes.begin(), sizes.end(), [&](const Check& other) {
      return !other.joined && !check.joined && other.width == check.width &&
             other.height == check.height;
    });
    if (same == sizes.end()) {
      sizes.push_back(std::move(check));
    } else {
      same->openings.insert(same->openings.end(), check.openings.begin(), check.openings.end());
    }
  }
  for (Check& check : sizes) {
    std::sort(check.openings.begin(), check.openings.end());
    stage.checks.push_back(std::move(check));
  }
}

}  // namespace

void add_checks(Stage& stage, const Mat& mat) {
  if (stage.kind != StageKind::layer) return;
  const MatLayer& layer = mat.layers[static_cast<std::size_t>(stage.layer) - 1];
  add_reveals(stage, layer);
  add_lines(stage);
  add_fallout(stage, layer);
  add_openings(stage, layer);
}

}  // namespace mullion
