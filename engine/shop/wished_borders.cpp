#include "engine/shop/wished_borders.h"

#include <algorithm>

#include "engine/job/usual.h"

namespace mullion {

Length usual_border(Unit unit) {
  return usual_for(unit).small_border;
}

Sides wished_borders(const Job& job) {
  const Borders& stated = job.borders;
  const Length any = stated.least.value_or(usual_border(job.scale.unit));
  const Length top = stated.top.value_or(any);
  return {stated.left.value_or(any), top, stated.right.value_or(any),
          stated.bottom_size.value_or(stated.top ? top : any)};
}

Length least_of(const Sides& sides) {
  return std::min({sides.left, sides.top, sides.right, sides.bottom});
}

}  // namespace mullion
