#include <algorithm>

#include "engine/job/read.h"
#include "engine/shop/least_room.h"
#include "engine/shop/stock_sizes.h"
#include "engine/shop/wished_borders.h"

namespace mullion {
namespace {

// A stated bottom border stays as much wider than the stated top one.
Borders weighted_alone(const Borders& stated) {
  Borders out;
  out.place = stated.place;
  out.bottom = stated.bottom;
  out.extra = stated.extra;
  out.ratio_numerator = stated.ratio_numerator;
  out.ratio_denominator = stated.ratio_denominator;
  if (stated.bottom != Borders::Bottom::given) return out;
  out.bottom = Borders::Bottom::equal;
  if (stated.top && stated.bottom_size && *stated.bottom_size > *stated.top) {
    out.bottom = Borders::Bottom::extra;
    out.extra = *stated.bottom_size - *stated.top;
  }
  return out;
}

Job free_to_fit(const Job& job) {
  Job out = job;
  out.frame.reset();
  out.outer_width.reset();
  out.outer_height.reset();
  out.borders = weighted_alone(job.borders);
  if (!is_arranged(job) && job.pictures.size() == 1) {
    Opening opening;
    opening.id = opening.picture = job.pictures.front().id;
    out.arrangement = {opening};
  }
  return out;
}

bool are_as_wide(const Sides& sides, const Sides& least) {
  return sides.left >= least.left && sides.top >= least.top && sides.right >= least.right &&
         sides.bottom >= least.bottom;
}

// By rising area.
std::vector<StockSize> either_way_round(const std::vector<StockSize>& sizes) {
  std::vector<StockSize> out;
  for (const StockSize& size : sizes) {
    out.push_back(size);
    if (size.width != size.height) out.push_back({size.height, size.width});
  }
  const auto area = [](const StockSize& size) {
    return to_inches(size.width) * to_inches(size.height);
  };
  std::stable_sort(out.begin(), out.end(),
                   [&](const StockSize& a, const StockSize& b) { return area(a) < area(b); });
  return out;
}

Problems problem(const Job& job, const char* code, std::string message) {
  return {{Severity::error, code, std::move(message), {}, job.file}};
}

// What the mat measures with the least borders. A mat that cannot be had at any size says why.
Result<std::vector<FrameFit>> none_fits(Job trial, const Sides& least) {
  trial.borders.least.reset();
  trial.borders.left = least.left;
  trial.borders.right = least.right;
  trial.borders.top = least.top;
  const Result<Layout> layout = lay_out(trial);
  if (!layout) return tl::unexpected(layout.error());
  const auto text = [&](Length length) { return describe(length, trial.scale); };
  const Length bottom = std::max(layout->borders.bottom, least.bottom);
  return tl::unexpected(problem(trial, "frames-none",
                                "no size in the list takes this job; with borders of at least " +
                                    text(least_of(least)) + " it needs " + text(layout->width) +
                                    " x " +
                                    text(layout->height - layout->borders.bottom + bottom)));
}

}  // namespace

Result<std::vector<FrameFit>> fitting_frames(const Job& job, const std::vector<StockSize>& sizes,
                                             const Sides& least, std::size_t most) {
  Job trial = free_to_fit(job);
  if (!is_arranged(trial)) {
    return tl::unexpected(problem(job, "frames-not-arranged",
                                  "the job has no <arrange>; `mullion suggest --stock` finds an "
                                  "arrangement and a frame for it together"));
  }
  trial.borders.least = least_of(least);
  const Room room = least_room(trial);
  std::vector<FrameFit> fits;
  for (const StockSize& size : either_way_round(sizes)) {
    if (fits.size() == most) break;
    if (size.width < room.width + least.left + least.right) continue;
    if (size.height < room.height + least.top + least.bottom) continue;
    trial.outer_width = size.width;
    trial.outer_height = size.height;
    const Result<Layout> layout = lay_out(trial);
    if (!layout || !are_as_wide(layout->borders, least)) continue;
    fits.push_back({size.width, size.height, layout->borders});
  }
  if (!fits.empty()) return fits;
  trial.outer_width.reset();
  trial.outer_height.reset();
  return none_fits(std::move(trial), least);
}

}  // namespace mullion
