#include "render/template/template.h"

#include <algorithm>
#include <cmath>

#include "engine/cuts/refusal.h"
#include "render/template/pages.h"
#include "render/template/plot.h"
#include "render/template/sheet_furniture.h"

namespace mullion {
namespace {

constexpr Length side_margin = inches(1), beside_groove = sixty_fourths(16);  // for longer labels
constexpr Length top_margin = inches(2);
constexpr Length bottom_margin = inches(3);
constexpr Length least_page_width = inches(9);
constexpr double page_margin = 24;

std::vector<BoardView> views_of(const Job& job, const Cuts& cuts, const TemplateOptions& options) {
  std::vector<BoardView> views;
  BoardView all{&job, &cuts, {}, 1, options.locale};
  for (const BoardCuts& board : cuts.layers) {
    if (options.layer > 0 && board.layer->number != options.layer) continue;
    all.layers.push_back(&board);
    views.push_back({&job, &cuts, {&board}, 1, options.locale});
  }
  if (options.overlaid) return {all};
  if (options.format != paper::Format::pdf) views.resize(1);
  return views;
}

tl::unexpected<Problems> refuse(const char* code, std::string message) {
  return tl::unexpected(Problems{template_problem(code, std::move(message))});
}

// A layer that there is not, and what no cutter can cut.
Result<void> check(const Cuts& cuts, int layer) {
  if (layer > static_cast<int>(cuts.layers.size())) {
    return refuse("template-layer", "found layer " + std::to_string(layer) + "; the job has " +
                                        std::to_string(cuts.layers.size()));
  }
  Problems problems;
  for (const Refusal& refusal : cuts.refusals) {
    if (!refusal.is_of_the_cutter()) problems.push_back(problem_of(refusal, cuts));
  }
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  return {};
}

Result<Pages> pages_of(const BoardView& view, const TemplateOptions& options) {
  if (options.plot_only) {
    const auto plot = plot_of(*view.cuts, *view.layers.front(), options.kerf);
    if (!plot) return refuse("template-kerf", plot.error());
    return Pages(1, plot_page(*plot, title_of(view)));
  }
  if (options.corners_only) return corner_pages(view, options);
  if (options.sheet) return tiled_pages(view, options);
  return Pages{board_page(view, options)};
}

}  // namespace

TemplatePage template_page(const Mat& mat) {
  const Length margin = mat.grooves.empty() ? side_margin : side_margin + beside_groove;
  const Length width = std::max(mat.outer.width() + margin * 2, least_page_width);
  const Length height = mat.outer.height() + top_margin + bottom_margin;
  return {{width, height}, half_rounded_down(width - mat.outer.width()), top_margin};
}

SheetPage board_page(const BoardView& view, const TemplateOptions& options) {
  const TemplatePage page = template_page(*view.cuts->mat);
  const paper::Spot origin{paper::points(page.board_left), paper::points(page.board_top)};
  const paper::Transform placed = paper::shifted(origin.x, origin.y);
  const double width = paper::points(page.size.width) - 2 * page_margin;
  const double below = origin.y + paper::points(view.cuts->mat->outer.height()) + 72;
  paper::Drawing heading, foot;
  draw_heading(heading, view, {page_margin, page_margin, width, 0});
  draw_check_rules(foot, {page_margin, below}, view.locale);
  draw_cautions(foot, {page_margin, below + 76}, width, view);
  paper::Drawing content;
  content.place(std::move(heading), {}, "heading")
      .place(draw_board(view), placed, "board")
      .place(draw_board_dimensions(view), placed, "dimensions", view.locale.say("Dimensions"))
      .place(std::move(foot), {}, "check-rules", view.locale.say("Check rules"));
  SheetPage result{page.size, title_of(view), {}};
  result.drawing.place(std::move(content), undoing(options, page.size));
  return result;
}

paper::Transform undoing(const TemplateOptions& options, const paper::PageSize& size) {
  if (!options.printer) return {};
  const Correction& found = options.printer->correction;
  const double upright = std::sqrt(1 - found.skew * found.skew);
  const paper::Transform printed{found.scale_x,           0, found.scale_y * found.skew,
                                 found.scale_y * upright, 0, 0};
  const double x = paper::points(size.width) / 2, y = paper::points(size.height) / 2;
  return paper::then(paper::then(paper::shifted(-x, -y), paper::inverse(printed)),
                     paper::shifted(x, y));
}

Problem template_problem(std::string code, std::string message) {
  return {Severity::error, std::move(code), std::move(message), {}, {}};
}

Result<std::string> render_template(const Job& job, const Cuts& cuts,
                                    const TemplateOptions& options) {
  if (auto checked = check(cuts, options.layer); !checked) {
    return tl::unexpected(std::move(checked.error()));
  }
  if (options.plot_only && (options.sheet || options.corners_only || options.overlaid)) {
    return refuse("template-plot", "a plot holds one layer on a page of the board's size");
  }
  if (options.format != paper::Format::pdf && (options.sheet || options.corners_only)) {
    return refuse("template-format", "sheets to be joined are written as a PDF only");
  }
  Pages pages;
  for (const BoardView& view : views_of(job, cuts, options)) {
    Result<Pages> more = pages_of(view, options);
    if (!more) return tl::unexpected(std::move(more.error()));
    std::move(more->begin(), more->end(), std::back_inserter(pages));
  }
  return paper::write(
      options.format, pages,
      {options.locale.say("Template %1", job.reference), job.date, options.png_dpi});
}

Result<std::string> render_dxf(const Cuts& cuts, const TemplateOptions& options) {
  const int number = std::max(1, options.layer);
  if (auto checked = check(cuts, number); !checked) {
    return tl::unexpected(std::move(checked.error()));
  }
  const auto plot = plot_of(cuts, cuts.layers[static_cast<std::size_t>(number) - 1], options.kerf);
  if (!plot) return refuse("template-kerf", plot.error());
  return write_dxf(*plot);
}

}  // namespace mullion
