#pragma once

// How a job takes a ready-made frame (engine/shop/stock_sizes.h).

#include "engine/edit/edit.h"
#include "engine/shop/stock_sizes.h"

namespace mullion::edit {

// The rabbet of a frame whose glass, for which the mat is cut, is of that size.
struct Rabbet {
  Length width, height;
};
Rabbet rabbet_of(const FrameFit& fit, const Job& job);

// By which the job comes to have that frame and a mat for it, with the borders that follow: what
// was stated of the outer size and of borders goes, a weighted bottom stays; of a frame that it
// has, moulding, lip and allowance stay.
Edit taking(const FrameFit& fit, const Job& job);

}  // namespace mullion::edit
