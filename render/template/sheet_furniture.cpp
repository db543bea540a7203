#include "render/template/sheet_furniture.h"

#include <algorithm>
#include <array>
#include <numbers>
#include <string>

#include "engine/length/format.h"
#include "render/template/join_marks.h"

namespace mullion {
namespace {

using paper::Anchor;
using paper::Pen;
using paper::Spot;
using paper::TextStyle;

const Pen rule_pen{0.6, {0, 0, 0}, {}, 1};
const TextStyle small{7.5, false, {0x30, 0x30, 0x30}, Anchor::left, 0};

const TextStyle map_letters{26, true, {0, 0, 0}, Anchor::right, 0};

void draw_rule(paper::Drawing& drawing, Spot start, Length step, int steps,
               const std::string& label) {
  const double length = paper::points(step * steps);
  drawing.stroke(paper::line(start, {start.x + length, start.y}), rule_pen);
  for (int i = 0; i <= steps; ++i) {
    const double x = start.x + paper::points(step * i);
    const double height = i == 0 || i == steps ? 9 : i * 2 == steps ? 7 : 4;
    drawing.stroke(paper::line({x, start.y}, {x, start.y - height}), rule_pen);
  }
  drawing.text(label, {start.x + length + 5, start.y}, small);
}

// The layers of an overlaid drawing in the colours of their cut lines; in smaller letters where
// there are many, or their names are long.
void draw_legend(paper::Drawing& drawing, const BoardView& view, const paper::Box& box) {
  constexpr double largest = 9, before = 22, after = 14;
  std::vector<std::string> titles;
  double letters = 0;
  for (const BoardCuts* board : view.layers) {
    titles.push_back(layer_title(view, *board) + ", " + board->layer->board.board);
    letters += paper::text_width(titles.back(), {largest, true, {0, 0, 0}, Anchor::left, 0});
  }
  const double room = box.width - 2 - (before + after) * static_cast<double>(titles.size());
  const double size = std::clamp(largest * room / letters, 6.0, largest);
  double x = box.x;
  for (std::size_t i = 0; i < view.layers.size(); ++i) {
    Pen pen = cut_pen_of(view, i);
    pen.width = 1.5;
    const TextStyle style{size, true, pen.colour, Anchor::left, 0};
    const std::string shown = paper::fitted(titles[i], box.x + box.width - x - 24, style);
    drawing.stroke(paper::line({x, box.y + 33}, {x + 18, box.y + 33}), pen);
    drawing.text(shown, {x + before, box.y + 36}, style);
    x += before + paper::text_width(shown, style) + after;
  }
}

}  // namespace

void draw_heading(paper::Drawing& drawing, const BoardView& view, const paper::Box& box) {
  const Job& job = *view.job;
  const BoardCuts& board = *view.layers.front();
  const MatLayer& layer = *board.layer;
  const Locale& locale = view.locale;
  const std::string mirror = locale.say("BACK OF BOARD");
  const TextStyle large{17, true, {0, 0, 0}, Anchor::left, 0};
  drawing.text(mirror, {box.x, box.y + 16}, large);
  const double after = box.x + paper::text_width(mirror, large) + 10;
  const TextStyle plain{8.5, false, {0, 0, 0}, Anchor::left, 0};
  const double rest = box.x + box.width - after;
  drawing.text(paper::fitted(locale.say("mirrored: the board lies face down"), rest, plain),
               {after, box.y + 8}, plain);
  drawing.text(paper::fitted(locale.say("print one-sided at 100 %, no scaling"), rest, plain),
               {after, box.y + 18}, plain);

  const TextStyle strong{10.5, true, {0, 0, 0}, Anchor::left, 0};
  if (view.layers.size() > 1) {
    draw_legend(drawing, view, box);
  } else {
    const std::string line =
        layer_title(view, board) + middle_dot + locale.say("board %1", layer.board.board);
    drawing.text(paper::fitted(line, box.width - 20, strong), {box.x + 18, box.y + 36}, strong);
    drawing.fill(paper::rectangle({box.x, box.y + 27, 12, 10}), {layer.board.colour, 1});
    drawing.stroke(paper::rectangle({box.x, box.y + 27, 12, 10}), {0.4, {0, 0, 0}, {}, 1});
  }
  std::string job_line = job.reference;
  if (!job.title.empty()) job_line += middle_dot + job.title;
  if (!job.customer.empty()) job_line += middle_dot + job.customer;
  job_line +=
      middle_dot + locale.say("%1 x %2, %3 thick", locale.described(board.blank.width(), job.scale),
                              locale.described(board.blank.height(), job.scale),
                              locale.measured(layer.board.thickness, job.scale.unit));
  const Length trim = board.blank.left - board.edges.left;
  if (trim > Length()) {
    const std::string taped = locale.say("taped behind the top mat: %1 smaller on each side",
                                         locale.described(trim, job.scale));
    if (paper::text_width(job_line + middle_dot + taped, plain) < box.width) {
      job_line += middle_dot + taped;
    } else {
      drawing.text(paper::fitted(taped, box.width, plain), {box.x, box.y + 61}, plain);
    }
  }
  drawing.text(paper::fitted(job_line, box.width, plain), {box.x, box.y + 50}, plain);
}

void draw_check_rules(paper::Drawing& drawing, Spot upper_left, const Locale& locale) {
  draw_rule(drawing, {upper_left.x, upper_left.y + 14}, sixty_fourths(16), 16,
            locale.exact_length(inches(4), Unit::inch));
  draw_rule(drawing, {upper_left.x, upper_left.y + 38}, millimetres(5), 20,
            locale.exact_length(millimetres(100), Unit::millimetre));
  const double side = paper::points(inches(1));
  const double x = upper_left.x + paper::points(inches(4)) + 60;
  drawing.stroke(paper::rectangle({x, upper_left.y, side, side}), rule_pen);
  drawing.stroke(paper::line({x, upper_left.y + side}, {x + side, upper_left.y}),
                 {0.3, {0, 0, 0}, {}, 1});
  drawing.text(locale.say("1 in square:"), {x + side + 6, upper_left.y + 12}, small);
  drawing.text(locale.say("diagonal %1 in", locale.number("1.414")),
               {x + side + 6, upper_left.y + 22}, small);
  drawing.text("= " + locale.number("35.9") + " mm", {x + side + 6, upper_left.y + 32}, small);
  drawing.text(locale.say("Measure both rules and the diagonal before you cut."),
               {upper_left.x, upper_left.y + 52}, small);
}

void draw_cautions(paper::Drawing& drawing, Spot upper_left, double width, const BoardView& view) {
  std::vector<const char*> lines{
      mark("Dimensions: above from the left edge, below from the right edge, left from the top "
           "edge, right from the bottom edge."),
      mark("Solid: cut line on the back. Dashed: where the bevel comes out on the face. Hatched: "
           "waste.")};
  if (view.grooves() != nullptr) {
    lines.push_back(mark(
        "V-groove (dimensions with V): cut its solid line first; shave the panel's edge on the "
        "face by its width; tape it back."));
  }
  lines.insert(lines.end(),
               {mark("Fresh blade, backing sheet under bevel cuts, cut away from your hands, test "
                     "cut on scrap; follow the maker's instructions."),
                mark("Tape this sheet to the board's back only, never to a picture.")});
  double y = upper_left.y + 8;
  for (const char* line : lines) {
    drawing.text(paper::fitted(view.locale.say(line), width, small), {upper_left.x, y}, small);
    y += 10;
  }
}

const Pen furniture_pen{0.4, {0, 0, 0}, {}, 1};

double add_double_rule(Furniture& furniture, Spot upper_left, double width, const Locale& locale) {
  const int inch_count = width >= paper::points(inches(4)) + 34 ? 4 : 2;
  const int centimetres = inch_count == 4 ? 10 : 5;
  const double y = upper_left.y + 18;
  paper::Path& lines = furniture.lines;
  for (int i = 0; i <= inch_count * 8; ++i) {
    const double x = upper_left.x + paper::points(sixty_fourths(8) * i);
    lines.append(paper::line({x, y}, {x, y + (i % 8 == 0 ? 9 : i % 4 == 0 ? 6 : 3.5)}));
  }
  for (int i = 0; i <= centimetres * 2; ++i) {
    const double x = upper_left.x + paper::points(millimetres(5) * i);
    lines.append(paper::line({x, y}, {x, y - (i % (centimetres * 2) == 0 ? 9
                                              : i % 2 == 0               ? 6
                                                                         : 3.5)}));
  }
  const double length = paper::points(inches(inch_count));
  lines.append(paper::line({upper_left.x, y}, {upper_left.x + length, y}));
  const double metric_end = upper_left.x + paper::points(millimetres(10)) * centimetres;
  TextStyle before = small;
  before.anchor = Anchor::right;
  furniture.texts
      .text(locale.exact_length(millimetres(10) * centimetres, Unit::millimetre),
            {metric_end - 4, y - 9}, before)
      .text(locale.exact_length(inches(inch_count), Unit::inch), {upper_left.x + length + 4, y + 8},
            small);
  return length + 4 + paper::text_width(locale.exact_length(inches(4), Unit::inch), small);
}

double add_diagonal_square(Furniture& furniture, Spot upper_left, const Locale& locale) {
  const double side = paper::points(millimetres(20)) / std::numbers::sqrt2;
  const paper::Box box{upper_left.x, upper_left.y, side, side};
  const double right = box.x + side, bottom = box.y + side;
  furniture.lines.append(paper::rectangle(box))
      .append(paper::line({box.x, box.y}, {right, bottom}))
      .append(paper::line({box.x, bottom}, {right, box.y}));
  const std::string diagonals = locale.say("diagonals");
  furniture.texts.text(locale.say("both"), {right + 4, box.y + 12}, small)
      .text(diagonals, {right + 4, box.y + 21}, small)
      .text(locale.exact_length(millimetres(20), Unit::millimetre), {right + 4, box.y + 30}, small);
  return side + 4 + paper::text_width(diagonals, small);
}

SheetMap::SheetMap(const paper::Tiling& tiling, const paper::Box& box) {
  const std::vector<Length>&columns = tiling.columns, &rows = tiling.rows;
  const double wide = paper::points(columns.back() - columns.front());
  const double high = paper::points(rows.back() - rows.front());
  const std::string longest = sheet_name(rows.size() - 2, columns.size() - 2);
  const double letters = paper::text_width(longest, map_letters) + 8;
  named_ = box.width > letters + 36;
  const double scale = std::min((box.width - (named_ ? letters : 0)) / wide, box.height / high);
  const double left = box.x + box.width - wide * scale;
  for (const Length edge : columns) {
    x_.push_back(left + paper::points(edge - columns.front()) * scale);
  }
  for (const Length edge : rows) y_.push_back(box.y + paper::points(edge - rows.front()) * scale);
  paper::Path lines;
  for (const double x : x_) lines.append(paper::line({x, y_.front()}, {x, y_.back()}));
  for (const double y : y_) lines.append(paper::line({x_.front(), y}, {x_.back(), y}));
  paper::Drawing grid;
  grid.stroke(std::move(lines), furniture_pen);
  grid_ = std::make_shared<const paper::Drawing>(std::move(grid));
}

void SheetMap::draw(paper::Drawing& drawing, std::size_t row, std::size_t column) const {
  drawing.place({grid_, {}, {}, "sheet-map", "", true});
  drawing.fill(
      paper::rectangle({x_[column], y_[row], x_[column + 1] - x_[column], y_[row + 1] - y_[row]}),
      {{0x60, 0x60, 0x60}, 1});
  if (named_) {
    drawing.text(sheet_name(row, column), {x_.front() - 8, y_.front() + 30}, map_letters);
  }
}

std::string sheet_subject(const BoardView& view) {
  std::string subject = view.job->reference;
  if (!subject.empty()) subject += ", " + view.locale.say("revision %1", view.job->revision);
  for (const BoardCuts* board : view.layers) {
    subject += (subject.empty() ? "" : middle_dot) + layer_title(view, *board) + ", " +
               board->layer->board.board;
  }
  return subject;
}

}  // namespace mullion
