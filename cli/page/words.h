#pragma once

// What the page itself says: every string of its modules, in English, for the catalogues.

#include <vector>

namespace mullion::cli::page {

const std::vector<const char*>& page_words();

}  // namespace mullion::cli::page
