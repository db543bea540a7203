#include "render/paper/pdf_finish.h"

#include <algorithm>

// Asks qpdf 11 for its std::shared_ptr interface alone.
#define POINTERHOLDER_TRANSITION 4

#include <qpdf/Pipeline.hh>
#include <qpdf/Pl_Flate.hh>
#include <qpdf/QPDF.hh>
#include <qpdf/QPDFWriter.hh>

#include "render/paper/pdf_images.h"
#include "render/paper/pdf_layers.h"

namespace mullion::paper {
namespace {

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

}  // namespace

std::string finish_pdf(const std::string& pdf,
                       const std::vector<std::vector<std::string>>& layers_by_page,
                       const KeptJpegs& jpegs) {
  constexpr std::size_t what_is_added = 1 << 16;
  constexpr int quick = 3;  // half the time of zlib's usual level, for a tenth more bytes
  QPDF document;
  document.processMemoryFile("drawing", pdf.data(), pdf.size());
  document.getRoot().replaceKey("/ViewerPreferences",
                                QPDFObjectHandle::parse("<< /PrintScaling /None >>"));
  const bool layered = std::any_of(layers_by_page.begin(), layers_by_page.end(),
                                   [](const auto& names) { return !names.empty(); });
  if (layered) make_layers(document, layers_by_page);
  place_jpegs(document, jpegs);
  std::string out;
  out.reserve(pdf.size() + jpegs.bytes() + what_is_added);
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

}  // namespace mullion::paper
