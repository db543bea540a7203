#include "engine/sheets/guillotine/pattern.h"

#include <algorithm>
#include <iterator>

namespace mullion {
namespace {

using Kind = Pattern::Kind;

Length& along(Pattern& part, Kind kind) {
  return kind == Kind::columns ? part.width : part.height;
}
Length& across(Pattern& part, Kind kind) {
  return kind == Kind::columns ? part.height : part.width;
}
Length extent(const Pattern& part, Kind kind) {
  return kind == Kind::columns ? part.width : part.height;
}

Kind other(Kind kind) {
  return kind == Kind::columns ? Kind::rows : Kind::columns;
}

void collect(const Pattern& pattern, Length left, Length top, Length kerf,
             std::vector<PlacedBlank>& found) {
  if (pattern.kind == Kind::blank) {
    found.push_back({pattern.blank, pattern.turned, left, top, pattern.width, pattern.height});
  }
  for (const Pattern& part : pattern.parts) {
    collect(part, left, top, kerf, found);
    if (pattern.kind == Kind::columns) left += part.width + kerf;
    if (pattern.kind == Kind::rows) top += part.height + kerf;
  }
}

// Parts of one kind in one node: nested ones taken apart, larger ones first, waste joined at the
// end.
std::vector<Pattern> arranged(Kind kind, std::vector<Pattern> parts, Length kerf) {
  std::vector<Pattern> flat;
  for (Pattern& part : parts) {
    if (part.kind != kind) {
      flat.push_back(std::move(part));
    } else {
      std::move(part.parts.begin(), part.parts.end(), std::back_inserter(flat));
    }
  }
  const auto waste = std::stable_partition(
      flat.begin(), flat.end(), [](const Pattern& part) { return part.kind != Kind::waste; });
  std::stable_sort(flat.begin(), waste, [kind](const Pattern& a, const Pattern& b) {
    return extent(a, kind) > extent(b, kind);
  });
  if (waste != flat.end()) {
    for (auto next = waste + 1; next != flat.end(); ++next) {
      along(*waste, kind) += extent(*next, kind) + kerf;
    }
    flat.erase(waste + 1, flat.end());
  }
  return flat;
}

// The blanks alone: no waste, every node as small as its parts allow.
Pattern shrunk(const Pattern& pattern, Length kerf) {
  if (pattern.kind == Kind::blank || pattern.kind == Kind::waste) return pattern;
  Pattern result;
  result.kind = pattern.kind;
  for (const Pattern& part : pattern.parts) {
    Pattern small = shrunk(part, kerf);
    if (small.kind != Kind::waste) result.parts.push_back(std::move(small));
  }
  if (result.parts.empty()) return {};
  if (result.parts.size() == 1) return Pattern(std::move(result.parts.front()));
  result.parts = arranged(result.kind, std::move(result.parts), kerf);
  Length sum = Length() - kerf;
  for (const Pattern& part : result.parts) {
    sum += extent(part, result.kind) + kerf;
    across(result, result.kind) =
        std::max(extent(result, other(result.kind)), extent(part, other(result.kind)));
  }
  along(result, result.kind) = sum;
  return result;
}

bool can_cut(Kind kind, Length width, Length height, const CutLimits& limits) {
  return kind == Kind::columns ? limits.allow(height, width) : limits.allow(width, height);
}

Pattern filled(Pattern pattern, Length width, Length height, const CutLimits& limits);

// `pattern` with one part of waste after it along `kind`, in a board of width x height.
Pattern with_waste_after(Pattern pattern, Kind kind, Length width, Length height,
                         const CutLimits& limits) {
  Pattern waste;
  waste.width = width;
  waste.height = height;
  const Length size = extent(waste, kind);
  const Length used = extent(pattern, kind);
  along(waste, kind) = std::max(size - used - limits.kerf, Length());
  Pattern whole;
  whole.kind = kind;
  whole.width = width;
  whole.height = height;
  whole.parts.push_back(kind == Kind::columns ? filled(std::move(pattern), used, height, limits)
                                              : filled(std::move(pattern), width, used, limits));
  whole.parts.push_back(std::move(waste));
  whole.parts = arranged(kind, std::move(whole.parts), limits.kerf);
  return whole;
}

double area(Length width, Length height) {
  return static_cast<double>(width.ticks()) * static_cast<double>(height.ticks());
}

// The largest rectangle left over when every part is stretched to `size` across its node by itself.
double largest_left_beside_a_part(const Pattern& pattern, Length size) {
  double largest = 0;
  for (const Pattern& part : pattern.parts) {
    const Length spare = size - extent(part, other(pattern.kind));
    largest = std::max(largest, area(extent(part, pattern.kind), spare));
  }
  return largest;
}

Pattern filled(Pattern pattern, Length width, Length height, const CutLimits& limits) {
  const Length right = width - pattern.width;
  const Length below = height - pattern.height;
  if (right == Length() && below == Length() && pattern.parts.empty()) return pattern;
  if (pattern.kind == Kind::blank) {
    const bool by_column =
        can_cut(Kind::columns, width, height, limits) && right > Length() &&
        (area(right, height) >= area(width, below) || !can_cut(Kind::rows, width, height, limits));
    return with_waste_after(std::move(pattern), by_column ? Kind::columns : Kind::rows, width,
                            height, limits);
  }

  const Kind kind = pattern.kind;
  const Length spare = kind == Kind::columns ? right : below;
  const Length spare_across = kind == Kind::columns ? below : right;
  const Length size_across = kind == Kind::columns ? height : width;
  const Length size_along = kind == Kind::columns ? width : height;
  const bool strip_first =
      spare_across > Length() && can_cut(other(kind), width, height, limits) &&
      (!can_cut(kind, width, height, limits) ||
       area(size_along, spare_across) >=
           std::max(area(spare, size_across), largest_left_beside_a_part(pattern, size_across)));
  if (strip_first) return with_waste_after(std::move(pattern), other(kind), width, height, limits);
  if (spare > Length()) return with_waste_after(std::move(pattern), kind, width, height, limits);

  across(pattern, kind) = size_across;
  for (Pattern& part : pattern.parts) {
    const Length part_width = kind == Kind::columns ? part.width : width;
    const Length part_height = kind == Kind::columns ? height : part.height;
    part = filled(std::move(part), part_width, part_height, limits);
  }
  return pattern;
}

}  // namespace

std::vector<PlacedBlank> blanks_in(const Pattern& pattern, Length kerf) {
  std::vector<PlacedBlank> found;
  collect(pattern, Length(), Length(), kerf, found);
  return found;
}

Pattern pushed_together(const Pattern& pattern, Length width, Length height,
                        const CutLimits& limits) {
  Pattern blanks = shrunk(pattern, limits.kerf);
  if (blanks.kind != Kind::waste) return filled(std::move(blanks), width, height, limits);
  Pattern waste;
  waste.width = width;
  waste.height = height;
  return waste;
}

}  // namespace mullion
