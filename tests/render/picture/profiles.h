#pragma once

// ICC profiles made for a test by Little CMS, and files that carry them.

#include <array>
#include <string>

namespace profiles {

// sRGB (IEC 61966-2-1) with its red and green primaries in each other's place: red data mean
// green light.
std::string red_and_green_swapped();
// Grey data that stand for light itself: half the data is half the light.
std::string linear_grey();

// In APP2 segments of at most `piece` bytes of the profile, straight after the start of the image.
std::string in_jpeg(const std::string& jpeg, const std::string& profile,
                    std::size_t piece = 65'000);

// After the header of a PNG.
std::string with_chunk(const std::string& png, const std::string& type, const std::string& data);
std::string in_png(const std::string& png, const std::string& profile);  // iCCP

// What Little CMS makes of a CMYK colour (255: full ink) in sRGB.
std::array<int, 3> srgb_of(const std::string& cmyk_profile,
                           const std::array<unsigned char, 4>& ink);

}  // namespace profiles
