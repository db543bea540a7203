#include "cli/under_mats.h"

namespace mullion::cli {

void add_under_mat_options(const Verb& verb, UnderMats& words) {
  verb.flag("--separate", words.separate,
            "Under-mats are cut by themselves, from blanks as large as the top mat's, not taped "
            "behind it");
  verb.option("--trim", Takes::length, words.trim,
              "By how much a taped under-mat is smaller on each side (1/8 in or 3 mm)");
}

tl::expected<CutOptions, std::string> cut_options(const UnderMats& words, Unit unit) {
  CutOptions out;
  out.stacked = !words.separate;
  if (words.trim.empty()) return out;
  const auto trim = parse_length(words.trim, unit);
  if (!trim) return tl::unexpected(trim.error());
  if (*trim < Length()) return tl::unexpected(std::string("expected zero or more"));
  out.trim = *trim;
  return out;
}

}  // namespace mullion::cli
