#pragma once

namespace bench {

// Timings of single sheets (gcut) and of weeks of orders, with their gaps to the bound.
void sheets();

}  // namespace bench
