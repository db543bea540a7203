#include "render/paper/pdf_colours.h"

#define POINTERHOLDER_TRANSITION 4

#include <algorithm>
#include <map>
#include <optional>
#include <qpdf/QPDF.hh>
#include <qpdf/QPDFObjectHandle.hh>
#include <string>

#include "engine/picture/jpeg_segments.h"
#include "render/colour/profile.h"

namespace mullion::paper {
namespace {

struct Space {
  const char* device;
  colour::Channels channels;
  int count;
};

std::optional<Space> space_of(const std::string& device) {
  if (device == "/DeviceGray") return Space{"/DeviceGray", colour::Channels::grey, 1};
  if (device == "/DeviceRGB") return Space{"/DeviceRGB", colour::Channels::rgb, 3};
  if (device == "/DeviceCMYK") return Space{"/DeviceCMYK", colour::Channels::cmyk, 4};
  return std::nullopt;
}

bool is_jpeg(QPDFObjectHandle& object) {
  if (!object.isStream()) return false;
  QPDFObjectHandle filter = object.getDict().getKey("/Filter");
  return filter.isName() && filter.getName() == "/DCTDecode";
}

class Colours {
 public:
  explicit Colours(QPDF& document) : document_(document) {}

  void state(QPDFObjectHandle& image) {
    QPDFObjectHandle entries = image.getDict();
    QPDFObjectHandle name = entries.getKey("/ColorSpace");
    const auto space = name.isName() ? space_of(name.getName()) : std::nullopt;
    if (!space) return;
    const auto data = image.getRawStreamData();
    const auto segments =
        jpeg_segments({reinterpret_cast<const char*>(data->getBuffer()), data->getSize()});
    if (!segments) return;
    if (space->count == 4 && std::any_of(segments->begin(), segments->end(), is_adobe)) {
      entries.replaceKey("/Decode", QPDFObjectHandle::parse("[1 0 1 0 1 0 1 0]"));
    }
    const std::string icc = icc_profile(*segments);
    if (!colour::is_profile_of(icc, space->channels)) return;
    entries.replaceKey("/ColorSpace", space_with(icc, *space));
  }

 private:
  QPDFObjectHandle space_with(const std::string& icc, const Space& space) {
    auto found = profiles_.find(icc);
    if (found == profiles_.end()) {
      QPDFObjectHandle stream = QPDFObjectHandle::newStream(&document_, icc);
      stream.getDict().replaceKey("/N", QPDFObjectHandle::newInteger(space.count));
      stream.getDict().replaceKey("/Alternate", QPDFObjectHandle::newName(space.device));
      found = profiles_.emplace(icc, document_.makeIndirectObject(stream)).first;
    }
    QPDFObjectHandle out = QPDFObjectHandle::newArray();
    out.appendItem(QPDFObjectHandle::newName("/ICCBased"));
    out.appendItem(found->second);
    return out;
  }

  QPDF& document_;
  std::map<std::string, QPDFObjectHandle> profiles_;
};

}  // namespace

void state_colours(QPDF& document) {
  Colours colours(document);
  for (QPDFObjectHandle& object : document.getAllObjects()) {
    if (is_jpeg(object)) colours.state(object);
  }
}

}  // namespace mullion::paper
