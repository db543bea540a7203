#include "engine/job/reveal.h"

#include <cmath>
#include <numbers>

#include "engine/job/standing.h"

namespace mullion {
namespace {

// Whether an edge of the layer is to be seen on that side of the opening.
bool is_seen(const Job& job, const Standing& standing, int layer_number, std::size_t side) {
  const Layer& layer = job.layers.at(static_cast<std::size_t>(layer_number - 1));
  if (layer.spacer) return false;
  if (const JoinedGroup* group = joined_in(standing, layer_number)) return group->on_edge[side];
  return is_cut_for(layer, *standing.opening);
}

}  // namespace

Length bevel_run(Length thickness, int bevel_millidegrees) {
  if (bevel_millidegrees == 45'000) return thickness;
  const double angle = bevel_millidegrees / 1000.0 * std::numbers::pi / 180.0;
  const double run = static_cast<double>(thickness.ticks()) / std::tan(angle);
  return Length::from_ticks(std::llround(run));
}

Sides reveal_of(const Job& job, const Opening& opening, int layer_number) {
  const auto own = opening.reveals.find(layer_number);
  return own != opening.reveals.end()
             ? own->second
             : job.layers.at(static_cast<std::size_t>(layer_number - 1)).reveal;
}

Sides line_inset(const Job& job, const Standing& standing, int layer_number) {
  const Layer& layer = job.layers.at(static_cast<std::size_t>(layer_number - 1));
  const Sides reveal = reveal_of(job, *standing.opening, layer_number);
  const Length run = job.reveal_reading == RevealReading::lines
                         ? Length()
                         : bevel_run(layer.thickness, job.bevel_millidegrees);
  Sides out;
  for (std::size_t side = 0; side < every_side.size(); ++side) {
    if (!is_seen(job, standing, layer_number, side)) continue;
    for (int above = 1; above < layer_number; ++above) {
      if (!is_seen(job, standing, above, side)) continue;
      out.*every_side[side] = reveal.*every_side[side] + run;
      break;
    }
  }
  return out;
}

Sides line_inset(const Job& job, const Opening& opening, int layer_number) {
  return line_inset(job, standing_of(job.arrangement, opening), layer_number);
}

Sides reveal_stack(const Job& job, const Opening& opening) {
  const Standing standing = standing_of(job.arrangement, opening);
  Sides sum;
  for (int number = 2; number <= static_cast<int>(job.layers.size()); ++number) {
    const Sides inset = line_inset(job, standing, number);
    for (auto side : every_side) sum.*side += inset.*side;
  }
  return sum;
}

}  // namespace mullion
