#include "render/proof/front.h"

#include <algorithm>
#include <cstdio>

#include "engine/mat/rect.h"
#include "engine/xml/colour.h"
#include "render/paper/image.h"
#include "render/proof/markup.h"
#include "render/proof/piece.h"

namespace mullion::proof {
namespace {

constexpr double mm_per_point = 25.4 / 72;
constexpr double longest_in_front =
    680;  // points, as on the HTML page: pens and shadows keep theirs
constexpr Colour picture_ground{0xe3, 0xe0, 0xd9};  // in a small drawing
constexpr double wall_share = 0.05;                 // of the longer side, on each side

std::string short_number(double value) {
  char text[32];
  const int size = std::snprintf(text, sizeof text, "%.3f", value);
  std::string out(text, static_cast<std::size_t>(size));
  while (out.back() == '0') out.pop_back();
  if (out.back() == '.') out.pop_back();
  return out == "-0" ? "0" : out;
}

std::string mm(Length length) {
  return short_number(to_millimetres(length));
}

std::string box_attributes(const Rect& rect) {
  return " x=\"" + mm(rect.left) + "\" y=\"" + mm(rect.top) + "\" width=\"" + mm(rect.width()) +
         "\" height=\"" + mm(rect.height()) + "\"";
}

std::string path_of(const Outline& outline) {
  const auto at = [](Point point) { return mm(point.x) + "," + mm(point.y); };
  std::string out = "M" + at(outline.start);
  for (const Segment& segment : outline.segments) {
    out += segment.curved ? "C" + at(segment.control1) + " " + at(segment.control2) + " " : "L";
    out += at(segment.to);
  }
  return out + "Z";
}

class Front {
 public:
  Front(const Job& job, const Mat& mat, const FrontStyle& style)
      : job_(job), mat_(mat), style_(style), extent_(front_extent(job, mat)) {
    const double longest = std::max(extent_.width, extent_.height) / mm_per_point;
    view_.scale = std::min(1.0, longest_in_front / longest);
    view_.origin = {-extent_.left / mm_per_point * view_.scale,
                    -extent_.top / mm_per_point * view_.scale};
    for (MatLayer& layer : mat_.layers) {
      if (style.unknown_boards.contains(layer.number)) layer.board.colour = {0xff, 0xff, 0xff};
    }
  }

  std::string svg() {
    const std::string box = short_number(extent_.left) + " " + short_number(extent_.top) + " " +
                            short_number(extent_.width) + " " + short_number(extent_.height);
    out_ = "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"" + box + "\">\n<rect fill=\"" +
           format_colour(job_.wall) + "\" x=\"" + short_number(extent_.left) + "\" y=\"" +
           short_number(extent_.top) + "\" width=\"" + short_number(extent_.width) +
           "\" height=\"" + short_number(extent_.height) + "\"/>\n";
    const Photographs none;
    const Piece piece{&job_, &mat_, &none};
    take_shown_pictures();
    for (const PiecePart& part : parts_of(piece, {})) {
      add_part(piece, part);
      if (part.kind == PiecePart::Kind::pictures) add_pictures();
      if (part.kind == PiecePart::Kind::layer) add_hatching(part.layer);
    }
    return out_ + "</svg>\n";
  }

 private:
  void add_part(const Piece& piece, const PiecePart& part) {
    paper::Drawing drawing;
    if (!draw_part(drawing, paper::Format::svg, piece, part, view_, {})) return;
    const std::string text = paper::svg_elements(drawing, "m-" + std::to_string(++parts_) + "-");
    out_ += "<g transform=\"translate(" + short_number(extent_.left) + " " +
            short_number(extent_.top) + ") scale(" + std::to_string(mm_per_point / view_.scale) +
            ")\">" + text + "</g>\n";
  }

  // Those that are shown by their addresses need nothing in their place.
  void take_shown_pictures() {
    if (!style_.picture) return;
    std::erase_if(mat_.pictures, [this](const MatPicture& placed) {
      FrontPicture shown = style_.picture(placed.picture);
      if (shown.address.empty()) return false;
      shown_.emplace_back(placed, std::move(shown));
      return true;
    });
  }

  void add_pictures() {
    for (const auto& [placed, shown] : shown_) add_picture(placed, shown);
  }

