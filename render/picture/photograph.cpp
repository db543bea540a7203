#include "render/picture/photograph.h"

#include <algorithm>

#include "engine/file/file.h"
#include "engine/picture/jpeg_segments.h"

namespace mullion::picture {
namespace {

tl::expected<Pixels, std::string> decode_file(const Photograph& photograph, PixelSize wanted) {
  if (photograph.header.kind == ImageKind::jpeg) return decode_jpeg(*photograph.bytes, wanted);
  return decode_png(*photograph.bytes, photograph.header, wanted);
}

// A PDF takes a JPEG without a look at its pixels, and so nobody else would see its damage.
// Decoding is the only sure check; of a dozen large ones it takes longer than all the rest of a
// proof.
bool is_to_be_checked(const Photograph& photograph) {
  constexpr std::size_t quickly_decoded = 4 << 20;
  if (photograph.header.kind != ImageKind::jpeg) return false;
  if (photograph.bytes->size() <= quickly_decoded) return true;
  const auto segments = jpeg_segments(*photograph.bytes);
  return !segments || looks_damaged(*photograph.bytes, *segments);
}

}  // namespace

tl::expected<Photograph, std::string> open_photograph(const std::string& path) {
  auto bytes = read_file(path, largest_image_file);
  if (!bytes) return tl::unexpected(std::move(bytes.error()));
  const auto header = read_image_header(*bytes);
  if (!header) return tl::unexpected(path + ": " + header.error());
  Photograph photograph{*header, std::make_shared<const std::string>(std::move(*bytes))};
  if (is_to_be_checked(photograph)) {
    if (const std::string fault = fault_of(photograph); !fault.empty()) {
      return tl::unexpected(path + ": " + fault);
    }
  }
  return photograph;
}

std::string fault_of(const Photograph& photograph) {
  constexpr PixelSize few{64, 64};
  const auto pixels = decode_file(photograph, few);
  return pixels ? std::string() : pixels.error();
}

tl::expected<Pixels, std::string> decode(const Photograph& photograph, PixelSize wanted) {
  auto pixels = decode_file(photograph, wanted);
  if (!pixels) return pixels;
  const int factor = std::max(1, std::min(pixels->size.width / std::max(1, wanted.width),
                                          pixels->size.height / std::max(1, wanted.height)));
  if (factor > 1) *pixels = reduced(*pixels, factor);
  return pixels;
}

}  // namespace mullion::picture
