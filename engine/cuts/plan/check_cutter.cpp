#include "engine/cuts/plan/check_cutter.h"

#include <algorithm>

#include "engine/cuts/plan/lines.h"
#include "engine/mat/findings.h"

namespace mullion {
namespace {

// What a mat asks of a cutter.
struct Demand {
  Length across;  // of the board, at its widest across the rail
  Length along;   // of the longest cut, over-cuts included
  int layer = 0;  // of that cut
};

Length length_of(const StraightLine& line) {
  const Point a = line.ends[0].at, b = line.ends[1].at;
  return std::max(a.x, b.x) - std::min(a.x, b.x) + std::max(a.y, b.y) - std::min(a.y, b.y);
}

Demand demand_of(const Mat& mat, const CutterProfile& cutter) {
  Demand out;
  for (const MatLayer& layer : mat.layers) {
    const Length over_cuts = over_cut(cutter, layer.board.thickness) * 2;
    for (const StraightLine& line : lines_of(layer.windows).straight) {
      const bool is_level = line.kept == BoardEdge::top || line.kept == BoardEdge::bottom;
      out.across = std::max(out.across, is_level ? mat.outer.height() : mat.outer.width());
      const Length along = length_of(line) + over_cuts;
      if (along <= out.along) continue;
      out.along = along;
      out.layer = layer.number;
    }
  }
  return out;
}

}  // namespace

Problems check_on_cutter(const Job& job, const Layout& layout, const Mat& mat,
                         const CutterProfile& cutter) {
  Findings f(job, layout, mat);
  const Demand demand = demand_of(mat, cutter);
  const std::string name = "the cutter \"" + cutter.id + "\" ";
  if (demand.across > cutter.widest_board) {
    f.add("check-cutter-wide",
          "the board is " + f.text(demand.across) + " across the rail; " + name + "takes " +
              f.text(cutter.widest_board),
          job.outer_place);
  }
  if (demand.along > cutter.longest_cut) {
    f.add("check-cutter-long",
          f.name(mat.layers[static_cast<std::size_t>(demand.layer - 1)]) + " needs a cut of " +
              f.text(demand.along) + ", over-cuts included; " + name + "cuts at most " +
              f.text(cutter.longest_cut),
          job.outer_place);
  }
  return f.take();
}

}  // namespace mullion
