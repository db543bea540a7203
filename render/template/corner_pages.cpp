#include <algorithm>
#include <cmath>

#include "engine/mat/rect.h"
#include "render/template/overview.h"
#include "render/template/pages.h"
#include "render/template/sheet_frame.h"

namespace mullion {
namespace {

using paper::Anchor;
using paper::Box;
using paper::Drawing;
using paper::TextStyle;

constexpr double knife_gap = 10;  // points, for the knife

// A piece's edges lie at whole steps from the board's edges, so that a rule finds them.
struct Step {
  Length step, piece;
};

Step step_of(const Scale& scale) {
  if (scale.unit == Unit::inch) return {sixty_fourths(32), inches(2)};
  return {millimetres(10), millimetres(50)};
}

Length floor_to(Length length, Length step) {
  const std::int64_t over = (length.ticks() % step.ticks() + step.ticks()) % step.ticks();
  return length - Length::from_ticks(over);
}

struct Piece {
  std::string name;
  Rect rect;  // on the board, seen from behind
};

// A window's corners, or the four ends of its axes where it has none.
std::vector<Point> marks_of(const Window& window, const Rect& back) {
  if (window.shape.kind == ShapeKind::ellipse) {
    const Length x = back.left + half_rounded_down(back.width());
    const Length y = back.top + half_rounded_down(back.height());
    return {{x, back.top}, {back.right, y}, {x, back.bottom}, {back.left, y}};
  }
  return {{back.left, back.top},
          {back.right, back.top},
          {back.right, back.bottom},
          {back.left, back.bottom}};
}

std::vector<Piece> pieces_of(const BoardView& view) {
  const Step step = step_of(view.job->scale);
  const Length width = view.mat->outer.width();
  std::vector<Piece> pieces;
  for (const MatLayer* layer : view.layers) {
    for (const Window& window : layer->windows) {
      char letter = 'a';
      for (const Point& mark : marks_of(window, mirrored(window.back, width))) {
        const Length half = half_rounded_down(step.piece);
        const Length left = floor_to(mark.x - half + half_rounded_down(step.step), step.step);
        const Length top = floor_to(mark.y - half + half_rounded_down(step.step), step.step);
        std::string name;
        for (const int number : window.openings) name += std::to_string(number) + "+";
        name.back() = letter++;
        if (view.layers.size() > 1) name += "/" + std::to_string(layer->number);
        pieces.push_back({name, {left, top, left + step.piece, top + step.piece}});
      }
    }
  }
  return pieces;
}

// "3 from left, 5 from top" as the piece's own edges are to be laid.
std::vector<std::string> place_text(const Piece& piece, const Rect& board, const Scale& scale) {
  const auto text = [&](Length distance, const char* edge) {
    if (distance < Length()) {
      return format_length(Length() - distance, scale).text + " beyond the " + edge;
    }
    return format_length(distance, scale).text + " from the " + edge;
  };
  return {"left edge " + text(piece.rect.left - board.left, "left"),
          "top edge " + text(piece.rect.top - board.top, "top")};
}

void draw_piece(Drawing& page, const std::shared_ptr<const Drawing>& board, const Piece& piece,
                const BoardView& view, paper::Spot corner) {
  const double side = paper::points(piece.rect.width());
  const Box box{corner.x, corner.y, side, side};
  page.place({board,
              paper::shifted(corner.x - paper::points(piece.rect.left),
                             corner.y - paper::points(piece.rect.top)),
              box, "piece-" + piece.name, ""});
  page.stroke(paper::rectangle(box), {0.4, {0, 0, 0}, {}, 1});
  const TextStyle strong{9, true, {0, 0, 0}, Anchor::left, 0};
  const TextStyle plain{6.5, false, {0, 0, 0}, Anchor::left, 0};
  const auto lines = place_text(
      piece, mirrored(view.layers.front()->outer, view.mat->outer.width()), view.job->scale);
  double y = corner.y + side + 9;
  page.text(piece.name, {corner.x, y}, strong);
  for (const std::string& line : lines) {
    y += 8;
    page.text(paper::fitted(line, side + knife_gap - 3, plain), {corner.x, y}, plain);
  }
}

Overview overview_of(const BoardView& view, const std::vector<Piece>& pieces) {
  Overview overview;
  overview.title =
      view.layers.size() > 1 ? "All layers" : layer_title(*view.layers.front(), *view.mat);
  for (const Piece& piece : pieces) overview.parts.push_back({piece.name, piece.rect});
  overview.steps = {
      "Measure the rules and the square's diagonals on the first sheet before you go on. Cut out "
      "the pieces along their frames.",
      "Board face down. Lay each piece at the distances that are printed below it, from the left "
      "and "
      "top edge as you see the back; the frame's sides parallel to the board's edges.",
      "Tape it, prick or draw its lines, and join them with a straightedge. Check the opening's "
      "size before you cut."};
  return overview;
}

}  // namespace

Result<Pages> corner_pages(const BoardView& view, const TemplateOptions& asked) {
  TemplateOptions options = asked;
  const bool metric = view.job->scale.unit != Unit::inch;
  if (!options.sheet) {
    options.sheet = *paper::parse_sheet_size(metric ? "a4" : "letter", view.job->scale.unit);
  }
  if (options.sheet->roll) options.sheet->height = options.sheet->width;
  const SheetFrame frame = sheet_frame(options, {options.sheet->width, options.sheet->height});
  const std::vector<Piece> pieces = pieces_of(view);
  const double side = paper::points(step_of(view.job->scale).piece);
  const double wide = side + knife_gap, high = side + 30 + knife_gap;
  const std::size_t across = static_cast<std::size_t>(std::max(0.0, frame.content.width / wide));
  const std::size_t down = static_cast<std::size_t>(std::max(0.0, frame.content.height / high));
  if (across * down == 0) {
    return tl::unexpected(
        Problems{template_problem("template-paper", "the paper \"" + options.sheet->name +
                                                        "\" is too small for the pieces")});
  }
  const auto board = std::make_shared<const Drawing>(draw_board(view));
  Pages pages{overview_page(view, options, overview_of(view, pieces))};
  for (std::size_t first = 0; first < pieces.size(); first += across * down) {
    Drawing content;
    const std::size_t end = std::min(pieces.size(), first + across * down);
    for (std::size_t i = first; i < end; ++i) {
      const double column = static_cast<double>((i - first) % across);
      const double row = static_cast<double>((i - first) / across);
      draw_piece(content, board, pieces[i], view,
                 {frame.content.x + column * wide + 1, frame.content.y + row * high + 1});
    }
    const std::string name = "Corners " + pieces[first].name + " to " + pieces[end - 1].name;
    draw_foot(content, frame, view, options, name);
    SheetPage page{frame.size, name, {}};
    page.drawing.place(std::move(content), undoing(options, frame.size));
    pages.push_back(std::move(page));
  }
  return pages;
}

}  // namespace mullion
