#include "render/paper/sheet_size.h"

#include <algorithm>
#include <cctype>

#include "engine/xml/problem.h"

namespace mullion::paper {
namespace {

constexpr Length smallest_side = inches(3);
constexpr Length largest_side = inches(200);  // of a PDF page: ISO 32000-1, annex C.2

SheetSize in_inches(const char* name, Length width, Length height) {
  return {name, width, height, false};
}

SheetSize in_millimetres(const char* name, int width, int height) {
  return {name, millimetres(width), millimetres(height), false};
}

SheetSize roll(const char* name, int width) {
  return {name, inches(width), largest_side, true};
}

std::string lower_case(std::string_view text) {
  std::string lower(text);
  std::transform(lower.begin(), lower.end(), lower.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return lower;
}

std::string known_names() {
  std::string names;
  for (const SheetSize& size : sheet_sizes()) names += (names.empty() ? "" : ", ") + size.name;
  return names;
}

tl::expected<SheetSize, std::string> parse_custom(const std::string& text, std::size_t cross,
                                                  Unit unit) {
  const std::string second = text.substr(cross + 1);
  std::string first = text.substr(0, cross);
  // "329 x 483 mm": the unit named last holds for both.
  const std::size_t unit_at = second.find_last_of("0123456789. ") + 1;
  if (first.find_first_not_of("0123456789./- ") == std::string::npos) {
    first += second.substr(unit_at);
  }
  const auto width = parse_length(first, unit), height = parse_length(second, unit);
  if (!width) return tl::unexpected(width.error());
  if (!height) return tl::unexpected(height.error());
  if (std::min(*width, *height) < smallest_side || std::max(*width, *height) > largest_side) {
    return tl::unexpected("found a sheet of " + text + "; expected sides of 3 in to 200 in");
  }
  return SheetSize{text, *width, *height, false};
}

}  // namespace

const std::vector<SheetSize>& sheet_sizes() {
  static const std::vector<SheetSize> sizes{
      in_inches("letter", sixty_fourths(8 * 64 + 32), inches(11)),
      in_inches("legal", sixty_fourths(8 * 64 + 32), inches(14)),
      in_inches("tabloid", inches(11), inches(17)),
      in_inches("ansi-c", inches(17), inches(22)),
      in_inches("ansi-d", inches(22), inches(34)),
      in_inches("ansi-e", inches(34), inches(44)),
      in_millimetres("a4", 210, 297),
      in_millimetres("a3", 297, 420),
      in_millimetres("a2", 420, 594),
      in_millimetres("a1", 594, 841),
      in_millimetres("a0", 841, 1189),
      roll("roll-17", 17),
      roll("roll-24", 24),
      roll("roll-36", 36),
      roll("roll-44", 44)};
  return sizes;
}

tl::expected<SheetSize, std::string> parse_sheet_size(std::string_view text, Unit unit) {
  const std::string name = lower_case(text);
  std::vector<std::string_view> names;
  for (const SheetSize& size : sheet_sizes()) {
    if (size.name == name) return size;
    names.push_back(size.name);
  }
  const std::size_t cross = name.find('x');
  if (cross != std::string::npos && cross > 0 &&
      std::isdigit(static_cast<unsigned char>(name[0]))) {
    return parse_custom(name, cross, unit);
  }
  const std::string_view near = near_name(name, names);
  return tl::unexpected("found the paper \"" + std::string(text) + "\"; expected " +
                        (near.empty() ? known_names() + ", or a size such as 13 x 19 in"
                                      : "\"" + std::string(near) +
                                            "\", or a size such as "
                                            "13 x 19 in"));
}

}  // namespace mullion::paper
