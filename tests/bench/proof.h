#pragma once

namespace bench {

// Timings and peak memory of proofs with large photographs.
void proof();

}  // namespace bench
