#pragma once

namespace bench {

// Timings of suggestions for six pictures that may turn and for 24.
void suggestions();

}  // namespace bench
