#include "render/picture/photograph.h"

#include <cairo.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

#include "engine/file/file.h"
#include "engine/picture/jpeg_segments.h"
#include "render/picture/pixels.h"

namespace mullion::picture {
namespace {

using Surface = std::unique_ptr<cairo_surface_t, decltype(&cairo_surface_destroy)>;
using MaybeSurface = tl::expected<Surface, std::string>;

constexpr int jpeg_quality = 88;

Surface image_surface(bool opaque, PixelSize size) {
  return {cairo_image_surface_create(opaque ? CAIRO_FORMAT_RGB24 : CAIRO_FORMAT_ARGB32, size.width,
                                     size.height),
          cairo_surface_destroy};
}

Surface surface_of(const Pixels& pixels) {
  Surface surface = image_surface(pixels.opaque, pixels.size);
  cairo_surface_flush(surface.get());
  const auto width = static_cast<std::size_t>(pixels.size.width);
  for (int y = 0; y < pixels.size.height; ++y) {
    const auto* from = pixels.argb.data() + static_cast<std::size_t>(y) * width;
    unsigned char* to = cairo_image_surface_get_data(surface.get()) +
                        std::ptrdiff_t{y} * cairo_image_surface_get_stride(surface.get());
    std::copy(from, from + width, reinterpret_cast<std::uint32_t*>(to));
  }
  cairo_surface_mark_dirty(surface.get());
  return surface;
}

void attach(const Surface& surface, const char* type, std::shared_ptr<const std::string> bytes) {
  auto* kept = new std::shared_ptr<const std::string>(std::move(bytes));
  cairo_surface_set_mime_data(
      surface.get(), type, reinterpret_cast<const unsigned char*>((*kept)->data()), (*kept)->size(),
      [](void* data) { delete static_cast<std::shared_ptr<const std::string>*>(data); }, kept);
}

void attach_jpeg(const Surface& surface, std::shared_ptr<const std::string> jpeg) {
  attach(surface, CAIRO_MIME_TYPE_JPEG, std::move(jpeg));
}

// Cairo passes the attached JPEG on, stretched to the surface, and never looks at the surface's
// pixels: there need be no more of them than keep the picture's proportion, which an SVG image does
// not give up.
Surface unchanged_jpeg(paper::KeptJpegs* jpegs, const Photograph& photograph) {
  const ImageHeader& header = photograph.header;
  const bool pdf = jpegs != nullptr;
  const int common =
      pdf ? std::max(header.width, header.height) : std::gcd(header.width, header.height);
  Surface surface = image_surface(
      true, {std::max(1, header.width / common), std::max(1, header.height / common)});
  if (pdf) {
    const auto stand_in = std::make_shared<const std::string>(
        jpegs->stand_in(photograph.bytes, header.width, header.height, header.components));
    attach_jpeg(surface, stand_in);
    attach(surface, CAIRO_MIME_TYPE_UNIQUE_ID, stand_in);  // drawn twice, it is in the file once
  } else {
    attach_jpeg(surface, header.orientation == 1 ? photograph.bytes
                                                 : std::make_shared<const std::string>(
                                                       without_exif(*photograph.bytes)));
  }
  return surface;
}

tl::expected<Pixels, std::string> decode(const Photograph& photograph, PixelSize wanted) {
  if (photograph.header.kind == ImageKind::jpeg) return decode_jpeg(*photograph.bytes, wanted);
  return decode_png(*photograph.bytes, photograph.header, wanted);
}

MaybeSurface surface_for(paper::Canvas& canvas, paper::Format format, const Photograph& photograph,
                         PixelSize wanted, bool keep_jpeg) {
  const bool jpeg = photograph.header.kind == ImageKind::jpeg;
  const bool page_holds_jpeg = format == paper::Format::pdf ||
                               (format == paper::Format::svg && photograph.header.components != 4);
  if (jpeg && page_holds_jpeg && keep_jpeg) return unchanged_jpeg(canvas.jpegs(), photograph);
  auto pixels = decode(photograph, wanted);
  if (!pixels) return tl::unexpected(std::move(pixels.error()));
  const int factor = std::max(1, std::min(pixels->size.width / std::max(1, wanted.width),
                                          pixels->size.height / std::max(1, wanted.height)));
  if (factor > 1) *pixels = reduced(*pixels, factor);
  Surface surface = surface_of(*pixels);
  if (format != paper::Format::png && pixels->opaque && (jpeg || !keep_jpeg)) {
    attach_jpeg(surface, std::make_shared<const std::string>(encode_jpeg(*pixels, jpeg_quality)));
  }
  return surface;
}

// From stored pixels of a picture of w x h to shown ones (Exif 2.3, table 6).
cairo_matrix_t shown_from_stored(int orientation, double w, double h) {
  const std::array<cairo_matrix_t, 8> matrices = {{{1, 0, 0, 1, 0, 0},
                                                   {-1, 0, 0, 1, w, 0},
                                                   {-1, 0, 0, -1, w, h},
                                                   {1, 0, 0, -1, 0, h},
                                                   {0, 1, 1, 0, 0, 0},
                                                   {0, 1, -1, 0, h, 0},
                                                   {0, -1, -1, 0, h, w},
                                                   {0, -1, 1, 0, 0, w}}};
  return matrices[static_cast<std::size_t>(orientation - 1)];
}

// Where the whole picture lies when it fills the box, in points.
paper::Box uncropped(const ImageHeader& header, const paper::Box& box, const Crop& crop) {
  const double w = header.shown_width(), h = header.shown_height();
  const double scale = std::max(box.width / w, box.height / h) * std::max(1.0, crop.zoom);
  return {box.x - (w * scale - box.width) * (1 + crop.pan_x) / 2,
          box.y - (h * scale - box.height) * (1 + crop.pan_y) / 2, w * scale, h * scale};
}

PixelSize stored_pixels(const ImageHeader& header, const paper::Box& whole, double dpi) {
  const int across = static_cast<int>(std::ceil(whole.width * dpi / 72));
  const int down = static_cast<int>(std::ceil(whole.height * dpi / 72));
  return header.orientation >= 5 ? PixelSize{down, across} : PixelSize{across, down};
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
  const auto pixels = decode(photograph, few);
  return pixels ? std::string() : pixels.error();
}

tl::expected<void, std::string> draw(paper::Canvas& canvas, paper::Format format,
                                     const Photograph& photograph, const paper::Box& box,
                                     const Crop& crop, const Resolution& resolution) {
  const ImageHeader& header = photograph.header;
  const paper::Box whole = uncropped(header, box, crop);
  const auto surface =
      surface_for(canvas, format, photograph,
                  stored_pixels(header, whole, resolution.dots_per_inch), resolution.keep_jpeg);
  if (!surface) return tl::unexpected(surface.error());
  const double w = cairo_image_surface_get_width(surface->get());
  const double h = cairo_image_surface_get_height(surface->get());
  const bool turned = header.orientation >= 5;
  canvas.clip(box);
  cairo_t* context = canvas.context();
  cairo_translate(context, whole.x, whole.y);
  cairo_scale(context, whole.width / (turned ? h : w), whole.height / (turned ? w : h));
  const cairo_matrix_t matrix = shown_from_stored(header.orientation, w, h);
  cairo_transform(context, &matrix);
  cairo_set_source_surface(context, surface->get(), 0, 0);
  cairo_pattern_set_filter(cairo_get_source(context), CAIRO_FILTER_GOOD);
  cairo_paint(context);
  canvas.end_clip();
  return {};
}

}  // namespace mullion::picture
