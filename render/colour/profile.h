#pragma once

// Colours of a picture's own ICC profile (ISO 15076-1), brought to sRGB.

#include <cstdint>
#include <memory>
#include <string_view>

namespace mullion::colour {

enum class Channels { grey, rgb, rgba, cmyk };  // 8 bits each, interleaved

// Whether the bytes are a profile whose colours have these channels.
bool is_profile_of(std::string_view icc, Channels channels);

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
