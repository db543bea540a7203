#include "render/sheetplan/summary_pages.h"

#include <array>
#include <cstdio>

#include "engine/sheets/inventory/take.h"
#include "engine/sheets/stock/size_text.h"
#include "render/sheetplan/type.h"

namespace mullion {
namespace {

using paper::Anchor;
using paper::TextStyle;

constexpr double row_height = 14;
const TextStyle plain{9, false, {0, 0, 0}, Anchor::left, 0};
const TextStyle strong{9, true, {0, 0, 0}, Anchor::left, 0};

// Right edges of the columns after the board's name, by the width of the page.
constexpr std::array<double, 7> columns = {0.41, 0.48, 0.57, 0.66, 0.74, 0.87, 1.0};
constexpr double name_width = 0.35;
using Cells = std::array<std::string, columns.size()>;

TextStyle to_the_right(TextStyle style) {
  style.anchor = Anchor::right;
  return style;
}

std::string percent(double share, const Locale& locale) {
  char text[32];
  std::snprintf(text, sizeof text, "%.1f", 100 * share);
  return locale.say("%1 %", locale.number(text));
}

class Summary {
 public:
  Summary(std::vector<paper::Page>& document, const SheetReport& report,
          const SheetPageOptions& options)
      : document_(document),
        report_(report),
        options_(options),
        locale_(options.locale),
        width_(paper::points(options.page.width) - 2 * margin) {}

  void draw() {
    start_page(locale_.say("Summary"));
    page_->text(paper::fitted(options_.title, width_ / 2, plain), {margin + width_, margin + 15},
                to_the_right(plain));
    heading();
    for (const BoardPlan& board : report_.plan.boards) add(board);
    totals();
    pulls();
    offcuts();
    missing();
  }

 private:
  const Scale& scale() const { return report_.plan.scale; }

  void start_page(const std::string& name) {
    document_.push_back({options_.page, name, {}});
    page_ = &document_.back().drawing;
    page_->text(name, {margin, margin + 15}, title_style);
    y_ = margin + 24;
  }

  // The baseline of the next row.
  double next() {
    if (y_ + row_height > paper::points(options_.page.height) - margin) {
      start_page(locale_.say("Summary, continued"));
    }
    return y_ += row_height;
  }

  void write(const std::string& text, const TextStyle& style = plain) {
    const double y = next();
    page_->text(paper::fitted(text, width_, style), {margin, y}, style);
  }

  void row(const std::string& name, const Cells& cells, const TextStyle& style, double indent) {
    const double y = next();
    page_->text(paper::fitted(name, width_ * name_width - indent, style), {margin + indent, y},
                style);
    for (std::size_t i = 0; i < cells.size(); ++i) {
      page_->text(cells[i], {margin + width_ * columns[i], y}, to_the_right(style));
    }
  }

  void rule() {
    page_->stroke(paper::line({margin, y_ + 4}, {margin + width_, y_ + 4}),
                  {0.4, {0, 0, 0}, {}, 1});
    y_ += 3;
  }

  void heading() {
    Cells names;
    constexpr std::array<const char*, columns.size()> words = {
        mark("blanks"), mark("sheets"), mark("off-cuts"), mark("fallouts"),
        mark("used"),   mark("cost"),   mark("at least")};
    for (std::size_t i = 0; i < words.size(); ++i) names[i] = locale_.say(words[i]);
    row(locale_.say("Board"), names, strong, 16);
    rule();
  }

  void add(const BoardPlan& board) {
    const BoardUse use = use_of(board, report_.stock, report_.cutter);
    row(describe(board.board, scale(), locale_),
        {std::to_string(use.blanks), std::to_string(use.sheets), std::to_string(use.offcuts),
         std::to_string(use.fallouts), percent(use.used, locale_),
         cost_text(board.cost, report_.stock, locale_),
         board.missing.empty() ? cost_text(board.bound, report_.stock, locale_) : ""},
        plain, 16);
    page_->fill(paper::rectangle({margin, y_ - 8, 11, 9}), {board.board.colour, 1});
    page_->stroke(paper::rectangle({margin, y_ - 8, 11, 9}), {0.4, {0, 0, 0}, {}, 1});
    all_.blanks += use.blanks;
    all_.sheets += use.sheets;
    all_.offcuts += use.offcuts;
    all_.fallouts += use.fallouts;
    all_.blanks_of_fallouts += use.blanks_of_fallouts;
    all_.square_inches_saved += use.square_inches_saved;
    all_.cuts += use.cuts;
    all_.settings += use.settings;
    if (board.cost_without_fallouts) saved_ += *board.cost_without_fallouts - board.cost;
    complete_ = complete_ && board.missing.empty();
  }

