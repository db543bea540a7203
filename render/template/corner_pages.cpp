#include <algorithm>
#include <cmath>

#include "render/template/corner_pieces.h"
#include "render/template/corrected.h"
#include "render/template/overview.h"
#include "render/template/pages.h"
#include "render/template/sheet_frame.h"

namespace mullion {
namespace {

using paper::Anchor;
using paper::Box;
using paper::Drawing;
using paper::TextStyle;

constexpr double strip = 22;  // points below a piece, for its name and place
constexpr double gap = 6;     // points between pieces

// "left 18 1/2 in": where the piece's edge is to be laid, from that edge of the board.
struct PlaceWords {
  const char *inside, *outside;
};
constexpr PlaceWords from_left{mark("left %1"), mark("left %1 outside")};
constexpr PlaceWords from_top{mark("top %1"), mark("top %1 outside")};

std::string place_text(const PlaceWords& words, Length distance, const BoardView& view) {
  const bool inside = distance >= Length();
  return view.locale.say(
      inside ? words.inside : words.outside,
      view.locale.described(inside ? distance : Length() - distance, view.job->scale));
}

// Named below, within the frame, so that the name stays on the piece when it is cut out.
void draw_piece(Drawing& page, const std::shared_ptr<const Drawing>& board,
                const CornerPiece& piece, const BoardView& view, paper::Spot corner) {
  const double side = paper::points(piece.rect.width()), low = corner.y + side;
  const Box box{corner.x, corner.y, side, side};
  page.place({board,
              paper::shifted(corner.x - paper::points(piece.rect.left),
                             corner.y - paper::points(piece.rect.top)),
              box, "piece-" + piece.name, ""});
  page.stroke(paper::rectangle({corner.x, corner.y, side, side + strip}), {0.4, {0, 0, 0}, {}, 1});
  page.stroke(paper::line({corner.x, low}, {corner.x + side, low}), {0.25, {0, 0, 0}, {}, 1});
  TextStyle strong{15, true, {0, 0, 0}, Anchor::left, 0};
  const double most = side * 0.4;
  strong.size = std::min(strong.size, strong.size * most / paper::text_width(piece.name, strong));
  page.text(piece.name, {corner.x + 4, low + 16}, strong);
  const double x = corner.x + paper::text_width(piece.name, strong) + 12;
  const TextStyle plain{9, false, {0, 0, 0}, Anchor::left, 0};
  const Rect edge = located_from(view);
  page.text(place_text(from_left, piece.rect.left - edge.left, view), {x, low + 9.5}, plain);
  page.text(place_text(from_top, piece.rect.top - edge.top, view), {x, low + 19.5}, plain);
}

Overview overview_of(const BoardView& view, const std::vector<CornerPiece>& pieces) {
  Overview overview;
  overview.title = title_of(view);
  for (const CornerPiece& piece : pieces) overview.parts.push_back({piece.name, piece.rect});
  const Locale& locale = view.locale;
  overview.steps = {
      locale.say(
          "Measure the rules and the square's diagonals on the first sheet before you go on. Cut "
          "out the pieces along their frames; keep the strip with the name."),
      locale.say(
          "Board face down. Each piece says how far its left side and its upper side lie from the "
          "board's left and top edge, as you see the back. Lay it there, its name upright, its "
          "sides parallel to the board's edges."),
      locale.say("Tape it, prick or draw its lines, and join them with a straightedge. Check the "
                 "opening's size before you cut.")};
  return overview;
}

// Pieces on a sheet, in rows from its upper left.
struct Rows {
  double wide, high;  // points that a piece takes, its gap included
  std::size_t across, down;
  std::size_t count() const { return across * down; }

  paper::Spot place(std::size_t index, const Box& content) const {
    const std::size_t column = index % across, row = index / across;
    return {content.x + static_cast<double>(column) * wide + 1,
            content.y + static_cast<double>(row) * high + 1};
  }
};

Rows rows_on(const SheetFrame& frame, double side) {
  const double wide = side + gap, high = side + strip + gap;
  const auto fitting = [](double room, double size) {
    return static_cast<std::size_t>(std::max(0.0, (room - 2 + gap) / size));
  };
  return {wide, high, fitting(frame.content.width, wide), fitting(frame.content.height, high)};
}

}  // namespace

Result<Pages> corner_pages(const BoardView& view, const TemplateOptions& asked) {
  const TemplateOptions options = with_sheet(asked, view.job->scale);
  const SheetFrame frame = sheet_frame(options, {options.sheet->width, options.sheet->height});
  const Rows rows = rows_on(frame, paper::points(corner_piece_side(view.job->scale)));
  if (rows.count() == 0) {
    return tl::unexpected(
        Problems{template_problem("template-paper", "the paper \"" + options.sheet->name +
                                                        "\" is too small for the pieces")});
  }
  const std::vector<CornerPiece> pieces = corner_pieces(view);
  const SheetFoot foot(frame, view, options);
  const auto board = std::make_shared<const Drawing>(draw_board(view));
  Pages pages{overview_page(view, options, overview_of(view, pieces))};
  for (std::size_t first = 0; first < pieces.size(); first += rows.count()) {
    Drawing content;
    const std::size_t end = std::min(pieces.size(), first + rows.count());
    for (std::size_t i = first; i < end; ++i) {
      draw_piece(content, board, pieces[i], view, rows.place(i - first, frame.content));
    }
    const std::string name =
        view.locale.say("Corners %1 to %2", pieces[first].name, pieces[end - 1].name);
    foot.draw_rules(content);
    foot.draw_words(content, name);
    SheetPage page{frame.size, name, {}};
    page.drawing.place(std::move(content), undoing(options, frame.size));
    pages.push_back(std::move(page));
  }
  return pages;
}

}  // namespace mullion
