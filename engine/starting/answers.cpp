#include <algorithm>
#include <filesystem>

#include "engine/file/file.h"
#include "engine/picture/resolution.h"
#include "engine/starting/starting.h"

namespace mullion::starting {
namespace {

// Where "10 x 8" parts into two lengths, and how long the sign is.
struct Sign {
  std::size_t at, size;
};
std::optional<Sign> sign_of(std::string_view text) {
  constexpr std::string_view by = " by ", times = "\xC3\x97";
  if (const auto at = text.find(by); at != text.npos) return Sign{at, by.size()};
  if (const auto at = text.find(times); at != text.npos) return Sign{at, times.size()};
  if (const auto at = text.find_first_of("xX*"); at != text.npos) return Sign{at, 1};
  return std::nullopt;
}

}  // namespace

Length usual_border(Unit unit) {
  return unit == Unit::inch ? inches(3) : millimetres(75);
}

Length usual_gap(Unit unit) {
  return unit == Unit::inch ? inches(1) : millimetres(25);
}

Scale usual_scale(Unit unit) {
  return {unit, unit == Unit::inch ? sixty_fourths(4) : millimetres(1)};
}

tl::expected<Size, std::string> parse_size(std::string_view text, Unit unit) {
  const auto sign = sign_of(text);
  if (!sign) {
    return tl::unexpected("found \"" + std::string(text) +
                          "\"; expected width x height, such as 10 x 8");
  }
  const auto width = parse_length(text.substr(0, sign->at), unit);
  if (!width) return tl::unexpected(width.error());
  const auto height = parse_length(text.substr(sign->at + sign->size), unit);
  if (!height) return tl::unexpected(height.error());
  if (std::min(*width, *height) <= Length()) {
    return tl::unexpected("found \"" + std::string(text) + "\"; expected sizes above zero");
  }
  return Size{*width, *height};
}

tl::expected<StartingPicture, std::string> picture_of(const std::string& path,
                                                      const std::string& image, Unit unit) {
  constexpr std::int64_t assumed = 300;  // per inch: common practice for prints, no source
  const auto bytes = read_file(path, largest_image_file);
  if (!bytes) return tl::unexpected(bytes.error());
  const auto header = read_image_header(*bytes);
  if (!header) return tl::unexpected(path + ": " + header.error());
  const auto stated = pixel_pitch(*bytes);
  const Scale scale = usual_scale(unit);
  const PictureSize size =
      picture_size(*header, stated.value_or(pixels_per_inch(assumed)), scale.increment);
  const std::string pixels = std::to_string(header->shown_width()) + " x " +
                             std::to_string(header->shown_height()) + " pixels";
  return StartingPicture{std::filesystem::path(path).stem().string(), size.width, size.height,
                         image,
                         stated ? "from the file, " + pixels + " at its own resolution"
                                : pixels + " at 300 per inch, as the file states no resolution"};
}

}  // namespace mullion::starting
