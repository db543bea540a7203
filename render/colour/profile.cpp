#include "render/colour/profile.h"

#include <lcms2.h>

namespace mullion::colour {
namespace {

struct CloseProfile {
  void operator()(void* profile) const { cmsCloseProfile(profile); }
};
using Profile = std::unique_ptr<void, CloseProfile>;

struct Formats {
  cmsColorSpaceSignature space;
  cmsUInt32Number from, to;
};

Formats formats_of(Channels channels) {
  switch (channels) {
    case Channels::grey:
      return {cmsSigGrayData, TYPE_GRAY_8, TYPE_RGB_8};
    case Channels::rgba:
      return {cmsSigRgbData, TYPE_RGBA_8, TYPE_RGBA_8};
    case Channels::cmyk:
      return {cmsSigCmykData, TYPE_CMYK_8, TYPE_RGB_8};
    case Channels::rgb:
      break;
  }
  return {cmsSigRgbData, TYPE_RGB_8, TYPE_RGB_8};
}

// Nothing where the bytes are no profile or one of other channels.
Profile open_profile(std::string_view icc, Channels channels) {
  if (icc.empty()) return {};
  Profile profile(cmsOpenProfileFromMem(icc.data(), static_cast<cmsUInt32Number>(icc.size())));
  if (profile && cmsGetColorSpace(profile.get()) != formats_of(channels).space) profile.reset();
  return profile;
}

std::string bytes_of(const Profile& profile) {
  cmsUInt32Number size = 0;
  if (!profile || !cmsSaveProfileToMem(profile.get(), nullptr, &size)) return {};
  std::string bytes(size, '\0');
  return cmsSaveProfileToMem(profile.get(), bytes.data(), &size) ? bytes : std::string();
}

cmsCIExyY xyy(const Chromaticity& colour) {
  return {colour.x, colour.y, 1};
}

constexpr Primaries srgb_primaries{{0.3127, 0.3290}, {0.64, 0.33}, {0.30, 0.60}, {0.15, 0.06}};

}  // namespace

std::string simple_profile(double exponent, const std::optional<Primaries>& primaries,
                           Channels channels) {
  const Primaries known = primaries.value_or(srgb_primaries);
  const std::unique_ptr<cmsToneCurve, decltype(&cmsFreeToneCurve)> curve(
      cmsBuildGamma(nullptr, exponent), cmsFreeToneCurve);
  const cmsCIExyY white = xyy(known.white);
  if (channels == Channels::grey)
    return bytes_of(Profile(cmsCreateGrayProfile(&white, curve.get())));
  const cmsCIExyYTRIPLE colours{xyy(known.red), xyy(known.green), xyy(known.blue)};
  cmsToneCurve* const curves[] = {curve.get(), curve.get(), curve.get()};
  return bytes_of(Profile(cmsCreateRGBProfile(&white, &colours, curves)));
}

bool is_profile_of(std::string_view icc, Channels channels) {
  return open_profile(icc, channels) != nullptr;
}

void ToSrgb::Close::operator()(void* transform) const {
  cmsDeleteTransform(transform);
}

ToSrgb::ToSrgb(std::string_view icc, Channels channels) {
  const Profile own = open_profile(icc, channels);
  if (!own) return;
  const Formats formats = formats_of(channels);
  const Profile srgb(cmsCreate_sRGBProfile());
  transform_.reset(cmsCreateTransform(own.get(), formats.from, srgb.get(), formats.to,
                                      INTENT_PERCEPTUAL, cmsFLAGS_COPY_ALPHA));
}

ToSrgb::~ToSrgb() = default;

void ToSrgb::convert(const std::uint8_t* from, std::uint8_t* to, std::uint32_t pixels) const {
  cmsDoTransform(transform_.get(), from, to, pixels);
}

}  // namespace mullion::colour
