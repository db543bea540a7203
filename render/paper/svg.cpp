#include <array>
#include <cmath>
#include <cstdio>
#include <map>
#include <optional>

#include "render/paper/document.h"

namespace mullion::paper {
namespace {

constexpr double mm_per_point = 25.4 / 72;
constexpr int svg_jpeg_quality = 88;  // of decoded pictures

constexpr int finest_parts = 10'000;

// To so many parts of one, without trailing zeros; the same in every locale.
std::string number(double value, int parts_of_one = finest_parts) {
  const long long parts = std::llround(value * parts_of_one) * (finest_parts / parts_of_one);
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

// By how much the path is moved from the other one; nothing where it is not the same otherwise.
std::optional<Spot> moved_from(const Path& other, const Path& path) {
  constexpr double same = 1e-9;
  const auto& a = other.steps();
  const auto& b = path.steps();
  if (a.empty() || a.size() != b.size()) return std::nullopt;
  const Spot by{b[0].to.x - a[0].to.x, b[0].to.y - a[0].to.y};
  const auto is_moved = [&](Spot from, Spot to) {
    return std::abs(to.x - from.x - by.x) < same && std::abs(to.y - from.y - by.y) < same;
  };
  for (std::size_t i = 0; i < a.size(); ++i) {
    const bool curve = a[i].kind == Path::Kind::curve, close = a[i].kind == Path::Kind::close;
    if (a[i].kind != b[i].kind || (!close && !is_moved(a[i].to, b[i].to))) return std::nullopt;
    if (curve &&
        !(is_moved(a[i].control1, b[i].control1) && is_moved(a[i].control2, b[i].control2))) {
      return std::nullopt;
    }
  }
  return by;
}

bool differ_in_width_alone(const Pen& a, Pen b) {
  b.width = a.width;
  return a == b;
}

// How an SVG is written.
struct Manner {
  double unit = 1;                  // so many of its units make a point
  int parts_of_one = finest_parts;  // to which numbers are rounded
  bool shares = false;  // strokes that are the same but for place and width have one path
  std::string prefix;   // of ids
};

class SvgWriter {
 public:
  explicit SvgWriter(Manner manner) : manner_(std::move(manner)) {}

  std::string svg;
  bool has_links() const { return !images_.empty(); }

  void add(const Drawing& drawing) {
    const std::vector<Item>& items = drawing.items();
    for (std::size_t i = 0; i < items.size();) {
      const std::size_t run = manner_.shares ? alike_from(items, i) : 1;
      if (run > 1) {
        add_alike(items, i, run);
      } else {
        std::visit(*this, items[i]);
      }
      i += run;
    }
  }

  void operator()(const Stroke& stroke) {
    const Pen& pen = stroke.pen;
    svg += "<path fill=\"none\" stroke=\"" + format_colour(pen.colour) + "\" stroke-width=\"" +
           size(pen.width) + "\"" + manner_of(pen) + " d=\"" + data_of(stroke.path) + "\"/>\n";
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
    if (!group.id.empty()) attributes += " id=\"" + escaped(manner_.prefix + group.id) + "\"";
    if (group.clip) attributes += " clip-path=\"url(#" + add_clip(*group.clip) + ")\"";
    svg += "<g" + attributes + ">\n";
    if (!group.title.empty()) svg += "<title>" + escaped(group.title) + "</title>\n";
    const bool moved = group.placed.moves();
    if (moved) svg += "<g transform=\"" + matrix_of(group.placed) + "\">\n";
    add(*group.drawing);
    svg += moved ? "</g>\n</g>\n" : "</g>\n";
  }

 private:
  std::string size(double points) const {
    return number(points * manner_.unit, manner_.parts_of_one);
  }

  // All of a pen but its colour and width.
  std::string manner_of(const Pen& pen) const {
    std::string out;
    for (std::size_t i = 0; i < pen.dashes.size(); ++i) {
      out += (i == 0 ? " stroke-dasharray=\"" : " ") + size(pen.dashes[i]);
    }
    if (!pen.dashes.empty()) out += "\"";
    if (pen.opacity < 1) out += " stroke-opacity=\"" + number(pen.opacity) + "\"";
    return out;
  }

  // How many strokes from there are the same but for their places and widths.
  static std::size_t alike_from(const std::vector<Item>& items, std::size_t begin) {
    const auto* first = std::get_if<Stroke>(&items[begin]);
    std::size_t end = begin + 1;
    for (; first != nullptr && end < items.size(); ++end) {
      const auto* next = std::get_if<Stroke>(&items[end]);
      if (next == nullptr || !differ_in_width_alone(first->pen, next->pen) ||
          !moved_from(first->path, next->path)) {
        break;
      }
    }
    return end - begin;
  }

  void add_alike(const std::vector<Item>& items, std::size_t begin, std::size_t count) {
    const auto& first = std::get<Stroke>(items[begin]);
    const std::string id = new_id("path");
    svg += "<defs><path id=\"" + id + "\" d=\"" + data_of(first.path) +
           "\"/></defs>\n<g fill=\"none\" stroke=\"" + format_colour(first.pen.colour) + "\"" +
           manner_of(first.pen) + ">\n";
    for (std::size_t i = begin; i < begin + count; ++i) {
      const auto& stroke = std::get<Stroke>(items[i]);
      const Spot by = *moved_from(first.path, stroke.path);
      svg += "<use href=\"#" + id + "\" x=\"" + size(by.x) + "\" y=\"" + size(by.y) +
             "\" stroke-width=\"" + size(stroke.pen.width) + "\"/>\n";
    }
    svg += "</g>\n";
  }
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
    return manner_.prefix + kind + "-" + std::to_string(++numbers_[kind]);
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
    for (double* part : {&map.xx, &map.yx, &map.xy, &map.yy}) *part *= manner_.unit;
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

  Manner manner_;
  std::map<std::string, int> numbers_;             // of ids, by kind
  std::map<const void*, std::string> images_;      // ids
  std::vector<std::shared_ptr<const void>> kept_;  // so that none takes another's address
};

}  // namespace

std::string write_svg(const Drawing& drawing, const PageSize& size, const std::string& title) {
  const std::string width = number(to_millimetres(size.width));
  const std::string height = number(to_millimetres(size.height));
  SvgWriter writer({mm_per_point, finest_parts, false, {}});
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
  SvgWriter writer({1, 100, true, prefix});
  writer.add(drawing);
  return std::move(writer.svg);
}

}  // namespace mullion::paper
