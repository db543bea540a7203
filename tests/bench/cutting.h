#pragma once

namespace bench {

// Timings of cutting plans and of runs of many mats.
void cutting();

}  // namespace bench
