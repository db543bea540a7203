#include <algorithm>

#include "engine/frames/stock_sizes.h"

namespace mullion {
namespace {

Job free_to_fit(const Job& job, Length least) {
  Job out = job;
  out.frame.reset();
  Borders borders;
  borders.bottom =
      job.borders.bottom == Borders::Bottom::given ? Borders::Bottom::equal : job.borders.bottom;
  borders.extra = job.borders.extra;
  borders.ratio_numerator = job.borders.ratio_numerator;
  borders.ratio_denominator = job.borders.ratio_denominator;
  borders.least = least;
  out.borders = borders;
  return out;
}

}  // namespace

std::vector<FrameFit> fitting_frames(const Job& job, const std::vector<StockSize>& sizes,
                                     Length least) {
  Job trial = free_to_fit(job, least);
  std::vector<FrameFit> fits;
  const auto try_size = [&](Length width, Length height) {
    trial.outer_width = width;
    trial.outer_height = height;
    if (const auto layout = lay_out(trial)) fits.push_back({width, height, layout->borders});
  };
  for (const StockSize& size : sizes) {
    try_size(size.width, size.height);
    if (size.width != size.height) try_size(size.height, size.width);
  }
  const auto area = [](const FrameFit& fit) {
    return to_inches(fit.width) * to_inches(fit.height);
  };
  std::stable_sort(fits.begin(), fits.end(),
                   [&](const FrameFit& a, const FrameFit& b) { return area(a) < area(b); });
  return fits;
}

}  // namespace mullion
