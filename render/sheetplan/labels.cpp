#include "render/sheetplan/labels.h"

#include <algorithm>

#include "engine/sheets/report/report.h"
#include "engine/sheets/stock/size_text.h"
#include "render/paper/document.h"
#include "render/sheetplan/scan_code.h"

namespace mullion {
namespace {

using paper::Anchor;
using paper::Box;
using paper::TextStyle;

using paper::a4_page;
using paper::letter_page;

constexpr Length tenths_of_mm(std::int64_t n) {
  return Length::from_ticks(n * ticks_per_mm / 10);
}

constexpr double padding = 5;        // points
constexpr double quiet_modules = 4;  // ISO/IEC 18004: the light margin around a QR Code
constexpr double widest_code = 60;
constexpr double least_label_type = 0.6;  // a longer line is set smaller, down to this
// Of a page, that printers leave white: 1/6 in; common practice, no source.
constexpr double unprinted = 12;

// What of a label at the edge of its page a printer reaches.
Box printable(const Box& label, const paper::PageSize& page) {
  const double left = std::max(label.x, unprinted), top = std::max(label.y, unprinted);
  const double right = std::min(label.x + label.width, paper::points(page.width) - unprinted);
  const double bottom = std::min(label.y + label.height, paper::points(page.height) - unprinted);
  return {left, top, right - left, bottom - top};
}

double draw_code(paper::Drawing& page, const std::string& code, const Box& label) {
  const auto rows = scan_code(code);
  const double side = std::min(widest_code, label.height - 2);
  const double module = side / (static_cast<double>(rows.size()) + 2 * quiet_modules);
  const double left = label.x + label.width - side + quiet_modules * module;
  const double top = label.y + (label.height - side) / 2 + quiet_modules * module;
  for (std::size_t y = 0; y < rows.size(); ++y) {
    // Runs of dark modules are one box each, so that no hairline parts them.
    for (std::size_t x = 0; x < rows[y].size();) {
      if (!rows[y][x]) {
        ++x;
        continue;
      }
      std::size_t end = x;
      while (end < rows[y].size() && rows[y][end]) ++end;
      page.fill(paper::rectangle({left + static_cast<double>(x) * module,
                                  top + static_cast<double>(y) * module,
                                  static_cast<double>(end - x) * module, module}),
                {{0, 0, 0}, 1});
      x = end;
    }
  }
  return side;
}

using LabelLine = std::pair<std::string, TextStyle>;

bool fits(const std::string& text, double room, const TextStyle& style) {
  return paper::fitted(text, room, style) == text;
}

// A text with its middle left out, since a reference ends in what tells it from the next one.
std::string without_middle(const std::string& text, double room, const TextStyle& style) {
  const std::vector<std::size_t> letters = [&text] {
    std::vector<std::size_t> starts;
    for (std::size_t i = 0; i < text.size(); ++i) {
      if ((static_cast<unsigned char>(text[i]) & 0xC0) != 0x80) starts.push_back(i);
    }
    return starts;
  }();
  for (std::size_t kept = letters.size(); kept > 1; --kept) {
    const std::size_t tail = (kept + 1) / 2;
    const std::string shorter = text.substr(0, letters[kept - tail]) + "\xE2\x80\xA6" +
                                text.substr(letters[letters.size() - tail]);
    if (fits(shorter, room, style)) return shorter;
  }
  return text;
}

// The reference on one line, or on two, smaller, broken where it says best.
void add_reference(std::vector<LabelLine>& lines, const std::string& text, double room,
                   const TextStyle& style) {
  const TextStyle narrow = paper::narrowed(text, room, style, least_label_type);
  if (fits(text, room, narrow)) {
    lines.emplace_back(text, style);
    return;
  }
  std::size_t end = 0;  // of the first line
  for (std::size_t i = 1; i < text.size(); ++i) {
    const bool letter = (static_cast<unsigned char>(text[i]) & 0xC0) != 0x80;
    if (!letter || !fits(text.substr(0, i), room, narrow)) continue;
    const bool after_mark = std::string_view(" -_/.,").find(text[i - 1]) != std::string_view::npos;
    if (after_mark || i <= text.size() / 2) end = i;
  }
  if (end == 0) end = text.size();
  lines.emplace_back(text.substr(0, end), narrow);
  const std::string rest = text.substr(end);
  if (!rest.empty()) {
    lines.emplace_back(fits(rest, room, narrow) ? rest : without_middle(rest, room, narrow),
                       narrow);
  }
}

// What stands on a label: a name, which is never cut off at its end, a size, and small lines.
struct LabelText {
  std::string name, size;
  std::vector<std::string> lines;
  std::string code;
};

void draw_label(paper::Drawing& page, const LabelText& label, const Box& box) {
  const double room = box.width - draw_code(page, label.code, box) - 2 * padding;
  const TextStyle strong{10, true, {0, 0, 0}, Anchor::left, 0};
  const TextStyle plain{7.5, false, {0, 0, 0}, Anchor::left, 0};
  std::vector<LabelLine> lines;
  add_reference(lines, label.name, room, strong);
  lines.emplace_back(label.size, strong);
  for (const std::string& line : label.lines) lines.emplace_back(line, plain);
  const auto count = static_cast<double>(lines.size());
  const double leading = std::min(13.0, (box.height - 2 * padding) / count);
  double y = box.y + (box.height - count * leading) / 2 + 0.75 * leading;
  for (const auto& [text, style] : lines) {
    const TextStyle fitting = paper::narrowed(text, room, style, least_label_type);
    page.text(paper::fitted(text, room, fitting), {box.x + padding, y}, fitting);
    y += leading;
  }
}

std::string render_all(const std::vector<LabelText>& labels, const LabelSheet& sheet,
                       const LabelOptions& options) {
  std::vector<paper::Page> document;
  const auto each = static_cast<std::size_t>(sheet.columns) * sheet.rows;
  const auto skip = static_cast<std::size_t>(options.skip) % each;
  const std::size_t pages = std::max<std::size_t>((labels.size() + skip + each - 1) / each, 1);
  for (std::size_t page = 0; page < pages; ++page) {
    document.push_back({sheet.page, options.locale.say("Labels, sheet %1", page + 1), {}});
    for (std::size_t place = 0; place < each; ++place) {
      const std::size_t at = page * each + place;
      if (at < skip || at - skip >= labels.size()) continue;
      const auto column = static_cast<int>(place) % sheet.columns;
      const auto row = static_cast<int>(place) / sheet.columns;
      const Box label{paper::points(sheet.left + sheet.step_right * column),
                      paper::points(sheet.top + sheet.step_down * row), paper::points(sheet.width),
                      paper::points(sheet.height)};
      draw_label(document.back().drawing, labels[at - skip], printable(label, sheet.page));
    }
  }
  return paper::write_pdf(document, {options.locale.say("Labels"), options.date});
}

}  // namespace

const std::vector<LabelSheet>& label_sheets() {
  static const std::vector<LabelSheet> sheets = {
      {"letter-30", letter_page, 3, 10, sixty_fourths(12), sixty_fourths(32), sixty_fourths(168),
       inches(1), sixty_fourths(176), inches(1)},
      {"letter-10", letter_page, 2, 5, sixty_fourths(10), sixty_fourths(32), inches(4), inches(2),
       sixty_fourths(268), inches(2)},
      {"a4-24", a4_page, 3, 8, millimetres(0), tenths_of_mm(5), millimetres(70), millimetres(37),
       millimetres(70), millimetres(37)},
      {"a4-21", a4_page, 3, 7, tenths_of_mm(72), tenths_of_mm(151), tenths_of_mm(635),
       tenths_of_mm(381), tenths_of_mm(660), tenths_of_mm(381)},
      {"a4-10", a4_page, 2, 5, millimetres(0), millimetres(6), millimetres(105), millimetres(57),
       millimetres(105), millimetres(57)},
  };
  return sheets;
}

const LabelSheet* find_label_sheet(std::string_view name) {
  for (const LabelSheet& sheet : label_sheets()) {
    if (sheet.name == name) return &sheet;
  }
  return nullptr;
}

std::string render_labels(const std::vector<BlankLabel>& labels, const LabelSheet& sheet,
                          const LabelOptions& options) {
  const Locale& locale = options.locale;
  std::vector<LabelText> texts;
  for (const BlankLabel& label : labels) {
    texts.push_back({label.order,
                     size_text(label.width, label.height, options.scale, locale),
                     {label.layer + ", " + label.board,
                      locale.say("%1 of %2, sheet %3", label.copy, label.copies, label.sheet)},
                     label.code});
  }
  return render_all(texts, sheet, options);
}

std::vector<RackLabel> rack_labels(const std::vector<KeptOffcut>& kept, const SheetPlan& plan,
                                   const Locale& locale) {
  std::vector<RackLabel> labels;
  for (const KeptOffcut& offcut : kept) {
    const auto board = static_cast<std::size_t>(offcut.board);
    const auto line = static_cast<std::size_t>(offcut.line);
    labels.push_back(
        {offcut.piece, offcut.sheet > 0
                           ? origin_of(offcut, plan, locale)
                           : locale.say("fallout of %1", plan.boards[board].lines[line].order)});
  }
  return labels;
}

std::string render_rack_labels(const std::vector<RackLabel>& labels, const LabelSheet& sheet,
                               const LabelOptions& options) {
  std::vector<LabelText> texts;
  for (const RackLabel& label : labels) {
    const StockPiece& piece = label.piece;
    LabelText text{piece.id,
                   size_text(piece.width, piece.height, options.scale, options.locale),
                   {describe(piece.board, options.scale, options.locale)},
                   piece.id};
    if (!label.origin.empty()) text.lines.push_back(label.origin);
    for (int i = 0; i < piece.on_hand.value_or(1); ++i) texts.push_back(text);
  }
  return render_all(texts, sheet, options);
}

}  // namespace mullion
