#pragma once

namespace bench {

// A large tiled template: time, memory, and how it compares to bare Cairo.
void tiled_template();

}  // namespace bench
