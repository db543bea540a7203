#include "render/paper/pdf_layers.h"

#include <algorithm>

// Asks qpdf 11 for its std::shared_ptr interface alone.
#define POINTERHOLDER_TRANSITION 4

#include <qpdf/QPDF.hh>
#include <qpdf/QPDFPageDocumentHelper.hh>

namespace mullion::paper {
namespace {

// As Cairo writes a mark, on a line of its own; a text in the stream holds no bare end of a line.
constexpr std::string_view mark_start = "\n/Div << /MCID ", mark_end = " >> BDC\n";

class Layers {
 public:
  explicit Layers(QPDF& document) : document_(document) {}

  std::size_t index_of(const std::string& name) {
    const auto known = std::find(names_.begin(), names_.end(), name);
    if (known != names_.end()) return static_cast<std::size_t>(known - names_.begin());
    QPDFObjectHandle group = QPDFObjectHandle::newDictionary();
    group.replaceKey("/Type", QPDFObjectHandle::newName("/OCG"));
    group.replaceKey("/Name", QPDFObjectHandle::newUnicodeString(name));
    groups_.push_back(document_.makeIndirectObject(group));
    names_.push_back(name);
    return names_.size() - 1;
  }

  QPDFObjectHandle group(std::size_t index) const { return groups_[index]; }

  // All of them on, listed in the order in which they first appear.
  QPDFObjectHandle properties() const {
    QPDFObjectHandle shown = QPDFObjectHandle::newDictionary();
    shown.replaceKey("/Order", QPDFObjectHandle::newArray(groups_));
    QPDFObjectHandle all = QPDFObjectHandle::newDictionary();
    all.replaceKey("/OCGs", QPDFObjectHandle::newArray(groups_));
    all.replaceKey("/D", shown);
    return all;
  }

 private:
  QPDF& document_;
  std::vector<std::string> names_;
  std::vector<QPDFObjectHandle> groups_;
};

std::string resource_of(std::size_t layer) {
  return "/layer" + std::to_string(layer + 1);
}

std::string with_layers(std::string_view content, const std::vector<std::size_t>& layers) {
  std::string out;
  out.reserve(content.size());
  std::size_t copied = 0;
  for (std::size_t at = content.find(mark_start); at != std::string_view::npos;
       at = content.find(mark_start, at + 1)) {
    const std::size_t number = at + mark_start.size(), end = content.find(mark_end, number);
    if (end == std::string_view::npos) break;
    const std::size_t which = std::stoul(std::string(content.substr(number, end - number)));
    out.append(content, copied, at - copied)
        .append("\n/OC " + resource_of(layers.at(which)) + " BDC\n");
    copied = end + mark_end.size();
    at = copied - 2;  // the end of this line begins the next mark
  }
  return out.append(content, copied);
}

void make_layers_of_page(QPDFObjectHandle page, const std::vector<std::string>& names,
                         Layers& layers) {
  page.removeKey("/StructParents");
  if (names.empty()) return;
  std::vector<std::size_t> used;
  QPDFObjectHandle properties = QPDFObjectHandle::newDictionary();
  for (const std::string& name : names) {
    const std::size_t layer = layers.index_of(name);
    used.push_back(layer);
    properties.replaceKey(resource_of(layer), layers.group(layer));
  }
  page.getKey("/Resources").replaceKey("/Properties", properties);
  QPDFObjectHandle content = page.getKey("/Contents");
  const auto data = content.getStreamData();
  const std::string_view text(reinterpret_cast<const char*>(data->getBuffer()), data->getSize());
  content.replaceStreamData(with_layers(text, used), QPDFObjectHandle::newNull(),
                            QPDFObjectHandle::newNull());
}

}  // namespace

void make_layers(QPDF& document, const std::vector<std::vector<std::string>>& names_by_page) {
  Layers layers(document);
  std::size_t number = 0;
  for (QPDFPageObjectHelper& page : QPDFPageDocumentHelper(document).getAllPages()) {
    make_layers_of_page(page.getObjectHandle(), names_by_page.at(number++), layers);
  }
  QPDFObjectHandle root = document.getRoot();
  root.removeKey("/StructTreeRoot");
  root.removeKey("/MarkInfo");
  root.replaceKey("/OCProperties", layers.properties());
}

}  // namespace mullion::paper
