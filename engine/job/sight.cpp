#include "engine/job/sight.h"

#include <algorithm>

namespace mullion {

Sight sight_of(const Opening& opening, const Picture* picture) {
  Sight out{opening.width, opening.height};
  if (picture == nullptr) return out;
  const Length covered = picture->overlap.value_or(default_overlap) * 2;
  const Length change = picture->float_gap ? *picture->float_gap * 2 : -covered;
  if (!out.width) out.width = picture->width + change;
  if (!out.height) out.height = picture->height + change;
  return out;
}

const Picture* picture_of(const Job& job, const Opening& opening) {
  const auto found = std::find_if(job.pictures.begin(), job.pictures.end(),
                                  [&](const Picture& one) { return one.id == opening.picture; });
  return found == job.pictures.end() ? nullptr : &*found;
}

}  // namespace mullion
