#pragma once

// Photographs in a PDF: JPEG data that go into it as they are, byte for byte, and their colours.
//
// Cairo would copy many megabytes. It is given a small stand-in instead, the frame of a JPEG of the
// same size and a number, and the data take its place when the PDF is finished.

#include <map>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

class QPDF;

namespace mullion::paper {

class KeptJpegs {
 public:
  using Data = std::shared_ptr<const std::string>;

  // The same one for the same data: choices side by side share their photographs. Sizes are pixels,
  // each side at most 65535 (ITU-T T.81, B.2.2).
  std::string stand_in(const Data& jpeg, int width, int height, int components);

  // What the stand-in stands for; null where it is none.
  Data data_of(std::string_view stand_in) const;

  std::size_t bytes() const;

 private:
  std::vector<Data> kept_;
  std::map<std::string, std::size_t, std::less<>> numbers_;  // of each stand-in
};

// JPEG data take the places of their stand-ins. Cairo calls their colours the device's: where the
// data hold an ICC profile, the image gets the colour space of that profile (ISO 32000-1, 8.6.5.5),
// kept once for all images that share it; CMYK data of Adobe's kind get the decode array that turns
// them round (8.9.5.2).
void place_jpegs(QPDF& document, const KeptJpegs& jpegs);

}  // namespace mullion::paper
