#include "render/sheetplan/sheet_pages.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "tests/engine/sheets/guillotine/gcut.h"
#include "tests/engine/sheets/report/planned_shop.h"
#include "tests/oracle/pdf.h"
#include "tests/oracle/program.h"

using namespace mullion;

namespace {

constexpr double red_of_cuts = (0xb0 + 0x20 + 0x20) / 3.0 / 255;

std::vector<BlankOrder> orders_of(const std::vector<std::pair<Length, Length>>& sizes,
                                  int quantity) {
  std::vector<BlankOrder> orders;
  for (const auto& [width, height] : sizes) {
    const std::string order = "W-" + std::to_string(orders.size() + 1);
    orders.push_back(blank_order(order, width, height, quantity));
  }
  return orders;
}

struct Shop : PlannedShop {
  Shop(const std::vector<std::pair<Length, Length>>& sizes, int quantity)
      : PlannedShop(orders_of(sizes, quantity), 500'000, sixty_fourths(16)) {}

  std::string draw(const std::string& name, bool summary = false) const {
    SheetPageOptions options;
    options.page = paper::usual_page(Unit::inch);
    options.summary = summary;
    const std::string path = oracle::scratch_folder(name) + "/sheets.pdf";
    oracle::write_file(path, render_sheet_pages(report, options));
    return path;
  }
};

// Cut lines of a page: straight red strokes; the rings of their numbers are closed.
std::vector<oracle::PdfLine> cut_lines(const oracle::PdfPage& page) {
  std::vector<oracle::PdfLine> lines;
  for (const oracle::PdfStroke& stroke : page.strokes) {
    const bool red = std::abs(stroke.grey - red_of_cuts) < 0.01;
    if (red && !stroke.closed) lines.insert(lines.end(), stroke.lines.begin(), stroke.lines.end());
  }
  return lines;
}

// The sheet's outline: the largest closed black stroke.
oracle::PdfLine sheet_outline(const oracle::PdfPage& page) {
  oracle::PdfLine best;
  for (const oracle::PdfStroke& stroke : page.strokes) {
    if (!stroke.closed || stroke.grey > 0.01) continue;
    oracle::PdfLine box{1e9, 1e9, -1e9, -1e9};
    for (const oracle::PdfLine& line : stroke.lines) {
      box.x1 = std::min({box.x1, line.x1, line.x2});
      box.y1 = std::min({box.y1, line.y1, line.y2});
      box.x2 = std::max({box.x2, line.x1, line.x2});
      box.y2 = std::max({box.y2, line.y1, line.y2});
    }
    if (box.x2 - box.x1 > best.x2 - best.x1) best = box;
  }
  return best;
}

// The best pattern of a gcut instance as the plan of one sheet, a millimetre to a unit.
SheetPlan gcut_plan(int number, bool may_turn, Stock& stock) {
  constexpr std::int64_t mm = ticks_per_mm;
  const GcutInstance instance = read_gcut(number, may_turn);
  SheetPlan plan;
  plan.scale = {Unit::millimetre, millimetres(1)};
  plan.boards.emplace_back();
  BoardPlan& board = plan.boards[0];
  board.board = {"gcut" + std::to_string(number), {0xff, 0xff, 0xff}, millimetres(1)};
  std::vector<BlankSize> blanks;
  PlannedSheet sheet;
  for (const BlankSize& size : instance.blanks) {
    blanks.push_back({size.width * mm, size.height * mm, may_turn});
    BlankOrder line;
    line.order = "piece " + std::to_string(blanks.size());
    line.width = blanks.back().width;
    line.height = blanks.back().height;
    board.lines.push_back(line);
    sheet.blanks.push_back({static_cast<int>(blanks.size()) - 1, 1});
  }
  StockPiece piece;
  piece.id = "stock";
  piece.width = sheet.width = instance.width * mm;
  piece.height = sheet.height = instance.height * mm;
  stock.pieces = {piece};
  sheet.number = 1;
  sheet.stock = 0;
  sheet.pattern =
      PatternSearch(sheet.width, sheet.height, {}, blanks).find(instance.values).pattern;
  board.sheets = {sheet};
  return plan;
}

struct Box {
  std::int64_t left, top, right, bottom;
};

// The blanks of a drawn page in whole units of the instance, `width` of which are the sheet's.
std::vector<Box> drawn_blanks(const oracle::PdfPage& page, std::int64_t width) {
  const oracle::PdfLine outline = sheet_outline(page);
  const double unit = (outline.x2 - outline.x1) / static_cast<double>(width);
  constexpr double ring = 12.4;  // around a cut's number
  std::vector<Box> boxes;
  for (const oracle::PdfLine& fill : page.fills) {
    const bool number =
        std::abs(fill.x2 - fill.x1 - ring) < 0.1 && std::abs(fill.y2 - fill.y1 - ring) < 0.1;
    if (number || fill.y1 < outline.y1 - 1 || fill.y2 > outline.y2 + 1) continue;
    boxes.push_back(
        {std::llround((fill.x1 - outline.x1) / unit), std::llround((fill.y1 - outline.y1) / unit),
         std::llround((fill.x2 - outline.x1) / unit), std::llround((fill.y2 - outline.y1) / unit)});
  }
  return boxes;
}

// Whether cuts from edge to edge part all boxes, which also means that none overlap.
bool guillotine(const std::vector<Box>& boxes) {
  if (boxes.size() < 2) return true;
  for (const auto& [low, high] :
       {std::pair(&Box::left, &Box::right), std::pair(&Box::top, &Box::bottom)}) {
    for (const Box& box : boxes) {
      const std::int64_t at = box.*high;
      std::vector<Box> before, after;
      bool clear = true;
      for (const Box& other : boxes) {
        clear = clear && (other.*high <= at || other.*low >= at);
        (other.*high <= at ? before : after).push_back(other);
      }
      if (clear && !after.empty()) return guillotine(before) && guillotine(after);
    }
  }
  return false;
}

}  // namespace

TEST_CASE("each sheet is drawn to scale with every cut where the plan has it") {
  const Shop shop({{inches(11), inches(14)}, {inches(8), inches(10)}, {inches(16), inches(20)}}, 3);
  const auto pages = oracle::read_pdf(shop.draw("sheet_pages"));
  const auto& sheets = shop.plan.boards[0].sheets;
  REQUIRE(pages.size() == sheets.size());
  for (std::size_t i = 0; i < pages.size(); ++i) {
    const oracle::PdfLine outline = sheet_outline(pages[i]);
    const double factor = (outline.x2 - outline.x1) / to_points(sheets[i].width);
    CHECK((outline.y2 - outline.y1) / to_points(sheets[i].height) == Approx(factor).epsilon(1e-4));
    const auto cuts = cuts_of(sheets[i], shop.cutter);
    const auto drawn = cut_lines(pages[i]);
    REQUIRE(drawn.size() == cuts.size());
    for (std::size_t k = 0; k < cuts.size(); ++k) {
      INFO("sheet " << i + 1 << ", cut " << k + 1);
      CHECK(drawn[k].x1 - outline.x1 == Approx(factor * to_points(cuts[k].from.x)).margin(0.02));
      CHECK(drawn[k].y1 - outline.y1 == Approx(factor * to_points(cuts[k].from.y)).margin(0.02));
      CHECK(drawn[k].x2 - outline.x1 == Approx(factor * to_points(cuts[k].to.x)).margin(0.02));
      CHECK(drawn[k].y2 - outline.y1 == Approx(factor * to_points(cuts[k].to.y)).margin(0.02));
    }
  }
}

TEST_CASE("everything that is drawn lies on the page") {
  const Shop shop({{inches(3), inches(4)}, {inches(2), inches(30)}}, 40);
  for (const oracle::PdfPage& page : oracle::read_pdf(shop.draw("sheet_pages_many"))) {
    for (const oracle::PdfLine& line : cut_lines(page)) {
      CHECK(std::min(line.x1, line.y1) > 18);
      CHECK(std::max(line.x1, line.x2) < page.width - 18);
      CHECK(std::max(line.y1, line.y2) < page.height - 18);
    }
  }
}

TEST_CASE("the table names the setting of the stop for every cut") {
  const Shop shop({{inches(16), inches(20)}}, 2);
  const std::string text = oracle::pdf_text(shop.draw("sheet_pages_text"));
  for (const char* words :
       {"Sheet 1 of 1", "sheet full, 32 x 40 in", "(trim)", "W-1", "16 x 20 in", "Fresh blade"}) {
    INFO(words);
    CHECK(text.find(words) != std::string::npos);
  }
}

TEST_CASE("every setting is printed whole, half a kerf and the scale's own error included") {
  Shop shop({{inches(11), inches(14)}, {inches(8), inches(10)}}, 2);
  shop.cutter.limits.kerf = sixty_fourths(2);
  shop.cutter.stop_zero = sixty_fourths(8);
  const std::string text = oracle::pdf_text(shop.draw("sheet_pages_settings"));
  INFO(text);
  CHECK(text.find("\xE2\x80\xA6") == std::string::npos);  // an ellipsis
  // 14 in and half of 1/32 in, on a scale that shows 1/8 in too much: 1/64 in past 14 1/8 in.
  CHECK(text.find("14 9/64 in") != std::string::npos);
}

TEST_CASE("a sheet with more cuts than its page has room for goes on on another page") {
  const Shop shop({{inches(1), inches(1)}}, 600);
  const std::string path = shop.draw("sheet_pages_long");
  CHECK(oracle::read_pdf(path).size() > shop.plan.boards[0].sheets.size());
  CHECK(oracle::pdf_text(path).find("more cuts") != std::string::npos);
}

TEST_CASE("the summary says boards, sheets, cost, bound, use and the off-cuts to keep") {
  const Shop shop({{inches(26), inches(28)}, {inches(8), inches(10)}}, 2);
  const std::string path = shop.draw("sheet_pages_summary", true);
  REQUIRE(oracle::read_pdf(path).size() == shop.plan.boards[0].sheets.size() + 1);
  const std::string text = oracle::run({"pdftotext", "-layout", "-l", "1", path, "-"}).out;
  INFO(text);
  const BoardUse use = use_of(shop.plan.boards[0], shop.stock, shop.cutter);
  char used[20];
  std::snprintf(used, sizeof used, "%.1f %%", 100 * use.used);
  for (const std::string& words :
       {std::string("Summary"), std::string("Oat"), std::string(used),
        cost_text(shop.plan.cost(), shop.stock), cost_text(shop.plan.bound(), shop.stock),
        std::string("no plan costs less")}) {
    INFO(words);
    CHECK(text.find(words) != std::string::npos);
  }
  const auto kept = kept_offcuts(shop.plan, shop.stock, shop.keep);
  REQUIRE(!kept.empty());
  for (const KeptOffcut& offcut : kept)
    CHECK(text.find(offcut.piece.id + ":") != std::string::npos);
}

TEST_CASE("the same plan gives the same bytes") {
  const Shop shop({{inches(11), inches(14)}}, 3);
  CHECK(render_sheet_pages(shop.report, {}) == render_sheet_pages(shop.report, {}));
}

TEST_CASE("the gcut patterns as drawn hold pieces of their instances worth the published optima") {
  // Beasley's instances, optima of Cintra and others: tests/data/gcut/SOURCE.md.
  const std::vector<std::int64_t> optima[] = {{56460, 60536, 61036, 61698, 246000, 238998, 242567,
                                               246633, 971100, 982025, 980096, 979986, 8997780},
                                              {58136, 60611, 61626, 62265, 246000, 240951, 245866,
                                               247787, 971100, 982025, 980096, 988694, 9000000}};
  const std::string folder = oracle::scratch_folder("gcut_patterns");
  for (int number = 1; number <= 13; ++number) {
    for (const bool may_turn : {false, true}) {
      INFO("gcut" << number << (may_turn ? ", pieces may turn" : ", pieces may not turn"));
      Stock stock;
      const SheetPlan plan = gcut_plan(number, may_turn, stock);
      const SheetCutter cutter;
      SheetPageOptions no_summary;
      no_summary.summary = false;
      const KeepRule nothing{inches(2000), inches(2000)};
      const std::string path =
          folder + "/gcut" + std::to_string(number) + (may_turn ? "-turning" : "-fixed") + ".pdf";
      oracle::write_file(path, render_sheet_pages({plan, stock, cutter, nothing}, no_summary));
      const GcutInstance instance = read_gcut(number, may_turn);
      const auto boxes = drawn_blanks(oracle::read_pdf(path).at(0), instance.width.ticks());
      std::int64_t area = 0;
      for (const Box& box : boxes) {
        const std::int64_t width = box.right - box.left, height = box.bottom - box.top;
        area += width * height;
        const bool known =
            std::any_of(instance.blanks.begin(), instance.blanks.end(), [&](const BlankSize& size) {
              const std::int64_t w = size.width.ticks(), h = size.height.ticks();
              return (w == width && h == height) || (may_turn && h == width && w == height);
            });
        CHECK(known);
        CHECK((box.left >= 0 && box.top >= 0 && box.right <= instance.width.ticks() &&
               box.bottom <= instance.height.ticks()));
      }
      CHECK(guillotine(boxes));
      CHECK(area == optima[may_turn ? 1 : 0].at(static_cast<std::size_t>(number - 1)));
    }
  }
}
