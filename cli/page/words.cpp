#include "cli/page/words.h"

namespace mullion::cli::page {

const std::vector<const char*>& page_words() {
  static const std::vector<const char*> words;
  return words;
}

}  // namespace mullion::cli::page
