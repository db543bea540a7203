#include <filesystem>

#include "engine/file/file.h"
#include "engine/job/usual.h"
#include "engine/picture/resolution.h"
#include "engine/starting/starting.h"

namespace mullion::starting {

Scale usual_scale(Unit unit) {
  return {unit, usual_for(unit).increment};
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
