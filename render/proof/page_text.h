#pragma once

// The fixed texts of the HTML page.

namespace mullion::proof {

extern const char* const page_style;
extern const char* const page_script;

}  // namespace mullion::proof
