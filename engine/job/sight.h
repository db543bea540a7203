#pragma once

// How much of a picture its opening lets the eye see.

#include <optional>

#include "engine/job/job.h"

namespace mullion {

struct Sight {
  std::optional<Length> width, height;  // nothing: free
};

// What the opening states; else the picture with its float gap, or without the overlap on each
// side. `picture` may be null.
Sight sight_of(const Opening& opening, const Picture* picture);

// Null where the opening has none.
const Picture* picture_of(const Job& job, const Opening& opening);

}  // namespace mullion
