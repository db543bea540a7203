#include "render/paper/sheet_size.h"

#include <algorithm>
#include <cctype>
#include <cstdio>
#include <optional>

#include "engine/xml/problem.h"

namespace mullion::paper {
namespace {

constexpr Length smallest_side = inches(3);
constexpr Length largest_side = inches(200);  // of a PDF page: ISO 32000-1, annex C.2
constexpr Length narrowest_roll = inches(8), widest_roll = inches(72);

struct Listed {
  SheetSize size;
  const char* media;  // its name in PWG 5101.1, table 3; none of a roll
};

Listed in_inches(const char* name, const char* media, Length width, Length height) {
  return {{name, width, height, false}, media};
}

Listed in_millimetres(const char* name, const char* media, int width, int height) {
  return {{name, millimetres(width), millimetres(height), false}, media};
}

SheetSize roll_of(std::string name, Length width) {
  return {std::move(name), width, largest_side, true};
}

Listed roll(const char* name, int width) {
  return {roll_of(name, inches(width)), ""};
}

const std::vector<Listed>& listed_sizes() {
  static const std::vector<Listed> sizes{
      in_inches("letter", "na_letter_8.5x11in", sixty_fourths(8 * 64 + 32), inches(11)),
      in_inches("legal", "na_legal_8.5x14in", sixty_fourths(8 * 64 + 32), inches(14)),
      in_inches("tabloid", "na_ledger_11x17in", inches(11), inches(17)),
      in_inches("ansi-c", "na_c_17x22in", inches(17), inches(22)),
      in_inches("ansi-d", "na_d_22x34in", inches(22), inches(34)),
      in_inches("ansi-e", "na_e_34x44in", inches(34), inches(44)),
      in_inches("arch-a", "na_arch-a_9x12in", inches(9), inches(12)),
      in_inches("arch-b", "na_arch-b_12x18in", inches(12), inches(18)),
      in_inches("arch-c", "na_arch-c_18x24in", inches(18), inches(24)),
      in_inches("arch-d", "na_arch-d_24x36in", inches(24), inches(36)),
      in_inches("arch-e", "na_arch-e_36x48in", inches(36), inches(48)),
      in_millimetres("a4", "iso_a4_210x297mm", 210, 297),
      in_millimetres("a3", "iso_a3_297x420mm", 297, 420),
      in_millimetres("a2", "iso_a2_420x594mm", 420, 594),
      in_millimetres("a1", "iso_a1_594x841mm", 594, 841),
      in_millimetres("a0", "iso_a0_841x1189mm", 841, 1189),
      in_millimetres("b4", "iso_b4_250x353mm", 250, 353),
      in_millimetres("b3", "iso_b3_353x500mm", 353, 500),
      in_millimetres("b2", "iso_b2_500x707mm", 500, 707),
      in_millimetres("b1", "iso_b1_707x1000mm", 707, 1000),
      roll("roll-17", 17),
      roll("roll-24", 24),
      roll("roll-36", 36),
      roll("roll-44", 44)};
  return sizes;
}

bool is_size(const SheetSize& sheet, const PageSize& page) {
  return (sheet.width == page.width && sheet.height == page.height) ||
         (sheet.width == page.height && sheet.height == page.width);
}

bool is_listed(const PageSize& page) {
  const auto& sizes = sheet_sizes();
  return std::any_of(sizes.begin(), sizes.end(),
                     [&](const SheetSize& size) { return is_size(size, page); });
}

bool is_sheet(const PageSize& page) {
  return std::min(page.width, page.height) >= smallest_side &&
         std::max(page.width, page.height) <= largest_side;
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

// "329 x 483 mm": the unit named last holds for both.
tl::expected<PageSize, std::string> parse_sides(std::string first, const std::string& second,
                                                Unit unit) {
  const std::size_t unit_at = second.find_last_of("0123456789. ") + 1;
  if (first.find_first_not_of("0123456789./- ") == std::string::npos) {
    first += second.substr(unit_at);
  }
  const auto width = parse_length(first, unit), height = parse_length(second, unit);
  if (!width) return tl::unexpected(width.error());
  if (!height) return tl::unexpected(height.error());
  return PageSize{*width, *height};
}

tl::expected<SheetSize, std::string> parse_custom(const std::string& text, std::size_t cross,
                                                  Unit unit) {
  const std::string first = text.substr(0, cross), second = text.substr(cross + 1);
  const auto said = parse_sides(first, second, unit);
  if (!said) return tl::unexpected(said.error());
  if (is_sheet(*said)) return SheetSize{text, said->width, said->height, false};
  std::optional<PageSize> found;
  if (text.find_first_not_of("0123456789./- x") == std::string::npos) {
    for (const Unit other : {Unit::inch, Unit::millimetre, Unit::centimetre}) {
      const auto read = parse_sides(first, second, other);
      if (read && is_sheet(*read) && (!found || (is_listed(*read) && !is_listed(*found)))) {
        found = *read;
      }
    }
  }
  if (found) return SheetSize{text, found->width, found->height, false};
  return tl::unexpected("found a sheet of " + text + "; expected sides of 3 in to 200 in");
}

// "24in", '24"': a number alone could be anything.
bool names_unit(const std::string& text) {
  return text.find_first_not_of("0123456789./- ") != std::string::npos;
}

tl::expected<SheetSize, std::string> parse_roll(const std::string& text, Unit unit) {
  const auto width = parse_length(text, unit);
  if (!width) return tl::unexpected(width.error());
  if (*width < narrowest_roll || *width > widest_roll) {
    return tl::unexpected("found a roll of " + text + "; expected a width of 8 in to 72 in");
  }
  return roll_of(text, *width);
}

std::string decimal(Length length, bool inch) {
  char text[32];
  std::snprintf(text, sizeof text, "%.4f", inch ? to_inches(length) : to_millimetres(length));
  std::string shown = text;
  shown.erase(shown.find_last_not_of('0') + 1);
  if (shown.back() == '.') shown.pop_back();
  return shown;
}

}  // namespace

const std::vector<SheetSize>& sheet_sizes() {
  static const std::vector<SheetSize> sizes = [] {
    std::vector<SheetSize> list;
    for (const Listed& listed : listed_sizes()) list.push_back(listed.size);
    return list;
  }();
  return sizes;
}

std::string media_name(const PageSize& page) {
  for (const Listed& listed : listed_sizes()) {
    if (is_size(listed.size, page)) return listed.media;
  }
  const Length wide = std::min(page.width, page.height), high = std::max(page.width, page.height);
  const bool inch = wide.ticks() % sixty_fourths(1).ticks() == 0;
  const std::string size = decimal(wide, inch) + "x" + decimal(high, inch) + (inch ? "in" : "mm");
  return "custom_" + size + "_" + size;
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
  if (std::isdigit(static_cast<unsigned char>(name[0])) && names_unit(name)) {
    return parse_roll(name, unit);
  }
  const std::string_view near = near_name(name, names);
  return tl::unexpected("found the paper \"" + std::string(text) + "\"; expected " +
                        (near.empty()
                             ? known_names() + ", a size such as 13 x 19 in, or a roll such as 30in"
                             : "\"" + std::string(near) +
                                   "\", a size such as 13 x 19 in, or a roll "
                                   "such as 30in"));
}

}  // namespace mullion::paper
