#pragma once

// The catalogues that are compiled into the library, one a file of engine/locale/translations.

#include <string_view>
#include <vector>

namespace mullion {

struct Translation {
  std::string_view language;  // ISO 639-1
  std::string_view mo_file;   // its bytes
};

const std::vector<Translation>& translations();

}  // namespace mullion
