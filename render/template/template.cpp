#include "render/template/template.h"

#include <algorithm>

#include "engine/mat/rect.h"
#include "render/template/running_dimensions.h"
#include "render/template/sheet_furniture.h"

namespace mullion {
namespace {

using paper::Anchor;
using paper::Pen;
using paper::Spot;
using paper::TextStyle;

constexpr Length side_margin = inches(1);
constexpr Length top_margin = sixty_fourths(112);
constexpr Length bottom_margin = sixty_fourths(176);
constexpr Length least_page_width = inches(9);

const Pen board_pen{0.8, {0, 0, 0}, {}, 1};
const Pen cut_pen{0.6, {0, 0, 0}, {}, 1};
const Pen face_pen{0.35, {0x60, 0x60, 0x60}, {4, 3}, 1};
const Pen hatch_pen{0.25, {0xb0, 0xb0, 0xb0}, {}, 1};
const Pen thin_pen{0.3, {0x70, 0x70, 0x70}, {}, 1};
constexpr double hatch_spacing = 14;

class LayerPage {
 public:
  LayerPage(paper::Canvas& canvas, const Job& job, const Mat& mat, const MatLayer& layer)
      : canvas_(canvas),
        job_(job),
        mat_(mat),
        layer_(layer),
        page_(template_page(mat)),
        origin_{paper::points(page_.board_left), paper::points(page_.board_top)},
        board_(mirrored(layer.outer, mat.outer.width())) {}

  void draw() {
    for (const Window& window : layer_.windows) draw_window(window);
    canvas_.rectangle(box(board_), board_pen);
    draw_board_marks();
    draw_dimensions();
    const double width = paper::points(page_.size.width) - 2 * margin;
    draw_heading(canvas_, job_, layer_, static_cast<int>(mat_.layers.size()),
                 {margin, margin, width, 0});
    const double below = origin_.y + paper::points(board_.bottom) + 56;
    draw_check_rules(canvas_, {margin, below});
    draw_cautions(canvas_, {margin, below + 76}, width);
  }

 private:
  static constexpr double margin = 24;

  paper::Box box(const Rect& rect) const {
    return {origin_.x + paper::points(rect.left), origin_.y + paper::points(rect.top),
            paper::points(rect.width()), paper::points(rect.height())};
  }
  Rect from_behind(const Rect& rect) const { return mirrored(rect, mat_.outer.width()); }
  Outline from_behind(const Outline& outline) const {
    return mirrored(outline, mat_.outer.width());
  }

  void draw_window(const Window& window) {
    const Outline back = from_behind(window.back_edge);
    canvas_.hatch(back, origin_, 1, hatch_spacing, hatch_pen);
    canvas_.outline(from_behind(window.face_edge), origin_, 1, face_pen);
    const paper::Box b = box(from_behind(window.back));
    if (window.shape.kind == ShapeKind::rectangle) {
      draw_cut_lines(b);
    } else {
      canvas_.outline(back, origin_, 1, cut_pen);
    }
    draw_centre(b);
    draw_label(window, b);
  }

  // Each line runs past its corners by the over-cut, which is about the board's thickness (common
  // practice, no source).
  void draw_cut_lines(const paper::Box& b) {
    const double over = paper::points(layer_.board.thickness);
    const double right = b.x + b.width, bottom = b.y + b.height;
    canvas_.line({b.x - over, b.y}, {right + over, b.y}, cut_pen);
    canvas_.line({b.x - over, bottom}, {right + over, bottom}, cut_pen);
    canvas_.line({b.x, b.y - over}, {b.x, bottom + over}, cut_pen);
    canvas_.line({right, b.y - over}, {right, bottom + over}, cut_pen);
  }

  void draw_centre(const paper::Box& b) {
    const double x = b.x + b.width / 2, y = b.y + b.height / 2, arm = 8;
    canvas_.line({x - arm, y}, {x + arm, y}, thin_pen);
    canvas_.line({x, y - arm}, {x, y + arm}, thin_pen);
  }

