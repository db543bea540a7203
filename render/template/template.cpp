#include "render/template/template.h"

#include <algorithm>

#include "engine/cuts/refusal.h"
#include "render/template/corrected.h"
#include "render/template/light.h"
#include "render/template/pages.h"
#include "render/template/plot.h"
#include "render/template/sheet_furniture.h"
#include "render/template/sticks.h"

namespace mullion {
namespace {

constexpr Length side_margin = inches(1), beside_groove = sixty_fourths(16);  // for longer labels
constexpr Length top_margin = inches(2);
constexpr Length bottom_margin = inches(3);
constexpr Length least_page_width = inches(9);
constexpr double page_margin = 24;

// Lines of different layers lie on one another, or so far apart that a pencil tells them.
bool legible_together(const BoardView& view) {
  constexpr Length least = sixty_fourths(8);
  for (std::size_t i = 0; i + 1 < view.layers.size(); ++i) {
    for (const Window& upper : view.layers[i]->windows()) {
      for (const Window& lower : view.layers[i + 1]->windows()) {
        for (const Length apart :
             {lower.back.left - upper.back.left, lower.back.top - upper.back.top,
              upper.back.right - lower.back.right, upper.back.bottom - lower.back.bottom}) {
          if (apart != Length() && apart < least && apart > Length() - least) return false;
        }
      }
    }
  }
  return true;
}

std::vector<BoardView> views_of(const Job& job, const Cuts& cuts, const TemplateOptions& options) {
  std::vector<BoardView> views;
  BoardView all{&job, &cuts, {}, 1, options.locale};
  for (const BoardCuts& board : cuts.layers) {
    if (options.layer > 0 && board.layer->number != options.layer) continue;
    all.layers.push_back(&board);
    views.push_back({&job, &cuts, {&board}, 1, options.locale});
  }
  if (options.overlaid || options.format == paper::Format::svg) return {all};
  if (all.layers.size() > 1 && options.sheet && !options.corners_only && !options.by_layer &&
      legible_together(all)) {
    return {all};
  }
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

// A PNG has no layers.
bool asks_too_much(const Cuts& cuts, const TemplateOptions& options) {
  return options.format == paper::Format::png && options.layer == 0 && cuts.layers.size() > 1 &&
         !options.overlaid;
}

PlotOptions plot_options(const TemplateOptions& options) {
  return {options.kerf, {options.lead_in, options.lead_over}, options.from_front};
}

Result<Pages> pages_of(const BoardView& view, const TemplateOptions& options) {
  if (options.plot_only) {
    const auto plot = plot_of(view, plot_options(options));
    if (!plot) return refuse("template-kerf", plot.error());
    return Pages(1, plot_page(*plot, title_of(view)));
  }
  if (options.light) return Pages{light_page(view)};
  if (options.corners_only) return corner_pages(view, options);
  if (options.sheet) return tiled_pages(view, options);
  return Pages{board_page(view, options)};
}

void draw_correction(paper::Drawing& drawing, const paper::Spot& spot, double width,
                     const TemplateOptions& options) {
  if (!options.printer) return;
  const paper::TextStyle style{7.5, true, {0, 0, 0}, paper::Anchor::left, 0};
  const std::string line = correction_text(options) + middle_dot +
                           options.locale.say("for that printer alone, the page not turned");
  drawing.text(paper::fitted(line, width, style), spot, style);
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
  draw_correction(foot, {page_margin, below + 64}, width, options);
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

Problem template_problem(std::string code, std::string message) {
  return {Severity::error, std::move(code), std::move(message), {}, {}};
}

Result<Pages> template_pages(const Job& job, const Cuts& cuts, const TemplateOptions& options) {
  if (auto checked = check(cuts, options.layer); !checked) {
    return tl::unexpected(std::move(checked.error()));
  }
  if (options.plot_only && (options.sheet || options.corners_only || options.overlaid)) {
    return refuse("template-plot", "a plot is a page of the board's size");
  }
  if (options.plot_only + options.corners_only + options.sticks + options.light > 1) {
    return refuse("template-kinds",
                  "a plot, corners, sticks and light are four kinds of template; "
                  "choose one");
  }
  if (options.light && options.sheet) {
    return refuse("template-kinds", "light is thrown on the whole board; leave out the paper");
  }
  if (options.format != paper::Format::pdf &&
      (options.sheet || options.corners_only || options.sticks)) {
    return refuse("template-format", "sheets to be joined are written as a PDF only");
  }
  if (asks_too_much(cuts, options)) {
    return refuse("template-layer", "found " + std::to_string(cuts.layers.size()) +
                                        " layers, of which a PNG holds one; name it");
  }
  if (options.sticks) {
    TemplateOptions each = options;
    each.overlaid = false;
    each.by_layer = true;
    return stick_pages(views_of(job, cuts, each), each);
  }
  Pages pages;
  for (const BoardView& view : views_of(job, cuts, options)) {
    Result<Pages> more = pages_of(view, options);
    if (!more) return tl::unexpected(std::move(more.error()));
    std::move(more->begin(), more->end(), std::back_inserter(pages));
  }
  return pages;
}

std::string write_template(const Job& job, const Pages& pages, const TemplateOptions& options) {
  return paper::write(
      options.format, pages,
      {options.locale.say("Template %1", job.reference), job.date, options.png_dpi, true});
}

Result<std::string> render_template(const Job& job, const Cuts& cuts,
                                    const TemplateOptions& options) {
  const Result<Pages> pages = template_pages(job, cuts, options);
  if (!pages) return tl::unexpected(pages.error());
  return write_template(job, *pages, options);
}

Result<std::string> render_dxf(const Job& job, const Cuts& cuts, const TemplateOptions& options) {
  if (auto checked = check(cuts, options.layer); !checked) {
    return tl::unexpected(std::move(checked.error()));
  }
  TemplateOptions together = options;
  together.overlaid = true;
  const auto plot = plot_of(views_of(job, cuts, together).front(), plot_options(options));
  if (!plot) return refuse("template-kerf", plot.error());
  return write_dxf(*plot);
}

}  // namespace mullion
