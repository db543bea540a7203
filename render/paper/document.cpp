#include "render/paper/document.h"

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <cairo.h>

#include <cmath>
#include <deque>
#include <optional>
#include <stdexcept>

#include "render/paper/pdf_finish.h"
#include "render/paper/png_file.h"
#include "render/paper/svg_finish.h"

namespace mullion::paper {
namespace {

constexpr const char* fixed_date = "2000-01-01";
constexpr double largest_png_side = 30'000;
constexpr double largest_png_area = 200e6;  // pixels

cairo_status_t append(void* bytes, const unsigned char* data, unsigned int count) {
  static_cast<std::string*>(bytes)->append(reinterpret_cast<const char*>(data), count);
  return CAIRO_STATUS_SUCCESS;
}

}  // namespace

struct Document::State {
  Format format;
  DocumentInfo info;
  std::string bytes;
  cairo_surface_t* surface = nullptr;
  cairo_t* context = nullptr;
  std::optional<Canvas> canvas;
  std::deque<std::vector<std::string>> layers;  // of each page; canvases hold on to them
  KeptJpegs jpegs;
  Stamps stamps;
  int pages = 0;

  ~State() {
    if (context != nullptr) cairo_destroy(context);
    if (surface != nullptr) cairo_surface_destroy(surface);
  }

  void open(double width, double height) {
    switch (format) {
      case Format::pdf:
        open_pdf(width, height);
        break;
      case Format::svg:
        surface = cairo_svg_surface_create_for_stream(append, &bytes, width, height);
        cairo_svg_surface_set_document_unit(surface, CAIRO_SVG_UNIT_PT);
        break;
      case Format::png:
        open_png(width, height);
        break;
    }
    context = cairo_create(surface);
    if (format == Format::png) {
      cairo_scale(context, info.png_dpi / 72, info.png_dpi / 72);
      cairo_set_source_rgb(context, 1, 1, 1);
      cairo_paint(context);
    }
    start_canvas();
  }

  void start_canvas() {
    layers.emplace_back();
    const bool pdf = format == Format::pdf;
    canvas.emplace(context, pdf ? &layers.back() : nullptr, pdf ? &jpegs : nullptr,
                   pdf ? &stamps : nullptr);
  }

  void open_pdf(double width, double height) {
    surface = cairo_pdf_surface_create_for_stream(append, &bytes, width, height);
    const std::string date = (info.date.size() == 10 ? info.date : fixed_date) + "T00:00:00Z";
    cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_TITLE, info.title.c_str());
    cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATE_DATE, date.c_str());
  }

  void open_png(double width, double height) {
    const double w = std::ceil(width * info.png_dpi / 72),
                 h = std::ceil(height * info.png_dpi / 72);
    if (w > largest_png_side || h > largest_png_side || w * h > largest_png_area) {
      throw std::runtime_error("the picture would be too large; ask for fewer dots per inch");
    }
    surface =
        cairo_image_surface_create(CAIRO_FORMAT_RGB24, static_cast<int>(w), static_cast<int>(h));
  }
};

Document::Document(Format format, DocumentInfo info) : state_(std::make_unique<State>()) {
  state_->format = format;
  state_->info = std::move(info);
}

Document::~Document() = default;

Canvas& Document::add_page(PageSize size, const std::string& bookmark) {
  const double width = points(size.width), height = points(size.height);
  State& state = *state_;
  if (state.pages > 0 && state.format != Format::pdf) {
    throw std::logic_error("an SVG or PNG has one page");
  }
  if (state.pages++ == 0) {
    state.open(width, height);
  } else {
    cairo_show_page(state.context);
    cairo_pdf_surface_set_size(state.surface, width, height);
    cairo_destroy(state.context);
    state.context = cairo_create(state.surface);
    state.start_canvas();
  }
  if (state.format == Format::pdf && !bookmark.empty()) {
    const std::string link = "page=" + std::to_string(state.pages) + " pos=[0 0]";
    cairo_pdf_surface_add_outline(state.surface, CAIRO_PDF_OUTLINE_ROOT, bookmark.c_str(),
                                  link.c_str(), CAIRO_PDF_OUTLINE_FLAG_OPEN);
  }
  return *state.canvas;
}

std::string Document::finish() {
  State& state = *state_;
  if (state.pages == 0) throw std::logic_error("a document needs a page");
  if (state.format == Format::png) {
    state.bytes = png_file(state.surface, state.info.png_dpi);
  } else {
    cairo_show_page(state.context);
  }
  cairo_surface_finish(state.surface);
  const cairo_status_t status = cairo_surface_status(state.surface);
  if (status != CAIRO_STATUS_SUCCESS || cairo_status(state.context) != CAIRO_STATUS_SUCCESS) {
    throw std::runtime_error(std::string("the page could not be drawn: ") +
                             cairo_status_to_string(status));
  }
  switch (state.format) {
    case Format::pdf:
      return finish_pdf(state.bytes, {state.layers.begin(), state.layers.end()}, state.jpegs);
    case Format::svg:
      return finish_svg(state.bytes);
    case Format::png:
      break;
  }
  return std::move(state.bytes);
}

}  // namespace mullion::paper
