#include "render/paper/image.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace mullion::paper {
namespace {

using picture::Photograph;
using picture::PixelSize;

// From the stored picture's unit square to the shown one's (Exif 2.3, table 6).
Transform shown_from_stored(int orientation) {
  static constexpr std::array<Transform, 8> maps = {{{1, 0, 0, 1, 0, 0},
                                                     {-1, 0, 0, 1, 1, 0},
                                                     {-1, 0, 0, -1, 1, 1},
                                                     {1, 0, 0, -1, 0, 1},
                                                     {0, 1, 1, 0, 0, 0},
                                                     {0, 1, -1, 0, 1, 0},
                                                     {0, -1, -1, 0, 1, 1},
                                                     {0, -1, 1, 0, 0, 1}}};
  return maps[static_cast<std::size_t>(orientation - 1)];
}

PixelSize stored_pixels(const ImageHeader& header, const Box& whole, double dpi) {
  const int across = static_cast<int>(std::ceil(whole.width * dpi / 72));
  const int down = static_cast<int>(std::ceil(whole.height * dpi / 72));
  return header.orientation >= 5 ? PixelSize{down, across} : PixelSize{across, down};
}

bool holds_jpegs(Format format, const ImageHeader& header) {
  return format == Format::pdf || (format == Format::svg && header.components != 4);
}

}  // namespace

Box uncropped(const ImageHeader& header, const Box& box, const picture::Crop& crop) {
  const double w = header.shown_width(), h = header.shown_height();
  const double scale = std::max(box.width / w, box.height / h) * std::max(1.0, crop.zoom);
  return {box.x - (w * scale - box.width) * (1 + crop.pan_x) / 2,
          box.y - (h * scale - box.height) * (1 + crop.pan_y) / 2, w * scale, h * scale};
}

tl::expected<void, std::string> draw_photograph(Drawing& drawing, Format format,
                                                const Photograph& photograph, const Box& box,
                                                const picture::Crop& crop,
                                                const picture::Resolution& resolution) {
  const ImageHeader& header = photograph.header;
  const Box whole = uncropped(header, box, crop);
  const bool jpeg = header.kind == ImageKind::jpeg;
  Image image;
  image.placed = then(shown_from_stored(header.orientation),
                      {whole.width, 0, 0, whole.height, whole.x, whole.y});
  if (jpeg && resolution.keep_jpeg && holds_jpegs(format, header)) {
    image.content = photograph;
  } else {
    auto pixels =
        picture::decode(photograph, stored_pixels(header, whole, resolution.dots_per_inch));
    if (!pixels) return tl::unexpected(std::move(pixels.error()));
    const bool lossy = pixels->opaque && (jpeg || !resolution.keep_jpeg);
    image.content =
        DecodedPicture{std::make_shared<const picture::Pixels>(std::move(*pixels)), lossy};
  }
  Drawing shown;
  shown.image(std::move(image));
  drawing.clipped(std::move(shown), box);
  return {};
}

}  // namespace mullion::paper
