#include "engine/picture/header.h"
#include "engine/picture/resolution.h"
#include "tests/fuzz/fuzz.h"

// A header that was read keeps within the limits, its picture has a size where it states one, and a
// JPEG without its Exif data is still one.
int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace mullion;
  const std::string_view bytes = fuzz::text_of(data, size);
  const auto header = read_image_header(bytes);
  const auto pitch = pixel_pitch(bytes);
  if (!header) {
    fuzz::must(!header.error().empty());
    return 0;
  }
  fuzz::must(header->width > 0 && header->height > 0);
  fuzz::must(std::int64_t{header->width} * header->height <= most_jpeg_pixels);
  fuzz::must(1 <= header->orientation && header->orientation <= 8);
  if (pitch) {
    const PictureSize shown = picture_size(*header, *pitch, sixty_fourths(4));
    fuzz::must(shown.width >= sixty_fourths(4) && shown.height >= sixty_fourths(4));
  }
  if (header->kind != ImageKind::jpeg) return 0;
  const auto plain = read_image_header(without_exif(bytes));
  fuzz::must(plain && plain->orientation == 1 && plain->width == header->width);
  return 0;
}
