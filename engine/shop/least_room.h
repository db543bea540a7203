#pragma once

// The least room that an arrangement takes between its borders. Whatever is smaller need not be
// laid out to know that it does not fit.

#include "engine/job/job.h"

namespace mullion {

struct Room {
  Length width, height;
};

// Openings at their sizes in the top mat, those without one as nothing; stated gaps, else the least
// bar; rules are not looked at. No layout of the job takes less.
Room least_room(const Job& job);

}  // namespace mullion
