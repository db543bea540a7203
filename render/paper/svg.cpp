#include <array>
#include <cmath>
#include <cstdio>
#include <map>

#include "render/paper/document.h"

namespace mullion::paper {
namespace {

constexpr double mm_per_point = 25.4 / 72;
constexpr int svg_jpeg_quality = 88;  // of decoded pictures

// Four decimals, without trailing zeros; the same in every locale.
std::string number(double value) {
  const long long parts = std::llround(value * 10'000);
  const unsigned long long size = parts < 0 ? 0ULL - static_cast<unsigned long long>(parts)
                                            : static_cast<unsigned long long>(parts);
  std::string text = (parts < 0 ? "-" : "") + std::to_string(size / 10'000);
  if (size % 10'000 == 0) return text;
  char fraction[8];
  std::snprintf(fraction, sizeof fraction, ".%04llu", size % 10'000);
  text += fraction;
  while (text.back() == '0') text.pop_back();
  return text;
}

std::string escaped(const std::string& text) {
  std::string result;
  for (const char c : text) {
    switch (c) {
      case '&':
        result += "&amp;";
        break;
      case '<':
        result += "&lt;";
        break;
      case '>':
        result += "&gt;";
        break;
      case '"':
        result += "&quot;";
        break;
      case '\n':
        result += "&#10;";
        break;
      default:
        result += static_cast<unsigned char>(c) < 0x20 ? ' ' : c;
    }
  }
  return result;
}

// RFC 4648, 4.
std::string base64(std::string_view bytes) {
  constexpr std::string_view digits =
      "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
  std::string out;
  out.reserve((bytes.size() + 2) / 3 * 4);
  const auto at = [&](std::size_t i) -> unsigned {
    return i < bytes.size() ? static_cast<unsigned char>(bytes[i]) : 0;
  };
  for (std::size_t i = 0; i < bytes.size(); i += 3) {
    const unsigned word = at(i) << 16 | at(i + 1) << 8 | at(i + 2);
    out += digits[word >> 18];
    out += digits[word >> 12 & 63];
    out += i + 1 < bytes.size() ? digits[word >> 6 & 63] : '=';
    out += i + 2 < bytes.size() ? digits[word & 63] : '=';
  }
  return out;
}

class SvgWriter {
 public:
  // `unit`: how many of the SVG's units make a point.
  SvgWriter(double unit, std::string prefix) : unit_(unit), prefix_(std::move(prefix)) {}

  std::string svg;
  bool has_links() const { return !images_.empty(); }

  void add(const Drawing& drawing) {
    for (const Item& item : drawing.items()) std::visit(*this, item);
  }

  void operator()(const Stroke& stroke) {
    const Pen& pen = stroke.pen;
    svg += "<path fill=\"none\" stroke=\"" + format_colour(pen.colour) + "\" stroke-width=\"" +
           size(pen.width) + "\"";
    if (!pen.dashes.empty()) {
      svg += " stroke-dasharray=\"";
      for (std::size_t i = 0; i < pen.dashes.size(); ++i) {
        svg += (i ? " " : "") + size(pen.dashes[i]);
      }
      svg += "\"";
    }
    if (pen.opacity < 1) svg += " stroke-opacity=\"" + number(pen.opacity) + "\"";
    svg += " d=\"" + data_of(stroke.path) + "\"/>\n";
  }

  void operator()(const Area& area) {
    const std::string paint = std::visit([&](const auto& p) { return paint_of(p); }, area.paint);
    svg += "<path " + paint + " fill-rule=\"evenodd\" d=\"" + data_of(area.path) + "\"/>\n";
  }

  void operator()(const Label& label) {
    const Path letters = transformed(outlines_of(label.text), label.placed);
    svg += "<path aria-label=\"" + escaped(label.text.content()) + "\" fill=\"" +
           format_colour(label.text.style().colour) + "\" d=\"" + data_of(letters) + "\"/>\n";
  }

  void operator()(const Image& image) {
    std::visit([&](const auto& content) { add_image(content, image.placed); }, image.content);
  }

  void operator()(const Group& group) {
    std::string attributes;
    if (!group.id.empty()) attributes += " id=\"" + escaped(prefix_ + group.id) + "\"";
    if (group.clip) attributes += " clip-path=\"url(#" + add_clip(*group.clip) + ")\"";
    svg += "<g" + attributes + ">\n";
    if (!group.title.empty()) svg += "<title>" + escaped(group.title) + "</title>\n";
    const bool moved = group.placed.moves();
    if (moved) svg += "<g transform=\"" + matrix_of(group.placed) + "\">\n";
    add(*group.drawing);
    svg += moved ? "</g>\n</g>\n" : "</g>\n";
  }

 private:
  std::string size(double points) const { return number(points * unit_); }
  std::string pair(Spot spot) const { return size(spot.x) + "," + size(spot.y); }

  std::string data_of(const Path& path) const {
    std::string data;
    for (const Path::Step& step : path.steps()) {
      switch (step.kind) {
        case Path::Kind::move:
          data += "M" + pair(step.to);
          break;
        case Path::Kind::line:
          data += "L" + pair(step.to);
          break;
        case Path::Kind::curve:
          data += "C" + pair(step.control1) + " " + pair(step.control2) + " " + pair(step.to);
          break;
        case Path::Kind::close:
          data += "Z";
          break;
      }
    }
    return data;
  }

  std::string matrix_of(const Transform& map) const {
    char text[160];
    if (map.xx == 1 && map.yy == 1 && map.xy == 0 && map.yx == 0) {
      return "translate(" + size(map.x0) + " " + size(map.y0) + ")";
    }
    std::snprintf(text, sizeof text, "matrix(%.9g %.9g %.9g %.9g ", map.xx, map.yx, map.xy, map.yy);
    return text + size(map.x0) + " " + size(map.y0) + ")";
  }

  std::string new_id(const char* kind) {
    return prefix_ + kind + "-" + std::to_string(++numbers_[kind]);
  }

  std::string add_clip(const std::variant<Box, Path>& clip) {
    const Box* box = std::get_if<Box>(&clip);
    const std::string id = new_id("clip");
    svg += "<clipPath id=\"" + id + "\"><path clip-rule=\"evenodd\" d=\"" +
           data_of(box != nullptr ? rectangle(*box) : std::get<Path>(clip)) + "\"/></clipPath>\n";
    return id;
  }

  std::string paint_of(const Fill& fill) const {
    std::string paint = "fill=\"" + format_colour(fill.colour) + "\"";
    if (fill.opacity < 1) paint += " fill-opacity=\"" + number(fill.opacity) + "\"";
    return paint;
  }

  std::string paint_of(const Shade& shade) {
    const std::string id = new_id("shade");
    svg += "<linearGradient id=\"" + id + "\" gradientUnits=\"userSpaceOnUse\" x1=\"" +
           size(shade.from.x) + "\" y1=\"" + size(shade.from.y) + "\" x2=\"" + size(shade.to.x) +
           "\" y2=\"" + size(shade.to.y) + "\">";
    for (const Shade::Stop& stop : shade.stops) {
      svg += "<stop offset=\"" + number(stop.at) + "\" stop-color=\"" + format_colour(stop.colour) +
             "\"";
      if (stop.opacity < 1) svg += " stop-opacity=\"" + number(stop.opacity) + "\"";
      svg += "/>";
    }
    svg += "</linearGradient>\n";
    return "fill=\"url(#" + id + ")\"";
  }

  void add_image(const picture::Photograph& jpeg, const Transform& placed) {
    if (jpeg.header.components != 4) {
      // Exif could turn it once more.
      return add_data(jpeg.bytes.get(), {jpeg.header.width, jpeg.header.height}, placed,
                      [&] { return "image/jpeg;base64," + base64(without_exif(*jpeg.bytes)); });
    }
    // Browsers do not agree about the colours of CMYK.
    auto pixels = picture::decode(jpeg, {jpeg.header.width, jpeg.header.height});
    if (!pixels) throw std::runtime_error(pixels.error());
    add_image({std::make_shared<const picture::Pixels>(std::move(*pixels)), true}, placed);
  }

  void add_image(const DecodedPicture& decoded, const Transform& placed) {
    kept_.push_back(decoded.pixels);
    add_data(decoded.pixels.get(), decoded.pixels->size, placed, [&] {
      return decoded.lossy ? "image/jpeg;base64," +
                                 base64(picture::encode_jpeg(*decoded.pixels, svg_jpeg_quality))
                           : "image/png;base64," + base64(picture::encode_png(*decoded.pixels));
    });
  }

  // Data that are shown again are referred to.
  template <class Data>
  void add_data(const void* source, picture::PixelSize pixels, const Transform& placed,
                const Data& data) {
    const Transform from_pixels{1.0 / pixels.width, 0, 0, 1.0 / pixels.height, 0, 0};
    Transform map = then(from_pixels, placed);
    for (double* part : {&map.xx, &map.yx, &map.xy, &map.yy}) *part *= unit_;
    svg += "<g transform=\"" + matrix_of(map) + "\">";
    const auto [known, is_new] = images_.try_emplace(source);
    if (is_new) {
      known->second = new_id("image");
      svg += "<image id=\"" + known->second + "\" width=\"" + std::to_string(pixels.width) +
             "\" height=\"" + std::to_string(pixels.height) +
             "\" preserveAspectRatio=\"none\" xlink:href=\"data:" + data() + "\"/>";
    } else {
      svg += "<use xlink:href=\"#" + known->second + "\"/>";
    }
    svg += "</g>\n";
  }

  double unit_;
  std::string prefix_;
  std::map<std::string, int> numbers_;             // of ids, by kind
  std::map<const void*, std::string> images_;      // ids
  std::vector<std::shared_ptr<const void>> kept_;  // so that none takes another's address
};

}  // namespace

std::string write_svg(const Drawing& drawing, const PageSize& size, const std::string& title) {
  const std::string width = number(to_millimetres(size.width));
  const std::string height = number(to_millimetres(size.height));
  SvgWriter writer(mm_per_point, "");
  writer.add(drawing);
  std::string svg =
      "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\"";
  if (writer.has_links()) svg += " xmlns:xlink=\"http://www.w3.org/1999/xlink\"";
  svg += " width=\"" + width + "mm\" height=\"" + height + "mm\" viewBox=\"0 0 " + width + " " +
         height + "\">\n";
  if (!title.empty()) svg += "<title>" + escaped(title) + "</title>\n";
  return svg + writer.svg + "</svg>\n";
}

std::string svg_elements(const Drawing& drawing, const std::string& prefix) {
  SvgWriter writer(1, prefix);
  writer.add(drawing);
  return std::move(writer.svg);
}

}  // namespace mullion::paper
