#include "tests/render/picture/profiles.h"

#include <lcms2.h>
#include <zlib.h>

#include <algorithm>
#include <vector>

namespace profiles {
namespace {

std::string saved(cmsHPROFILE profile) {
  cmsUInt32Number size = 0;
  cmsSaveProfileToMem(profile, nullptr, &size);
  std::string bytes(size, '\0');
  cmsSaveProfileToMem(profile, bytes.data(), &size);
  cmsCloseProfile(profile);
  return bytes;
}

std::string big_endian(unsigned long value, int bytes) {
  std::string out;
  for (int i = bytes - 1; i >= 0; --i) out += static_cast<char>(value >> (8 * i) & 0xFF);
  return out;
}

}  // namespace

std::string red_and_green_swapped() {
  const cmsCIExyY white{0.3127, 0.3290, 1.0};
  const cmsCIExyYTRIPLE primaries{{0.30, 0.60, 1.0}, {0.64, 0.33, 1.0}, {0.15, 0.06, 1.0}};
  const cmsFloat64Number srgb_curve[] = {2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.04045};
  cmsToneCurve* curve = cmsBuildParametricToneCurve(nullptr, 4, srgb_curve);
  cmsToneCurve* curves[] = {curve, curve, curve};
  const std::string out = saved(cmsCreateRGBProfile(&white, &primaries, curves));
  cmsFreeToneCurve(curve);
  return out;
}

std::string linear_grey() {
  cmsToneCurve* curve = cmsBuildGamma(nullptr, 1.0);
  const std::string out = saved(cmsCreateGrayProfile(cmsD50_xyY(), curve));
  cmsFreeToneCurve(curve);
  return out;
}

std::string in_jpeg(const std::string& jpeg, const std::string& profile, std::size_t piece) {
  const std::size_t count = (profile.size() + piece - 1) / piece;
  std::string segments;
  for (std::size_t i = 0; i < count; ++i) {
    std::string body("ICC_PROFILE\0", 12);
    body += static_cast<char>(i + 1);
    body += static_cast<char>(count);
    body += profile.substr(i * piece, piece);
    segments += "\xFF\xE2" + big_endian(body.size() + 2, 2) + body;
  }
  return jpeg.substr(0, 2) + segments + jpeg.substr(2);
}

std::string with_chunk(const std::string& png, const std::string& type, const std::string& data) {
  constexpr std::size_t after_header = 33;
  const std::string checked = type + data;
  const unsigned long crc =
      crc32(0, reinterpret_cast<const Bytef*>(checked.data()), static_cast<uInt>(checked.size()));
  return png.substr(0, after_header) + big_endian(data.size(), 4) + checked + big_endian(crc, 4) +
         png.substr(after_header);
}

std::string in_png(const std::string& png, const std::string& profile) {
  uLongf size = compressBound(profile.size());
  std::string packed(size, '\0');
  compress(reinterpret_cast<Bytef*>(packed.data()), &size,
           reinterpret_cast<const Bytef*>(profile.data()), profile.size());
  packed.resize(size);
  return with_chunk(png, "iCCP", std::string("test\0\0", 6) + packed);
}

std::array<int, 3> srgb_of(const std::string& cmyk_profile,
                           const std::array<unsigned char, 4>& ink) {
  cmsHPROFILE from =
      cmsOpenProfileFromMem(cmyk_profile.data(), static_cast<cmsUInt32Number>(cmyk_profile.size()));
  cmsHPROFILE to = cmsCreate_sRGBProfile();
  cmsHTRANSFORM transform =
      cmsCreateTransform(from, TYPE_CMYK_8, to, TYPE_RGB_8, INTENT_PERCEPTUAL, 0);
  std::array<unsigned char, 3> rgb{};
  cmsDoTransform(transform, ink.data(), rgb.data(), 1);
  cmsDeleteTransform(transform);
  cmsCloseProfile(from);
  cmsCloseProfile(to);
  return {rgb[0], rgb[1], rgb[2]};
}

}  // namespace profiles
