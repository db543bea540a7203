#include "render/paper/pdf_images.h"

#define POINTERHOLDER_TRANSITION 4

#include <algorithm>
#include <map>
#include <optional>
#include <qpdf/Pipeline.hh>
#include <qpdf/QPDF.hh>
#include <qpdf/QPDFObjectHandle.hh>
#include <string>

#include "engine/picture/jpeg_segments.h"
#include "render/colour/profile.h"

namespace mullion::paper {
namespace {

void add_16(std::string& bytes, std::size_t value) {
  bytes += static_cast<char>(value >> 8 & 0xFF);
  bytes += static_cast<char>(value & 0xFF);
}

// Start of image, frame of 8 bits, comment (ITU-T T.81, annex B).
std::string frame_alone(int width, int height, int components, const std::string& comment) {
  std::string bytes("\xFF\xD8\xFF\xC0", 4);
  const std::size_t count = static_cast<std::size_t>(components);
  add_16(bytes, 8 + 3 * count);
  bytes += '\x08';
  add_16(bytes, static_cast<std::size_t>(height));
  add_16(bytes, static_cast<std::size_t>(width));
  bytes += static_cast<char>(components);
  for (std::size_t i = 1; i <= count; ++i) bytes.append({static_cast<char>(i), '\x11', '\0'});
  bytes.append("\xFF\xFE", 2);
  add_16(bytes, 2 + comment.size());
  return bytes + comment;
}

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

// Gives the writer the bytes when it comes to them, so that there is no second copy of all.
class Provider : public QPDFObjectHandle::StreamDataProvider {
 public:
  explicit Provider(KeptJpegs::Data data) : data_(std::move(data)) {}
  void provideStreamData(const QPDFObjGen&, Pipeline* pipeline) override {
    pipeline->write(reinterpret_cast<const unsigned char*>(data_->data()), data_->size());
    pipeline->finish();
  }

 private:
  KeptJpegs::Data data_;
};

class Images {
 public:
  Images(QPDF& document, const KeptJpegs& jpegs) : document_(document), jpegs_(jpegs) {}

  void place(QPDFObjectHandle& image) {
    const auto raw = image.getRawStreamData();
    const std::string_view stored(reinterpret_cast<const char*>(raw->getBuffer()), raw->getSize());
    const KeptJpegs::Data kept = jpegs_.data_of(stored);
    if (kept != nullptr) {
      image.replaceStreamData(std::make_shared<Provider>(kept),
                              QPDFObjectHandle::newName("/DCTDecode"), QPDFObjectHandle::newNull());
    }
    state_colours(image, kept != nullptr ? std::string_view(*kept) : stored);
  }

 private:
  void state_colours(QPDFObjectHandle& image, std::string_view jpeg) {
    QPDFObjectHandle entries = image.getDict();
    QPDFObjectHandle name = entries.getKey("/ColorSpace");
    const auto space = name.isName() ? space_of(name.getName()) : std::nullopt;
    if (!space) return;
    const auto segments = jpeg_segments(jpeg);
    if (!segments) return;
    if (space->count == 4 && std::any_of(segments->begin(), segments->end(), is_adobe)) {
      entries.replaceKey("/Decode", QPDFObjectHandle::parse("[1 0 1 0 1 0 1 0]"));
    }
    const std::string icc = icc_profile(*segments);
    if (!colour::is_profile_of(icc, space->channels)) return;
    entries.replaceKey("/ColorSpace", space_with(icc, *space));
  }

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
  const KeptJpegs& jpegs_;
  std::map<std::string, QPDFObjectHandle> profiles_;
};

}  // namespace

std::string KeptJpegs::stand_in(const Data& jpeg, int width, int height, int components) {
  const auto known =
      std::find_if(kept_.begin(), kept_.end(), [&](const Data& data) { return *data == *jpeg; });
  const std::size_t number = static_cast<std::size_t>(known - kept_.begin());
  if (known == kept_.end()) kept_.push_back(jpeg);
  const std::string bytes =
      frame_alone(width, height, components, "picture " + std::to_string(number));
  numbers_.emplace(bytes, number);
  return bytes;
}

KeptJpegs::Data KeptJpegs::data_of(std::string_view stand_in) const {
  const auto found = numbers_.find(stand_in);
  return found == numbers_.end() ? nullptr : kept_[found->second];
}

std::size_t KeptJpegs::bytes() const {
  std::size_t sum = 0;
  for (const Data& data : kept_) sum += data->size();
  return sum;
}

void place_jpegs(QPDF& document, const KeptJpegs& jpegs) {
  Images images(document, jpegs);
  for (QPDFObjectHandle& object : document.getAllObjects()) {
    if (is_jpeg(object)) images.place(object);
  }
}

}  // namespace mullion::paper
