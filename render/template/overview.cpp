#include "render/template/overview.h"

#include <algorithm>
#include <cstdio>
#include <optional>
#include <set>
#include <tuple>

#include "engine/mat/rect.h"
#include "render/paper/sheet_size.h"
#include "render/template/ink.h"
#include "render/template/sheet_furniture.h"

namespace mullion {
namespace {

using paper::Anchor;
using paper::Box;
using paper::Drawing;
using paper::Spot;
using paper::TextStyle;

constexpr double margin = 36, heading = 60, around = 52;
constexpr double line_height = 11.5;
const TextStyle step_style{8.5, false, {0, 0, 0}, Anchor::left, 0};

paper::PageSize page_size(const BoardView& view, const TemplateOptions& options) {
  paper::PageSize size = paper::usual_page(view.job->scale.unit, options.locale);
  if (options.sheet && !options.sheet->roll) {
    const Length shorter = std::min(options.sheet->width, options.sheet->height);
    const Length longer = std::max(options.sheet->width, options.sheet->height);
    if (shorter >= inches(8) && longer <= inches(17)) size = {shorter, longer};
  }
  const Rect& mat = view.cuts->mat->outer;
  if (mat.width() > mat.height()) std::swap(size.width, size.height);
  return size;
}

std::string scale_text(double scale, const Locale& locale) {
  char ratio[32];
  std::snprintf(ratio, sizeof ratio, "%.1f", 1 / scale);
  return locale.say("Overview, scale 1 : %1, not for measuring", locale.number(ratio));
}

// Where the openings' numbers stand.
std::vector<Box> number_boxes(const BoardView& view) {
  std::vector<Box> boxes;
  for (const Window& window : view.layers.back()->windows()) {
    const auto [x, y] = label_spot(window, view);
    boxes.push_back({x - 13, y - 12, 26, 24});
  }
  return boxes;
}

// Where the part's name hides no number and no other name: a corner, or else the middle of an edge
// or of the part. Nothing where there is no such place.
std::optional<Spot> place_name(const Box& part, double name, double size,
                               const std::vector<Box>& taken) {
  const double left = part.x + 2.5, right = part.x + part.width - name - 2.5;
  const double high = part.y + size, low = part.y + part.height - 2.5;
  const double middle = (left + right) / 2, half = (high + low) / 2;
  for (const Spot& spot :
       {Spot{right, low}, Spot{left, low}, Spot{right, high}, Spot{left, high}, Spot{middle, low},
        Spot{middle, high}, Spot{left, half}, Spot{right, half}, Spot{middle, half}}) {
    const Box box{spot.x - 1, spot.y - size, name + 2, size * 1.25};
    if (std::none_of(taken.begin(), taken.end(),
                     [&](const Box& other) { return paper::overlap(box, other); })) {
      return spot;
    }
  }
  return std::nullopt;
}

// Neighbours share a line, which is drawn once, so that its dashes show.
paper::Path edges_of(const std::vector<OverviewPart>& parts, double scale) {
  std::set<std::tuple<Length, Length, Length, Length>> edges;
  for (const OverviewPart& part : parts) {
    const Rect& r = part.rect;
    edges.insert({{r.left, r.top, r.right, r.top},
                  {r.left, r.bottom, r.right, r.bottom},
                  {r.left, r.top, r.left, r.bottom},
                  {r.right, r.top, r.right, r.bottom}});
  }
  paper::Path path;
  const auto at = [&](Length length) { return paper::points(length) * scale; };
  for (const auto& [x1, y1, x2, y2] : edges) {
    path.append(paper::line({at(x1), at(y1)}, {at(x2), at(y2)}));
  }
  return path;
}

// `labels_beside` are the labels beside the board.
void draw_parts(Drawing& drawing, const std::vector<OverviewPart>& parts, const BoardView& view,
                const std::vector<Box>& labels_beside) {
  const Colour red{0xc0, 0x30, 0x30};
  drawing.stroke(edges_of(parts, view.scale), {0.5, red, {3, 2}, 1});
  std::vector<Box> taken = number_boxes(view);
  taken.insert(taken.end(), labels_beside.begin(), labels_beside.end());
  for (const OverviewPart& part : parts) {
    const auto at = [&](Length length) { return paper::points(length) * view.scale; };
    const Box box{at(part.rect.left), at(part.rect.top), at(part.rect.width()),
                  at(part.rect.height())};
    const double largest = std::clamp(std::min(box.width, box.height) / 4, 4.5, 9.0);
    for (const double size : {largest, 4.5}) {
      const TextStyle style{size, true, red, Anchor::left, 0};
      const double name = paper::text_width(part.name, style);
      const std::optional<Spot> spot = place_name(box, name, size, taken);
      if (!spot) continue;
      const Box letters{spot->x - 1, spot->y - size * 0.8, name + 2, size};
      drawing.fill(paper::rectangle(letters), {{255, 255, 255}, 0.8});
      drawing.text(part.name, *spot, style);
      taken.push_back(letters);
      break;
    }
  }
}

double draw_steps(Drawing& drawing, const std::vector<std::string>& steps, Spot corner,
                  double width) {
  double y = corner.y;
  int number = 0;
  for (const std::string& step : steps) {
    const paper::Text text(step, step_style, width - 16);
    drawing.text(std::to_string(++number) + ".", {corner.x, y + text.baseline()}, step_style);
    drawing.text(text, {corner.x + 16, y + text.baseline()});
    y += text.height() + 2;
  }
  return y - corner.y;
}

}  // namespace

SheetPage overview_page(const BoardView& view, const TemplateOptions& options,
                        const Overview& overview) {
  SheetPage page{page_size(view, options), overview.title, {}};
  const double width = paper::points(page.size.width) - 2 * margin;
  const double height = paper::points(page.size.height) - 2 * margin;
  const double board_width = paper::points(view.cuts->mat->outer.width());
  const double board_height = paper::points(view.cuts->mat->outer.height());
  BoardView small = view;
  std::vector<std::string> words = overview.steps;
  Drawing steps, dimensions;
  double steps_height = 0;
  for (bool complete = false; !complete;) {
    steps = {};
    steps_height = draw_steps(steps, words, {0, 0}, width);
    const double foot = steps_height + (view.grooves() == nullptr ? 4 : 5) * line_height + 24;
    small.scale = std::min({(width - 2 * around) / board_width,
                            (height - heading - foot - 2 * around) / board_height, 0.999});
    dimensions = draw_board_dimensions(small, &complete);
    if (complete || words.size() > overview.steps.size()) break;
    words.push_back(view.locale.say(
        "An edge has more lines than there is room for beside it: their distances stand at the "
        "lines on the sheets."));
  }
  const double left = margin + (width - board_width * small.scale) / 2;
  const double top = margin + heading + around;
  const paper::Transform placed = paper::shifted(left, top);
  Drawing parts;
  Ink beside;
  add_ink(beside, dimensions);
  draw_parts(parts, overview.parts, small, beside.labels);
  Drawing content, cautions;
  draw_heading(content, view, {margin, margin, width, 0});
  const double below = top + board_height * small.scale + around;
  content.text(scale_text(small.scale, view.locale), {margin, below + 10},
               {8.5, true, {0, 0, 0}, Anchor::left, 0});
  draw_cautions(cautions, {0, 0}, width, view);
  content.place(draw_board(small), placed, "board")
      .place(std::move(dimensions), placed, "dimensions", view.locale.say("Dimensions"))
      .place(std::move(parts), placed, "sheets", view.locale.say("Joins of the sheets"))
      .place(std::move(steps), paper::shifted(margin, below + 18), "steps")
      .place(std::move(cautions), paper::shifted(margin, below + 22 + steps_height), "cautions");
  page.drawing = std::move(content);
  return page;
}

}  // namespace mullion
