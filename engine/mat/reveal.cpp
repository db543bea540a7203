#include <algorithm>
#include <cmath>
#include <numbers>

#include "engine/mat/mat.h"

namespace mullion {
namespace {

Sides plus(const Sides& a, const Sides& b) {
  return {a.left + b.left, a.top + b.top, a.right + b.right, a.bottom + b.bottom};
}

bool serves(const Layer& layer, const std::string& opening) {
  if (layer.spacer) return false;
  return layer.only.empty() ||
         std::find(layer.only.begin(), layer.only.end(), opening) != layer.only.end();
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

Sides line_inset(const Job& job, const Opening& opening, int layer_number) {
  const Layer& layer = job.layers.at(static_cast<std::size_t>(layer_number - 1));
  if (layer_number == 1 || !serves(layer, opening.id)) return {};
  const Sides reveal = reveal_of(job, opening, layer_number);
  if (job.reveal_reading == RevealReading::lines) return reveal;
  const Length run = bevel_run(layer.thickness, job.bevel_millidegrees);
  return plus(reveal, {run, run, run, run});
}

Sides reveal_stack(const Job& job, const Opening& opening) {
  Sides sum;
  for (int number = 2; number <= static_cast<int>(job.layers.size()); ++number) {
    sum = plus(sum, line_inset(job, opening, number));
  }
  return sum;
}

}  // namespace mullion
