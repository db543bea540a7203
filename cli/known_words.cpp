#include "cli/known_words.h"

#include "engine/cuts/cutter/profile.h"
#include "engine/locale/locale.h"

namespace mullion::cli {

std::vector<std::string> cutter_names() {
  std::vector<std::string> out;
  for (const CutterProfile& cutter : generic_cutters()) out.push_back(cutter.id);
  return out;
}

std::vector<std::string> languages() {
  const auto known = Locale::languages();
  return {known.begin(), known.end()};
}

}  // namespace mullion::cli
