#pragma once

// JPEG data that go into a PDF as they are, byte for byte.
//
// Cairo would copy many megabytes. It is given a small stand-in instead, the frame of a JPEG of the
// same size and a number, and the data take its place when the PDF is finished.

#include <map>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

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

}  // namespace mullion::paper
