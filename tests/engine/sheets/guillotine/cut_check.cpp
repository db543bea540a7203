#include "cut_check.h"

using namespace mullion;

namespace {

bool same(Length a, Length b) {
  return a == b;
}

std::string fault_in_parts(const Pattern& pattern, const CutLimits& limits,
                           const std::vector<BlankSize>& blanks) {
  const bool columns = pattern.kind == Pattern::Kind::columns;
  if (pattern.parts.size() < 2) return "a cut leaves fewer than two parts";
  const Length whole = columns ? pattern.width : pattern.height;
  const Length across = columns ? pattern.height : pattern.width;
  if (limits.longest_cut && across > *limits.longest_cut) return "a cut is too long";
  if (limits.widest_board && whole > *limits.widest_board) return "a board is too wide";
  const Length kerf = limits.kerf;
  Length sum = Length() - kerf;
  for (const Pattern& part : pattern.parts) {
    if (!same(columns ? part.height : part.width, across)) return "a cut stops short of the edge";
    sum += (columns ? part.width : part.height) + kerf;
    if (std::string fault = fault_in(part, part.width, part.height, limits, blanks);
        !fault.empty()) {
      return fault;
    }
  }
  if (sum == whole) return "";
  const Pattern& last = pattern.parts.back();
  const bool along_the_edge = last.kind == Pattern::Kind::waste &&
                              (columns ? last.width : last.height) == Length() && sum > whole &&
                              sum - whole < kerf;
  return along_the_edge ? "" : "the parts do not add up to the whole";
}

bool apart(const PlacedBlank& a, const PlacedBlank& b, Length kerf) {
  return a.left + a.width + kerf <= b.left || b.left + b.width + kerf <= a.left ||
         a.top + a.height + kerf <= b.top || b.top + b.height + kerf <= a.top;
}

}  // namespace

std::string fault_in(const Pattern& pattern, Length width, Length height, const CutLimits& limits,
                     const std::vector<BlankSize>& blanks) {
  if (pattern.width != width || pattern.height != height) return "a part has the wrong size";
  if (pattern.width < Length() || pattern.height < Length()) return "a part has a negative size";
  switch (pattern.kind) {
    case Pattern::Kind::waste:
      return pattern.parts.empty() ? "" : "waste is cut";
    case Pattern::Kind::blank: {
      const BlankSize& size = blanks.at(static_cast<std::size_t>(pattern.blank));
      if (pattern.turned && !size.may_turn) return "a blank is turned that may not be";
      const Length w = pattern.turned ? size.height : size.width;
      const Length h = pattern.turned ? size.width : size.height;
      return w == width && h == height ? "" : "a blank has another size than was asked for";
    }
    default:
      return fault_in_parts(pattern, limits, blanks);
  }
}

std::int64_t value_of(const Pattern& pattern, Length width, Length height, Length kerf,
                      const std::vector<std::int64_t>& values) {
  const std::vector<PlacedBlank> placed = blanks_in(pattern, kerf);
  std::int64_t sum = 0;
  for (std::size_t i = 0; i < placed.size(); ++i) {
    const PlacedBlank& blank = placed[i];
    if (blank.left < Length() || blank.top < Length() || blank.left + blank.width > width ||
        blank.top + blank.height > height) {
      return -1;
    }
    for (std::size_t j = 0; j < i; ++j) {
      if (!apart(blank, placed[j], kerf)) return -1;
    }
    sum += values.at(static_cast<std::size_t>(blank.blank));
  }
  return sum;
}
