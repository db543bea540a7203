#include "engine/edit/frame.h"

#include "engine/job/parts.h"

namespace mullion::edit {

Rabbet rabbet_of(const FrameFit& fit, const Job& job) {
  const Length allowance = job.frame ? job.frame->allowance : usual_for(job.scale.unit).allowance;
  return {fit.width + allowance, fit.height + allowance};
}

Edit taking(const FrameFit& fit, const Job& job) {
  Several out;
  const auto state = [&](const char* name, std::string value) {
    out.edits.push_back(State{name, std::move(value)});
  };
  const Borders& borders = job.borders;
  if (borders.left) state("border.left", "free");
  if (borders.top) state("border.top", "free");
  if (borders.right) state("border.right", "free");
  if (borders.bottom == Borders::Bottom::given) state("border.bottom", "free");
  if (job.outer_width) state("outer.width", "free");
  if (job.outer_height) state("outer.height", "free");
  const Rabbet rabbet = rabbet_of(fit, job);
  const std::string width = exact_number(rabbet.width, job.scale.unit);
  const std::string height = exact_number(rabbet.height, job.scale.unit);
  if (job.frame) {
    state("frame.rabbet-width", width);
    state("frame.rabbet-height", height);
  } else {
    out.edits.push_back(
        Add{"frame", {{"rabbet-width", width}, {"rabbet-height", height}}, {}, std::nullopt});
  }
  return out;
}

}  // namespace mullion::edit
