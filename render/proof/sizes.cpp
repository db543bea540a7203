#include "render/proof/sizes.h"

#include <algorithm>

namespace mullion::proof {
Scales scales_for(const Scale& job, const Locale& locale) {
  const Scale own = locale.first_scale(job);
  if (own != job) return {own, job};
  return {own, usual_scale(own.unit == Unit::inch ? Measure::metric : Measure::inches)};
}

SizeText size_text(Length width, Length height, const Scale& job, const Locale& locale) {
  const auto in = [&](const Scale& scale) {
    return scale == job ? locale.size(width, height, scale)
                        : locale.rounded_size(width, height, scale);
  };
  const Scales scales = scales_for(job, locale);
  return {in(scales.own), in(scales.other)};
}

SizeText length_text(Length length, const Scale& job, const Locale& locale) {
  const auto in = [&](const Scale& scale) {
    return scale == job ? locale.described(length, scale) : locale.length(length, scale);
  };
  const Scales scales = scales_for(job, locale);
  return {in(scales.own), in(scales.other)};
}

std::string ranges(const std::vector<int>& numbers) {
  std::string out;
  for (std::size_t i = 0; i < numbers.size();) {
    std::size_t end = i;
    while (end + 1 < numbers.size() && numbers[end + 1] == numbers[end] + 1) ++end;
    if (!out.empty()) out += ", ";
    out += std::to_string(numbers[i]);
    if (end > i) out += (end == i + 1 ? ", " : "\xE2\x80\x93") + std::to_string(numbers[end]);
    i = end + 1;
  }
  return out;
}

std::vector<SeenOpening> seen_openings(const Mat& mat) {
  std::vector<SeenOpening> out;
  for (const Rect& sight : mat.sights) {
    out.push_back({static_cast<int>(out.size()) + 1, ShapeKind::rectangle, sight});
  }
  for (const MatLayer& layer : mat.layers) {
    if (layer.board.spacer) continue;
    for (const Window& window : layer.windows) {
      if (window.openings.size() > 1) continue;
      out.at(static_cast<std::size_t>(window.openings.front()) - 1).shape = window.shape.kind;
    }
  }
  return out;
}

std::vector<SizeGroup> group_by_size(const Mat& mat) {
  std::vector<SizeGroup> groups;
  std::vector<std::vector<int>> numbers;
  for (const SeenOpening& opening : seen_openings(mat)) {
    std::size_t i = 0;
    for (; i < groups.size(); ++i) {
      if (groups[i].shape == opening.shape && groups[i].sight.width() == opening.sight.width() &&
          groups[i].sight.height() == opening.sight.height()) {
        break;
      }
    }
    if (i == groups.size()) {
      groups.push_back({{}, false, opening.shape, opening.sight});
      numbers.emplace_back();
    }
    numbers[i].push_back(opening.number);
  }
  for (std::size_t i = 0; i < groups.size(); ++i) {
    groups[i].numbers = ranges(numbers[i]);
    groups[i].several = numbers[i].size() > 1;
  }
  return groups;
}

}  // namespace mullion::proof