  // The upright picture turned by quarters about its middle, cropped by the box it fills.
  void add_picture(const MatPicture& placed, const FrontPicture& shown) {
    const Picture& picture = placed.picture;
    const ImageHeader hung = shown.header.turned(static_cast<int>(picture.turned));
    const paper::Box box{to_millimetres(placed.rect.left), to_millimetres(placed.rect.top),
                         to_millimetres(placed.rect.width()), to_millimetres(placed.rect.height())};
    const paper::Box whole =
        paper::uncropped(hung, box, {picture.zoom, picture.pan_x, picture.pan_y});
    const double scale = whole.width / hung.shown_width();
    const double w = shown.header.shown_width(), h = shown.header.shown_height();
    const double x = whole.x + whole.width / 2, y = whole.y + whole.height / 2;
    const std::string clip = "m-picture-" + std::to_string(placed.opening);
    out_ += "<clipPath id=\"" + clip + "\"><rect" + box_attributes(placed.rect) +
            "/></clipPath>\n<g clip-path=\"url(#" + clip + ")\"><image href=\"" +
            escaped(shown.address) + "\" preserveAspectRatio=\"none\" x=\"" +
            short_number(-w * scale / 2) + "\" y=\"" + short_number(-h * scale / 2) +
            "\" width=\"" + short_number(w * scale) + "\" height=\"" + short_number(h * scale) +
            "\" transform=\"translate(" + short_number(x) + " " + short_number(y) + ") rotate(" +
            std::to_string(90 * static_cast<int>(picture.turned)) + ")\"/></g>\n";
    if (!picture.float_gap) return;
    out_ += "<rect" + box_attributes(placed.rect) +
            " fill=\"none\" stroke=\"#000\" stroke-opacity=\"0.25\" stroke-width=\"" +
            short_number(0.25 * mm_per_point / view_.scale) + "\"/>\n";
  }

  void add_hatching(int number_of_layer) {
    if (!style_.unknown_boards.contains(number_of_layer)) return;
    if (!hatching_is_there_) {
      const double step = std::max(extent_.width, extent_.height) / 90;
      out_ += "<pattern id=\"m-unknown\" patternUnits=\"userSpaceOnUse\" width=\"" +
              short_number(step) + "\" height=\"" + short_number(step) +
              "\" patternTransform=\"rotate(45)\"><path d=\"M0,0V" + short_number(step) +
              "\" fill=\"none\" stroke=\"#6b665d\" stroke-width=\"" + short_number(step / 7) +
              "\"/></pattern>\n";
      hatching_is_there_ = true;
    }
    const MatLayer& layer = mat_.layers[static_cast<std::size_t>(number_of_layer - 1)];
    std::string path = path_of(outline_of(mat_.outer));
    for (const Window& window : layer.windows) path += path_of(window.face_edge);
    out_ += "<path fill=\"url(#m-unknown)\" fill-rule=\"evenodd\" d=\"" + path + "\"/>\n";
  }

  const Job& job_;
  Mat mat_;
  const FrontStyle& style_;
  Millimetres extent_;
  View view_;
  std::string out_;
  std::vector<std::pair<MatPicture, FrontPicture>> shown_;
  int parts_ = 0;
  bool hatching_is_there_ = false;
};

}  // namespace

Millimetres front_extent(const Job& job, const Mat& mat) {
  const Rect seen = seen_extent(job, mat);
  const double margin =
      std::max(to_millimetres(seen.width()), to_millimetres(seen.height())) * wall_share;
  return {to_millimetres(seen.left) - margin, to_millimetres(seen.top) - margin,
          to_millimetres(seen.width()) + 2 * margin, to_millimetres(seen.height()) + 2 * margin};
}

std::string thumbnail_svg(const Job& job, const Mat& mat) {
  const Rect seen = seen_extent(job, mat), sight = frame_sight(job, mat);
  std::string out = "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"" + mm(seen.left) + " " +
                    mm(seen.top) + " " + mm(seen.width()) + " " + mm(seen.height()) +
                    "\">\n<rect fill=\"" + format_colour(picture_ground) + "\"" +
                    box_attributes(mat.outer) + "/>\n";
  for (auto layer = mat.layers.rbegin(); layer != mat.layers.rend(); ++layer) {
    if (layer->board.spacer) continue;
    std::string path = path_of(outline_of(mat.outer));
    for (const Window& window : layer->windows) path += path_of(window.back_edge);
    out += "<path fill=\"" + format_colour(layer->board.colour) +
           "\" stroke=\"#000\" stroke-opacity=\"0.25\" stroke-width=\"" +
           short_number(to_millimetres(seen.width()) / 300) + "\" fill-rule=\"evenodd\" d=\"" +
           path + "\"/>\n";
  }
  if (job.frame) {
    out += "<path fill=\"" + format_colour(job.frame->colour) + "\" fill-rule=\"evenodd\" d=\"" +
           path_of(outline_of(seen)) + path_of(outline_of(sight)) + "\"/>\n";
  }
  return out + "</svg>\n";
}

std::string front_svg(const Job& job, const Mat& mat, const FrontStyle& style) {
  return Front(job, mat, style).svg();
}

}  // namespace mullion::proof
