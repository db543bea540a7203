#include "render/sheetplan/sheet_pages.h"

#include <algorithm>
#include <cstdio>

#include "engine/sheets/plan/stages.h"
#include "engine/sheets/stock/size_text.h"
#include "render/sheetplan/sheet_drawing.h"
#include "render/sheetplan/summary_pages.h"
#include "render/sheetplan/type.h"

namespace mullion {
namespace {

using paper::Anchor;
using paper::Box;
using paper::Spot;
using paper::TextStyle;

constexpr double cut_row_height = 11;
constexpr double stop_column = 22, piece_column = 158;
constexpr double footer_height = 40;
const TextStyle cut_plain{8.5, false, {0, 0, 0}, Anchor::left, 0};
const TextStyle cut_strong{8.5, true, {0, 0, 0}, Anchor::left, 0};
const TextStyle small{7, false, {0x30, 0x30, 0x30}, Anchor::left, 0};

constexpr const char* cautions[] = {
    mark("Fresh blade; cut away from your hands; hold the board firmly; follow the maker's "
         "instructions."),
    mark(
        "Each cut runs from edge to edge of the piece it is made in. Check the first blank of each "
        "setting with a rule before you go on."),
    mark("A setting is what the stop's scale shows. \"rest\": the remainder lies at the stop. "
         "\"mark\": beyond the stop's reach; measure and mark."),
    mark("\"check\": takes off what the sheet is larger than stated; where it is smaller, take "
         "another.")};

std::string cut_text(const NumberedCut& cut, const SheetReport& report, const Locale& locale) {
  const std::string setting = setting_text(cut, report.cutter, report.plan.scale, locale);
  if (cut.bevel) return locale.say("%1 (bevel)", setting);
  if (cut.check) return locale.say("%1 (check)", setting);
  return cut.trim ? locale.say("%1 (trim)", setting) : setting;
}

class Pages {
 public:
  Pages(const SheetReport& report, const SheetPageOptions& options)
      : report_(report),
        options_(options),
        locale_(options.locale),
        width_(paper::points(options.page.width)),
        height_(paper::points(options.page.height)),
        kept_(kept_offcuts(report.plan, report.stock, report.keep)) {
    for (const BoardPlan& board : report.plan.boards) {
      sheets_ += static_cast<int>(board.sheets.size());
    }
  }

  std::string render() {
    if (options_.summary && sheets_ > 0) add_summary(document_, report_, options_);
    for (const auto& [board, sheet] : sheets_in_order(report_.plan)) draw(*sheet, *board);
    if (sheets_ == 0) {
      add_page(locale_.say("Sheet plan"))
          .text(locale_.say("Nothing is cut."), {margin, margin + 15}, title_style);
    }
    return paper::write_pdf(document_, {locale_.say("Sheet plan"), options_.date});
  }

 private:
  paper::Drawing& add_page(const std::string& title) {
    document_.push_back({options_.page, title, {}});
    return document_.back().drawing;
  }

  void draw(const PlannedSheet& sheet, const BoardPlan& board) {
    const std::vector<NumberedCut> cuts = cuts_of(sheet, report_.cutter);
    const std::string name = locale_.say("Sheet %1", sheet.number);
    paper::Drawing* page = &add_page(name);
    draw_heading(*page, sheet, board, cuts);
    // The drawing gets what the table leaves, but half the page at least.
    const double above = margin + 62;
    const double below = height_ - margin - footer_height;
    const double table = table_height(cuts.size());
    const double room = std::max(below - above - table - 24, (below - above) / 2);
    const SheetDrawing drawing{sheet, board, report_, cuts, kept_, locale_};
    const double factor = draw_sheet(*page, drawing, {margin, above, width_ - 2 * margin, room});
    const double bottom = above + factor * paper::points(sheet.height);
    char ratio[32];
    std::snprintf(ratio, sizeof ratio, "%.1f", 1 / factor);
    page->text(locale_.say("scale about 1 : %1", locale_.number(ratio)),
               {width_ - margin, margin + 50}, {small.size, false, small.colour, Anchor::right, 0});
    draw_footer(*page);

    std::size_t next = draw_table(*page, cuts, 0, bottom + 20, below);
    while (next < cuts.size()) {
      const std::string more = locale_.say("%1, more cuts", name);
      page = &add_page(more);
      page->text(more, {margin, margin + 15}, title_style);
      draw_footer(*page);
      next = draw_table(*page, cuts, next, margin + 40, below);
    }
  }

