#include "engine/job/parts.h"

namespace mullion {
namespace {

void read_three_sides(Element& element, Borders& borders) {
  if (const auto all = element.length("all", Least::above_zero)) {
    borders.left = borders.right = borders.top = borders.bottom_size = all;
    borders.bottom = Borders::Bottom::given;
  }
  if (const auto sides = element.length("sides", Least::above_zero)) {
    borders.left = borders.right = sides;
  }
  for (const char* side : {"left", "right"}) {
    if (element.has("sides") && element.has(side)) {
      element.problem_at(
          side, "job-border-twice",
          "found sides and " + std::string(side) + " in one <borders>; expected one of them");
    }
  }
  const auto read = [&](const char* name, std::optional<Length>& side) {
    if (const auto length = element.length(name, Least::above_zero)) side = length;
  };
  read("left", borders.left);
  read("right", borders.right);
  read("top", borders.top);
}

void read_bottom(Element& element, Borders& borders) {
  if (const auto bottom = element.length_or_word<Borders::Bottom>(
          "bottom", {{"optical", Borders::Bottom::optical}, {"equal", Borders::Bottom::equal}})) {
    borders.bottom = bottom->word.value_or(Borders::Bottom::given);
    borders.bottom_size = bottom->length;
  }
  if (const auto extra = element.length("bottom-extra", Least::zero)) {
    borders.bottom = Borders::Bottom::extra;
    borders.extra = *extra;
    borders.bottom_size = std::nullopt;
  }
  if (element.has("bottom-ratio")) {
    const Fraction ratio = element.fraction("bottom-ratio");
    borders.bottom = Borders::Bottom::ratio;
    borders.ratio_numerator = ratio.numerator;
    borders.ratio_denominator = ratio.denominator;
    borders.bottom_size = std::nullopt;
  }
}

void refuse_two_bottoms(Element& element) {
  const char* first = nullptr;
  for (const char* name : {"bottom", "bottom-extra", "bottom-ratio"}) {
    if (!element.has(name)) continue;
    if (first != nullptr) {
      element.problem_at(name, "job-border-twice",
                         "found " + std::string(first) + " and " + name +
                             " in one <borders>; expected one of them");
    }
    first = name;
  }
}

}  // namespace

Borders read_borders(Element& element) {
  element.children({});
  Borders borders;
  borders.place = element.place();
  read_three_sides(element, borders);
  read_bottom(element, borders);
  refuse_two_bottoms(element);
  borders.least = element.length("least", Least::zero);
  return borders;
}

}  // namespace mullion
