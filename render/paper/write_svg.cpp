#include <cairo.h>

#include <cmath>
#include <cstdio>

#include "render/paper/drawing.h"
#include "render/paper/setting.h"

namespace mullion::paper {
namespace {

// Four decimals of a millimetre, without trailing zeros; the same in every locale.
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

constexpr double mm_per_point = 25.4 / 72;

std::string pair(Spot spot) {
  return number(spot.x * mm_per_point) + "," + number(spot.y * mm_per_point);
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

std::string hex(const Colour& colour) {
  char text[8];
  std::snprintf(text, sizeof text, "#%02x%02x%02x", colour.red, colour.green, colour.blue);
  return text;
}

std::string data_of(const Path& path) {
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

std::string matrix_of(const Transform& map) {
  char text[160];
  if (map.xx == 1 && map.yy == 1 && map.xy == 0 && map.yx == 0) {
    return "translate(" + number(map.x0 * mm_per_point) + " " + number(map.y0 * mm_per_point) + ")";
  }
  std::snprintf(text, sizeof text, "matrix(%.9g %.9g %.9g %.9g ", map.xx, map.yx, map.xy, map.yy);
  return text + number(map.x0 * mm_per_point) + " " + number(map.y0 * mm_per_point) + ")";
}

// The letters as outlines, in mm from the text's upper left corner.
Path outlines_of(const Text& text) {
  const Text::Setting& setting = text.setting();
  cairo_surface_t* surface = cairo_recording_surface_create(CAIRO_CONTENT_ALPHA, nullptr);
  cairo_t* cairo = cairo_create(surface);
  pango_cairo_layout_path(cairo, setting.layout.get());
  cairo_path_t* outlines = cairo_copy_path(cairo);
  Path path;
  const auto at = [&](const cairo_path_data_t& data) {
    return Spot{data.point.x * setting.scale, data.point.y * setting.scale};
  };
  for (int i = 0; i < outlines->num_data; i += outlines->data[i].header.length) {
    const cairo_path_data_t* data = outlines->data + i;
    switch (data->header.type) {
      case CAIRO_PATH_MOVE_TO:
        path.move_to(at(data[1]));
        break;
      case CAIRO_PATH_LINE_TO:
        path.line_to(at(data[1]));
        break;
      case CAIRO_PATH_CURVE_TO:
        path.curve_to(at(data[1]), at(data[2]), at(data[3]));
        break;
      case CAIRO_PATH_CLOSE_PATH:
        path.close();
        break;
    }
  }
  cairo_path_destroy(outlines);
  cairo_destroy(cairo);
  cairo_surface_destroy(surface);
  return path;
}

class SvgWriter {
 public:
  std::string svg;

  void operator()(const Stroke& stroke) {
    const Pen& pen = stroke.pen;
    svg += "<path fill=\"none\" stroke=\"" + hex(pen.colour) + "\" stroke-width=\"" +
           number(pen.width * mm_per_point) + "\"";
    if (!pen.dashes.empty()) {
      svg += " stroke-dasharray=\"";
      for (std::size_t i = 0; i < pen.dashes.size(); ++i)
        svg += (i ? " " : "") + number(pen.dashes[i] * mm_per_point);
      svg += "\"";
    }
    if (pen.opacity < 1) svg += " stroke-opacity=\"" + number(pen.opacity) + "\"";
    svg += " d=\"" + data_of(stroke.path) + "\"/>\n";
  }

  void operator()(const Area& area) {
    svg += "<path fill=\"" + hex(area.fill.colour) + "\" fill-rule=\"evenodd\"";
    if (area.fill.opacity < 1) svg += " fill-opacity=\"" + number(area.fill.opacity) + "\"";
    svg += " d=\"" + data_of(area.path) + "\"/>\n";
  }

  void operator()(const Label& label) {
    const Path letters = transformed(outlines_of(label.text), label.placed);
    svg += "<path aria-label=\"" + escaped(label.text.content()) + "\" fill=\"" +
           hex(label.text.style().colour) + "\" d=\"" + data_of(letters) + "\"/>\n";
  }

  void operator()(const Group& group) {
    std::string attributes;
    if (!group.id.empty()) attributes += " id=\"" + escaped(group.id) + "\"";
    if (group.clip) attributes += " clip-path=\"url(#" + add_clip(*group.clip) + ")\"";
    svg += "<g" + attributes + ">\n";
    if (!group.title.empty()) svg += "<title>" + escaped(group.title) + "</title>\n";
    const bool moved = group.placed.moves();
    if (moved) svg += "<g transform=\"" + matrix_of(group.placed) + "\">\n";
    for (const Item& item : group.drawing->items()) std::visit(*this, item);
    svg += moved ? "</g>\n</g>\n" : "</g>\n";
  }

 private:
  std::string add_clip(const Box& box) {
    std::string id = "clip-" + std::to_string(++clips_);
    svg += "<clipPath id=\"" + id + "\"><path d=\"" + data_of(rectangle(box)) + "\"/></clipPath>\n";
    return id;
  }

  int clips_ = 0;
};

}  // namespace

std::string write_svg(const Drawing& drawing, const PageSize& size, const std::string& title) {
  const std::string width = number(to_millimetres(size.width));
  const std::string height = number(to_millimetres(size.height));
  SvgWriter writer;
  writer.svg =
      "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
      "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"" +
      width + "mm\" height=\"" + height + "mm\" viewBox=\"0 0 " + width + " " + height + "\">\n";
  if (!title.empty()) writer.svg += "<title>" + escaped(title) + "</title>\n";
  for (const Item& item : drawing.items()) std::visit(writer, item);
  writer.svg += "</svg>\n";
  return std::move(writer.svg);
}

}  // namespace mullion::paper