  void draw_heading(paper::Drawing& page, const PlannedSheet& sheet, const BoardPlan& board,
                    const std::vector<NumberedCut>& cuts) {
    const Scale& scale = report_.plan.scale;
    page.text(locale_.say("Sheet %1 of %2", sheet.number, sheets_), {margin, margin + 15},
              title_style);
    const double room = width_ - 2 * margin;
    page.text(paper::fitted(options_.title, room / 2, cut_plain), {width_ - margin, margin + 15},
              {cut_plain.size, false, cut_plain.colour, Anchor::right, 0});
    page.fill(paper::rectangle({margin, margin + 24, 12, 10}), {board.board.colour, 1});
    page.stroke(paper::rectangle({margin, margin + 24, 12, 10}), {0.4, {0, 0, 0}, {}, 1});
    const std::string what = describe(board.board, scale, locale_) + "  \xC2\xB7  " +
                             source_of(sheet, board, report_.stock, locale_) + ", " +
                             size_text(sheet.width, sheet.height, scale, locale_);
    page.text(paper::fitted(what, room - 18, cut_strong), {margin + 18, margin + 33}, cut_strong);
    const int settings = settings_of(cuts);
    std::string how =
        locale_.say_in("cuts", "%1 at %2", locale_.plural(cuts.size(), "%1 cut", "%1 cuts"),
                       locale_.plural(settings, "%1 setting", "%1 settings"));
    if (sheet.stage > 1) {
      how = locale_.say("%1; only after its parent's mat is finished, from the edges of its back",
                        how);
    }
    page.text(paper::fitted(how, room - 90, cut_plain), {margin, margin + 50}, cut_plain);
  }

  void draw_footer(paper::Drawing& page) const {
    double y = height_ - margin - footer_height + 11;
    for (const char* line : cautions) {
      page.text(paper::fitted(locale_.say(line), width_ - 2 * margin, small), {margin, y}, small);
      y += 9;
    }
  }

  static constexpr int columns = 2;

  static double table_height(std::size_t cuts) {
    const std::size_t rows = (cuts + columns - 1) / columns;
    return static_cast<double>(rows + 1) * cut_row_height;
  }

  // Draws cuts from `first` on, column by column; returns the first that found no room.
  std::size_t draw_table(paper::Drawing& page, const std::vector<NumberedCut>& cuts,
                         std::size_t first, double top, double bottom) const {
    const double room = (bottom - top) / cut_row_height - 1;
    const auto most_rows = static_cast<std::size_t>(std::max(room, 1.0));
    const std::size_t rows = std::min(most_rows, (cuts.size() - first + columns - 1) / columns);
    const double width = (width_ - 2 * margin) / columns;
    std::size_t next = first;
    for (int column = 0; column < columns && next < cuts.size(); ++column) {
      const double x = margin + column * width;
      page.text(locale_.say("Cut"), {x, top}, cut_strong);
      page.text(locale_.say("Stop"), {x + stop_column, top}, cut_strong);
      page.text(locale_.say("of the piece"), {x + piece_column, top}, cut_strong);
      page.stroke(paper::line({x, top + 3}, {x + width - 12, top + 3}), {0.4, {0, 0, 0}, {}, 1});
      for (std::size_t row = 0; row < rows && next < cuts.size(); ++row, ++next) {
        const double y = top + static_cast<double>(row + 1) * cut_row_height + 3;
        draw_row(page, cuts, next, {x, y}, width);
      }
    }
    return next;
  }

  void draw_row(paper::Drawing& page, const std::vector<NumberedCut>& cuts, std::size_t at,
                Spot spot, double width) const {
    const Scale& scale = report_.plan.scale;
    const NumberedCut& cut = cuts[at];
    // A setting in bold is one that is to be set anew.
    const bool anew = at == 0 || cuts[at - 1].stop != cut.stop;
    page.text(std::to_string(cut.number), spot, cut_plain);
    const TextStyle& style = anew ? cut_strong : cut_plain;
    page.text(cut_text(cut, report_, locale_), {spot.x + stop_column, spot.y}, style);
    // Rounded: it only tells which piece is meant.
    const std::string piece =
        locale_.say(cut.upright() ? mark("upright, %1 x %2") : mark("level, %1 x %2"),
                    locale_.described_number(cut.piece_width, scale),
                    locale_.described(cut.piece_height, scale));
    const double room = width - piece_column - 8;
    const TextStyle fitting = paper::narrowed(piece, room, small, least_type);
    page.text(paper::fitted(piece, room, fitting), {spot.x + piece_column, spot.y}, fitting);
  }

  const SheetReport& report_;
  const SheetPageOptions& options_;
  const Locale& locale_;
  std::vector<paper::Page> document_;
  double width_, height_;
  std::vector<KeptOffcut> kept_;
  int sheets_ = 0;
};

}  // namespace

std::string render_sheet_pages(const SheetReport& report, const SheetPageOptions& options) {
  return Pages(report, options).render();
}

}  // namespace mullion
