#include <algorithm>
#include <cmath>

#include "engine/mat/rect.h"
#include "render/paper/tiling.h"
#include "render/template/corrected.h"
#include "render/template/join_marks.h"
#include "render/template/overview.h"
#include "render/template/pages.h"
#include "render/template/sheet_frame.h"
#include "render/template/sheet_furniture.h"

namespace mullion {
namespace {

using paper::Box;
using paper::Drawing;

constexpr Length bleed = millimetres(1);          // of the drawing beyond a tile's own edges
constexpr Length overlap = millimetres(12);       // under the next sheet, for tape or glue
constexpr Length beside_corner = millimetres(4);  // least distance of a join, besides the over-cut
constexpr std::size_t most_sheets = 400;

// Where the corners of openings and grooves lie, seen from behind: no join should run there.
void avoid_corners(const BoardView& view, paper::TilingRequest& request) {
  const auto avoid = [&](const BoardCuts& board) {
    request.clearance = std::max(request.clearance, beside_corner + board.over_cut);
    for (const Window& window : board.windows()) {
      for (const Rect& rect :
           {mirrored(window.back, view.width()), mirrored(window.face, view.width())}) {
        request.avoid_x.insert(request.avoid_x.end(), {rect.left, rect.right});
        request.avoid_y.insert(request.avoid_y.end(), {rect.top, rect.bottom});
      }
    }
  };
  for (const BoardCuts* layer : view.layers) avoid(*layer);
  if (const BoardCuts* grooves = view.grooves()) avoid(*grooves);
}

Rect blank_of(const BoardView& view) {
  return mirrored(view.layers.front()->blank, view.width());
}

Length ticks_above(double points) {
  return Length::from_ticks(static_cast<std::int64_t>(std::ceil(points * 40640 / 72)));
}

// The board with its dimensions around it.
Rect with_dimensions(const Rect& board, const Drawing& dimensions) {
  if (dimensions.empty()) return board;
  const Box box = bounds_of(dimensions);
  return {std::min(board.left, Length() - ticks_above(-box.x)),
          std::min(board.top, Length() - ticks_above(-box.y)),
          std::max(board.right, ticks_above(box.x + box.width)),
          std::max(board.bottom, ticks_above(box.y + box.height))};
}

// A join beside a cut is worth a row or a column more, if that saves it.
void avoid_by_more_sheets(paper::TilingRequest& request, paper::Tiling& tiling) {
  const paper::TilingRequest fewest = request;
  for (const auto& [columns, rows] : {std::pair{1, 0}, {0, 1}, {1, 1}}) {
    paper::TilingRequest more = fewest;
    more.more_columns = columns;
    more.more_rows = rows;
    const auto found = paper::plan_tiling(more);
    const bool better = tiling.unwanted_joins > 0 || (found && found->sheets() < tiling.sheets());
    if (!found || found->unwanted_joins > 0 || !better) continue;
    tiling = *found;
    request = more;
  }
}

Sides with_bleed(Sides margins) {
  for (Length Sides::*side : every_side) margins.*side += bleed;
  return margins;
}

tl::expected<paper::Tiling, std::string> plan(const BoardView& view, const TemplateOptions& options,
                                              const Drawing& dimensions) {
  paper::TilingRequest request;
  avoid_corners(view, request);
  request.sheet = *options.sheet;
  request.margin = with_bleed(unprintable(options, false));
  request.margin_turned = with_bleed(unprintable(options, true));
  request.footer = sheet_foot;
  request.overlap = options.butted ? Length() : overlap;
  request.shrink = shrinkage(options, request.sheet, false);
  request.shrink_turned = shrinkage(options, request.sheet, true);
  request.area = blank_of(view);
  auto tiling = paper::plan_tiling(request);
  if (!tiling) return tiling;
  if (tiling->unwanted_joins > 0) avoid_by_more_sheets(request, *tiling);
  if (tiling->sheets() > most_sheets) {
    return tl::unexpected("the board would take " + std::to_string(tiling->sheets()) +
                          " sheets of " + request.sheet.name + "; choose larger paper");
  }
  // Dimensions around the board are welcome where they cost no sheet and no better join.
  request.area = with_dimensions(blank_of(view), dimensions);
  const auto larger = paper::plan_tiling(request);
  if (larger && larger->sheets() <= tiling->sheets() &&
      larger->unwanted_joins <= tiling->unwanted_joins) {
    return larger;
  }
  return tiling;
}

Box clip_of(const paper::Tiling& tiling, std::size_t row, std::size_t column, bool butted) {
  const Length more = butted ? bleed : overlap + bleed;
  const bool last_column = column + 2 == tiling.columns.size();
  const bool last_row = row + 2 == tiling.rows.size();
  const Length left = tiling.columns[column] - bleed, top = tiling.rows[row] - bleed;
  const Length right = tiling.columns[column + 1] + (last_column ? bleed : more);
  const Length bottom = tiling.rows[row + 1] + (last_row ? bleed : more);
  return {paper::points(left), paper::points(top), paper::points(right - left),
          paper::points(bottom - top)};
}

struct Whole {
  std::shared_ptr<const Drawing> board, dimensions;
  paper::Tiling tiling;
  bool shows_dimensions = false;  // they are on the overview in any case
  SheetFrame frame;
  SheetFoot foot;
  SheetMap map;
  Ink ink;  // of what the sheets show
};

SheetPage tile_page(const TemplateOptions& options, const Whole& whole, std::size_t row,
                    std::size_t column) {
  const paper::Tiling& tiling = whole.tiling;
  const SheetFrame& frame = whole.frame;
  const Box clip = clip_of(tiling, row, column, options.butted);
  const paper::Transform placed =
      paper::shifted(frame.content.x - clip.x, frame.content.y - clip.y);
  Drawing tile;
  tile.place({whole.board, {}, {}, "board", ""});
  if (whole.shows_dimensions)
    tile.place({whole.dimensions, {}, {}, "dimensions", options.locale.say("Dimensions")});
  Drawing joins;
  draw_joins(joins, tiling, row, column, whole.ink, options.locale);
  tile.place(std::move(joins), {}, "joins", options.locale.say("Joins of the sheets"));

  Drawing content;
  const Box inside{frame.content.x, frame.content.y, clip.width, clip.height};
  content.place({std::make_shared<const Drawing>(std::move(tile)), placed, inside, "tile", ""});
  const std::string name = options.locale.say("Sheet %1", sheet_name(row, column));
  whole.foot.draw_rules(content);
  if (whole.foot.room().width > 24) {
    whole.map.draw(content, row, column);
  }
  whole.foot.draw_words(content, name);
  SheetPage page{frame.size, name, {}};
  page.drawing.place(std::move(content), undoing(options, frame.size));
  return page;
}

Overview overview_of(const BoardView& view, const TemplateOptions& options,
                     const paper::Tiling& tiling) {
  Overview overview;
  overview.title = title_of(view);
  for (std::size_t row = 0; row + 1 < tiling.rows.size(); ++row) {
    for (std::size_t column = 0; column + 1 < tiling.columns.size(); ++column) {
      overview.parts.push_back({sheet_name(row, column),
                                {tiling.columns[column], tiling.rows[row],
                                 tiling.columns[column + 1], tiling.rows[row + 1]}});
    }
  }
  const Locale& locale = view.locale;
  overview.steps = {
      locale.say(
          "%1 sheets, %2 rows of %3; sheet 2-3 is the third of the second row. Measure the rules "
          "and the square's diagonals on the first sheet before you go on.",
          tiling.sheets(), tiling.rows.size() - 1, tiling.columns.size() - 1),
      options.butted
          ? locale.say(
                "Cut every sheet along its dash-dotted joins with a knife and a straightedge, and "
                "butt the sheets. Tape them from behind.")
          : locale.say(
                "Cut each sheet along the dash-dotted joins on its left and upper edge, lay it "
                "over its neighbour's, and tape."),
      locale.say(
          "A join is right when both diamonds on it close and their lines run on: the sheets then "
          "have the right place and the right angle."),
      locale.say(
          "Tape the whole to the back of the board, filled corner to the corner that is at the top "
          "left from behind, outer line on the board's edges. Measure the outer line once more.")};
  if (tiling.unwanted_joins > 0) {
    overview.steps.push_back(
        locale.say("A join runs close by the corner of an opening: there was no other way with so "
                   "few sheets. Check that corner by its dimensions."));
  }
  return overview;
}

}  // namespace

Result<Pages> tiled_pages(const BoardView& view, const TemplateOptions& options) {
  Drawing dimensions = draw_board_dimensions(view);
  const auto tiling = plan(view, options, dimensions);
  if (!tiling) return tl::unexpected(Problems{template_problem("template-paper", tiling.error())});
  const SheetFrame frame = sheet_frame(options, {tiling->page_width, tiling->page_height});
  const SheetFoot foot(frame, view, options);
  Whole whole{std::make_shared<const Drawing>(draw_board(view)),
              std::make_shared<const Drawing>(std::move(dimensions)),
              *tiling,
              tiling->columns.front() < blank_of(view).left,
              frame,
              foot,
              SheetMap(*tiling, foot.room()),
              {}};
  add_ink(whole.ink, *whole.board);
  if (whole.shows_dimensions) add_ink(whole.ink, *whole.dimensions);
  Pages pages{overview_page(view, options, overview_of(view, options, *tiling))};
  for (std::size_t row = 0; row + 1 < tiling->rows.size(); ++row) {
    for (std::size_t column = 0; column + 1 < tiling->columns.size(); ++column) {
      pages.push_back(tile_page(options, whole, row, column));
    }
  }
  return pages;
}

}  // namespace mullion
