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

struct Plan {
  paper::Tiling tiling;
  std::size_t fewest = 0;  // sheets that would do, with joins by corners
};

tl::expected<Plan, std::string> plan(const BoardView& view, const TemplateOptions& options,
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
  if (!tiling) return tl::unexpected(tiling.error());
  const std::size_t fewest = tiling->sheets();
  if (tiling->unwanted_joins > 0 && !options.fewest) avoid_by_more_sheets(request, *tiling);
  if (tiling->sheets() > most_sheets) {
    return tl::unexpected("the board would take " + std::to_string(tiling->sheets()) +
                          " sheets of " + request.sheet.name + "; choose larger paper");
  }
  // Dimensions around the board are welcome where they cost no sheet and no better join.
  request.area = with_dimensions(blank_of(view), dimensions);
  const auto larger = paper::plan_tiling(request);
  if (larger && larger->sheets() <= tiling->sheets() &&
      larger->unwanted_joins <= tiling->unwanted_joins) {
    return Plan{*larger, fewest};
  }
  return Plan{*tiling, fewest};
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
  NeededSheets sheets;
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
  draw_joins(joins, tiling, row, column, whole.sheets, whole.ink, options.locale);
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

// What is measured on the whole makes the printer's profile finer.
std::string feed_back(const BoardView& view, const TemplateOptions& options,
                      const paper::Tiling& tiling) {
  const Rect blank = blank_of(view);
  const Scale& scale = view.job->scale;
  const bool turned = is_turned(options, {tiling.page_width, tiling.page_height});
  return view.locale.say(
             "Is the outer line %1 by %2? If not, measure its sides and diagonals and "
             "make the printer's profile finer:",
             view.locale.described(blank.width(), scale),
             view.locale.described(blank.height(), scale)) +
         " mullion printer -o printer.xml --from printer.xml --assembled \"" +
         format_exact(blank.width(), scale.unit) + " x " +
         format_exact(blank.height(), scale.unit) + "\"" + (turned ? " --turned" : "") +
         " --across .. --down .. --falling .. --rising ..";
}

Overview overview_of(const BoardView& view, const TemplateOptions& options, const Plan& plan,
                     const NeededSheets& sheets) {
  const paper::Tiling& tiling = plan.tiling;
  Overview overview;
  overview.title = title_of(view);
  for (std::size_t row = 0; row + 1 < tiling.rows.size(); ++row) {
    for (std::size_t column = 0; column + 1 < tiling.columns.size(); ++column) {
      if (!sheets.has(row, column)) continue;
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
          sheets.count(), tiling.rows.size() - 1, tiling.columns.size() - 1),
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
  if (view.layers.size() > 1) {
    overview.steps.push_back(locale.say(
        "One set of sheets serves all layers: tape it to each board in turn, the outer line of "
        "that layer on the board's edges, and prick its corners through."));
  }
  if (sheets.left_out() > 0) {
    overview.steps.push_back(locale.plural(
        static_cast<long>(sheets.left_out()),
        "%1 sheet without a line is left out: the map shows its place without a name.",
        "%1 sheets without a line are left out: the map shows their places without a name."));
  }
  if (tiling.sheets() > plan.fewest) {
    overview.steps.push_back(
        locale.say("With --fewest the board would lie on %1 sheets instead of %2, with joins close "
                   "by corners.",
                   plan.fewest, tiling.sheets()));
  }
  if (options.printer) overview.steps.push_back(feed_back(view, options, tiling));
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
  const auto planned = plan(view, options, dimensions);
  if (!planned)
    return tl::unexpected(Problems{template_problem("template-paper", planned.error())});
  const paper::Tiling& tiling = planned->tiling;
  const SheetFrame frame = sheet_frame(options, {tiling.page_width, tiling.page_height});
  const SheetFoot foot(frame, view, options);
  const auto board = std::make_shared<const Drawing>(draw_board(view));
  Whole whole{board,
              std::make_shared<const Drawing>(std::move(dimensions)),
              tiling,
              NeededSheets(tiling, board_lines(*board)),
              tiling.columns.front() < blank_of(view).left,
              frame,
              foot,
              SheetMap(tiling, foot.room()),
              {}};
  add_ink(whole.ink, *whole.board);
  if (whole.shows_dimensions) add_ink(whole.ink, *whole.dimensions);
  Pages pages{overview_page(view, options, overview_of(view, options, *planned, whole.sheets))};
  for (std::size_t row = 0; row + 1 < tiling.rows.size(); ++row) {
    for (std::size_t column = 0; column + 1 < tiling.columns.size(); ++column) {
      if (whole.sheets.has(row, column)) pages.push_back(tile_page(options, whole, row, column));
    }
  }
  return pages;
}

}  // namespace mullion
