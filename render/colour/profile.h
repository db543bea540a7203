#pragma once

// Colours of a picture's own ICC profile (ISO 15076-1), brought to sRGB.

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

namespace mullion::colour {

enum class Channels { grey, rgb, rgba, cmyk };  // 8 bits each, interleaved

// Whether the bytes are a profile whose colours have these channels.
bool is_profile_of(std::string_view icc, Channels channels);

struct Chromaticity {
  double x = 0, y = 0;  // CIE 1931
};
struct Primaries {
  Chromaticity white, red, green, blue;
};

// The profile of data whose light is the data to the power of `exponent`. Without primaries, those
// of sRGB (IEC 61966-2-1). Empty where they are no triangle around the white.
std::string simple_profile(double exponent, const std::optional<Primaries>& primaries,
                           Channels channels);

class ToSrgb {
 public:
  // Without a profile, or with one that does not fit the channels, colours stay as they are.
  ToSrgb(std::string_view icc, Channels channels);
  ~ToSrgb();

  bool is_needed() const { return transform_ != nullptr; }
  // Grey becomes three channels; alpha is kept; CMYK is 255 for full ink.
  void convert(const std::uint8_t* from, std::uint8_t* to, std::uint32_t pixels) const;

 private:
  struct Close {
    void operator()(void* transform) const;
  };
  std::unique_ptr<void, Close> transform_;
};

}  // namespace mullion::colour