  void draw_label(const Window& window, const paper::Box& b) {
    std::string numbers;
    for (const int number : window.openings) {
      numbers += (numbers.empty() ? "" : ", ") + std::to_string(number);
    }
    const double large = std::clamp(std::min(b.width, b.height) / 4, 7.0, 22.0);
    const TextStyle number_style{large, true, {0, 0, 0}, Anchor::centre, 0};
    const Spot middle{b.x + b.width / 2, b.y + b.height / 2};
    const double number_width = canvas_.text_width(numbers, number_style) + 8;
    const std::string size = format_number(window.back.width(), job_.scale).text + " x " +
                             format_number(window.back.height(), job_.scale).text;
    const TextStyle size_style{8, false, {0, 0, 0}, Anchor::centre, 0};
    const std::string shown = canvas_.fitted(size, b.width - 6, size_style);
    const double label_width = std::max(number_width, canvas_.text_width(shown, size_style) + 8);
    const double top = middle.y - 14 - large;
    canvas_.fill(paper::Box{middle.x - label_width / 2, top, label_width, large + 3},
                 {{255, 255, 255}, 1});
    canvas_.text(numbers, {middle.x, top + large}, number_style);
    if (b.height < 60) return;
    canvas_.fill(paper::Box{middle.x - label_width / 2, middle.y + 11, label_width, 12},
                 {{255, 255, 255}, 1});
    canvas_.text(shown, {middle.x, middle.y + 20}, size_style);
  }

  // Centre ticks on the four edges, and a slanted mark in one corner, so that a sheet that lies the
  // wrong way is noticed.
  void draw_board_marks() {
    const paper::Box b = box(board_);
    const double x = b.x + b.width / 2, y = b.y + b.height / 2, arm = 9;
    canvas_.line({x, b.y}, {x, b.y + arm}, cut_pen);
    canvas_.line({x, b.y + b.height}, {x, b.y + b.height - arm}, cut_pen);
    canvas_.line({b.x, y}, {b.x + arm, y}, cut_pen);
    canvas_.line({b.x + b.width, y}, {b.x + b.width - arm, y}, cut_pen);
    const double leg = std::min({48.0, b.width / 5, b.height / 5});
    canvas_.fill({{b.x, b.y}, {b.x + leg / 2, b.y}, {b.x, b.y + leg / 2}}, {{0, 0, 0}, 0.25});
    canvas_.line({b.x + leg, b.y}, {b.x, b.y + leg}, cut_pen);
    canvas_.text("TOP, seen from behind", {b.x + leg + 4, b.y + 10},
                 {7, false, {0x30, 0x30, 0x30}, Anchor::left, 0});
  }

  void draw_dimensions() {
    std::vector<DimensionMark> from_left, from_right, from_top, from_bottom;
    for (const Window& window : layer_.windows) {
      const Rect rect = from_behind(window.back);
      const paper::Box b = box(rect);
      for (const auto& [edge, place] : {std::pair{rect.left, b.x}, {rect.right, b.x + b.width}}) {
        from_left.push_back({edge - board_.left, place});
        from_right.push_back({board_.right - edge, place});
      }
      for (const auto& [edge, place] : {std::pair{rect.top, b.y}, {rect.bottom, b.y + b.height}}) {
        from_top.push_back({edge - board_.top, place});
        from_bottom.push_back({board_.bottom - edge, place});
      }
    }
    const paper::Box b = box(board_);
    const double right = b.x + b.width, bottom = b.y + b.height;
    const Scale& scale = job_.scale;
    draw_running_dimensions(canvas_, from_left, DimensionSide::above, b.y, b.x, right, scale);
    draw_running_dimensions(canvas_, from_right, DimensionSide::below, bottom, b.x, right, scale);
    draw_running_dimensions(canvas_, from_top, DimensionSide::left, b.x, b.y, bottom, scale);
    draw_running_dimensions(canvas_, from_bottom, DimensionSide::right, right, b.y, bottom, scale);
  }

  paper::Canvas& canvas_;
  const Job& job_;
  const Mat& mat_;
  const MatLayer& layer_;
  TemplatePage page_;
  Spot origin_;
  Rect board_;
};

std::string bookmark_of(const MatLayer& layer) {
  return "Layer " + std::to_string(layer.number) +
         (layer.board.name.empty() ? "" : ": " + layer.board.name);
}

}  // namespace

TemplatePage template_page(const Mat& mat) {
  const Length width = std::max(mat.outer.width() + side_margin * 2, least_page_width);
  const Length height = mat.outer.height() + top_margin + bottom_margin;
  return {{width, height}, half_rounded_down(width - mat.outer.width()), top_margin};
}

std::string render_template(const Job& job, const Mat& mat, const TemplateOptions& options) {
  paper::Document document(options.format,
                           {"Template " + job.reference, job.date, options.png_dpi});
  const bool one = options.format != paper::Format::pdf || options.layer > 0;
  const std::size_t first =
      options.layer > 0 ? static_cast<std::size_t>(options.layer) - 1 : std::size_t{0};
  const std::size_t last = one ? first + 1 : mat.layers.size();
  for (std::size_t i = first; i < last; ++i) {
    const MatLayer& layer = mat.layers.at(i);
    paper::Canvas& canvas = document.add_page(template_page(mat).size, bookmark_of(layer));
    LayerPage(canvas, job, mat, layer).draw();
  }
  return document.finish();
}

}  // namespace mullion