  void totals() {
    rule();
    row(locale_.say("In all"),
        {std::to_string(all_.blanks), std::to_string(all_.sheets), std::to_string(all_.offcuts),
         std::to_string(all_.fallouts), "", cost_text(report_.plan.cost(), report_.stock, locale_),
         complete_ ? cost_text(report_.plan.bound(), report_.stock, locale_) : ""},
        strong, 16);
    y_ += row_height / 2;
    write(locale_.say("%1 cuts at %2 settings of the stop. \"At least\": no plan costs less.",
                      all_.cuts, all_.settings));
    if (all_.blanks_of_fallouts == 0) return;
    const std::string blanks = locale_.plural(all_.blanks_of_fallouts, "%1 blank", "%1 blanks");
    const std::string area = area_text(all_.square_inches_saved, scale().unit, locale_);
    write(saved_ > 0 ? locale_.say("Fallouts give %1 and save %2 of board, %3.", blanks, area,
                                   cost_text(saved_, report_.stock, locale_))
                     : locale_.say("Fallouts give %1 and save %2 of board.", blanks, area));
  }

  void offcuts() {
    const std::vector<KeptOffcut> kept = kept_offcuts(report_.plan, report_.stock, report_.keep);
    if (kept.empty()) return;
    y_ += row_height / 2;
    write(locale_.say("Off-cuts to keep (write the name on each)"), strong);
    for (const KeptOffcut& offcut : kept) {
      write(locale_.say("%1: %2, %3, %4", offcut.piece.id, offcut.piece.board.name,
                        size_text(offcut.piece.width, offcut.piece.height, scale(), locale_),
                        origin_of(offcut, report_.plan, locale_)));
    }
  }

  void pulls() {
    const PullList list = pull_list(report_.plan, report_.stock, report_.rest);
    const auto section = [this](const char* title, bool& begun) {
      if (begun) return;
      begun = true;
      y_ += row_height / 2;
      write(locale_.say(title), strong);
    };
    bool pulled = false, bought = false, shared = false;
    for (const PullLine& line : list.lines) {
      if (line.pull == 0) continue;
      section(mark("Take from the rack"), pulled);
      write(pull_text(line, scale(), locale_));
    }
    for (const PullLine& line : list.purchases()) {
      section(mark("Buy"), bought);
      write(purchase_text(line, report_.stock, scale(), locale_));
    }
    if (list.orders.size() < 2) return;
    section(mark("Board by order"), shared);
    for (const OrderShare& order : list.orders) {
      const double y = next();
      const std::string cost = cost_text(order.cost, report_.stock, locale_);
      page_->text(paper::fitted(order.order, width_ * name_width, plain), {margin, y}, plain);
      page_->text(cost, {margin + width_ * columns[3], y}, to_the_right(plain));
    }
  }

  void missing() {
    if (complete_) return;
    y_ += row_height / 2;
    write(locale_.say("Not made, since a board is short"), strong);
    for (const LeftOut& left : report_.plan.left_out) {
      write(left_out_text(left, scale(), locale_));
    }
    y_ += row_height / 2;
    write(locale_.say("Blanks that are missing"), strong);
    for (const BoardPlan& board : report_.plan.boards) {
      for (const BlankCopy& copy : board.missing) {
        const BlankOrder& line = board.lines[static_cast<std::size_t>(copy.line)];
        write(locale_.say("%1: %2, %3, copy %4, %5", board.board.name, line.order, line.layer,
                          copy.copy, size_text(line.width, line.height, scale(), locale_)));
      }
    }
  }

  std::vector<paper::Page>& document_;
  const SheetReport& report_;
  const SheetPageOptions& options_;
  const Locale& locale_;
  double width_, y_ = 0;
  paper::Drawing* page_ = nullptr;
  BoardUse all_;
  std::int64_t saved_ = 0;
  bool complete_ = true;
};

}  // namespace

void add_summary(std::vector<paper::Page>& document, const SheetReport& report,
                 const SheetPageOptions& options) {
  Summary(document, report, options).draw();
}

}  // namespace mullion
