#pragma once

namespace bench {

// Processor times of layouts of 12 to 800 openings, their growth, and the ratio to GLPK and Clp.
void layouts();

}  // namespace bench
