#pragma once

namespace bench {

// Large tiled templates: time, memory, and how they compare to bare Cairo. Instructions are counted
// by callgrind with --toggle-collect='mullion::render_template*' and with '*bare_cairo*'; the goals
// are 1.4 times bare Cairo's for 24 openings and 1.5 times for 200.
void tiled_template();

}  // namespace bench
