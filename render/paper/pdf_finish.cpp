#include "render/paper/pdf_finish.h"

// Asks qpdf 11 for its std::shared_ptr interface alone.
#define POINTERHOLDER_TRANSITION 4

#include <memory>
#include <qpdf/Buffer.hh>
#include <qpdf/QPDF.hh>
#include <qpdf/QPDFWriter.hh>

namespace mullion::paper {

std::string finish_pdf(const std::string& pdf) {
  QPDF document;
  document.processMemoryFile("drawing", pdf.data(), pdf.size());
  document.getRoot().replaceKey("/ViewerPreferences",
                                QPDFObjectHandle::parse("<< /PrintScaling /None >>"));
  QPDFWriter writer(document);
  writer.setOutputMemory();
  writer.setDeterministicID(true);
  writer.setCompressStreams(true);
  writer.setObjectStreamMode(qpdf_o_generate);
  writer.write();
  const std::unique_ptr<Buffer> buffer(writer.getBuffer());
  return {reinterpret_cast<const char*>(buffer->getBuffer()), buffer->getSize()};
}

}  // namespace mullion::paper
