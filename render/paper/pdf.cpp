#include <cairo-pdf.h>

#include <algorithm>
#include <stdexcept>

// Asks qpdf 11 for its std::shared_ptr interface alone.
#define POINTERHOLDER_TRANSITION 4

#include <qpdf/Pipeline.hh>
#include <qpdf/Pl_Flate.hh>
#include <qpdf/QPDF.hh>
#include <qpdf/QPDFWriter.hh>

#include "render/paper/cairo.h"
#include "render/paper/document.h"
#include "render/paper/pdf_images.h"
#include "render/paper/pdf_layers.h"

namespace mullion::paper {
namespace {

constexpr const char* fixed_date = "2000-01-01";

cairo_status_t append_pdf(void* bytes, const unsigned char* data, unsigned int count) {
  static_cast<std::string*>(bytes)->append(reinterpret_cast<const char*>(data), count);
  return CAIRO_STATUS_SUCCESS;
}

void state_info(cairo_surface_t* surface, const DocumentInfo& info) {
  const std::string date = (info.date.size() == 10 ? info.date : fixed_date) + "T00:00:00Z";
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_TITLE, info.title.c_str());
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATE_DATE, date.c_str());
}

void add_bookmark(cairo_surface_t* surface, const std::string& title, std::size_t page) {
  if (title.empty()) return;
  const std::string link = "page=" + std::to_string(page) + " pos=[0 0]";
  cairo_pdf_surface_add_outline(surface, CAIRO_PDF_OUTLINE_ROOT, title.c_str(), link.c_str(),
                                CAIRO_PDF_OUTLINE_FLAG_OPEN);
}

std::string drawn_pdf(const std::vector<Page>& pages, const DocumentInfo& info, PdfParts& parts) {
  std::string bytes;
  const PageSize first = pages.front().size;
  const Surface surface(cairo_pdf_surface_create_for_stream(append_pdf, &bytes, points(first.width),
                                                            points(first.height)));
  state_info(surface.get(), info);
  std::size_t number = 0;
  for (const Page& page : pages) {
    const double width = points(page.size.width), height = points(page.size.height);
    cairo_pdf_surface_set_size(surface.get(), width, height);
    const Context cairo(cairo_create(surface.get()));
    add_bookmark(surface.get(), page.title, ++number);
    parts.layers.emplace_back();
    draw(page.drawing, cairo.get(), {0, 0, width, height}, &parts);
    cairo_show_page(cairo.get());
    require_success(cairo_status(cairo.get()));
  }
  cairo_surface_finish(surface.get());
  require_success(cairo_surface_status(surface.get()));
  return bytes;
}

// Proofs hold photographs of many megabytes: their bytes are written once, into place.
class ToString : public Pipeline {
 public:
  explicit ToString(std::string& out) : Pipeline("string", nullptr), out_(out) {}
  void write(const unsigned char* data, std::size_t size) override {
    out_.append(reinterpret_cast<const char*>(data), size);
  }
  void finish() override {}

 private:
  std::string& out_;
};

// What Cairo does not write: no print scaling (ISO 32000-1, table 150), photographs as they are,
// an ID that depends on the file's contents alone, layers.
std::string finished(const std::string& pdf, const PdfParts& parts, bool one_sided) {
  constexpr std::size_t what_is_added = 1 << 16;
  constexpr int quick = 3;  // half the time of zlib's usual level, for a tenth more bytes
  QPDF document;
  document.processMemoryFile("drawing", pdf.data(), pdf.size());
  document.getRoot().replaceKey(
      "/ViewerPreferences",
      QPDFObjectHandle::parse(one_sided ? "<< /PrintScaling /None /Duplex /Simplex >>"
                                        : "<< /PrintScaling /None >>"));
  const bool layered = std::any_of(parts.layers.begin(), parts.layers.end(),
                                   [](const auto& names) { return !names.empty(); });
  if (layered) make_layers(document, parts.layers);
  place_jpegs(document, parts.jpegs);
  std::string out;
  out.reserve(pdf.size() + parts.jpegs.bytes() + what_is_added);
  ToString sink(out);
  Pl_Flate::setCompressionLevel(quick);
  QPDFWriter writer(document);
  writer.setOutputPipeline(&sink);
  writer.setDeterministicID(true);
  writer.setCompressStreams(true);
  writer.setObjectStreamMode(qpdf_o_disable);
  writer.write();
  return out;
}

}  // namespace

std::string write_pdf(const std::vector<Page>& pages, const DocumentInfo& info) {
  if (pages.empty()) throw std::logic_error("a document needs a page");
  PdfParts parts;
  const std::string pdf = drawn_pdf(pages, info, parts);
  return finished(pdf, parts, info.one_sided);
}

std::string write(Format format, const std::vector<Page>& pages, const DocumentInfo& info) {
  if (format == Format::pdf) return write_pdf(pages, info);
  if (pages.size() != 1) throw std::logic_error("an SVG or PNG has one page");
  const Page& page = pages.front();
  return format == Format::svg ? write_svg(page.drawing, page.size, info.title)
                               : write_png(page.drawing, page.size, info.png_dpi);
}

}  // namespace mullion::paper
