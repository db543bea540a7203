#pragma once

// A copy of a picture for a screen: upright, in sRGB, with no more pixels than are asked for.

#include <string>
#include <tl/expected.hpp>

#include "render/picture/photograph.h"

namespace mullion::picture {

struct ScreenCopy {
  std::string bytes;
  std::string type;  // "image/jpeg"; "image/png" where pixels are transparent
};

// Its longer side has at most `longest` pixels. The error is one sentence, without a file's name.
tl::expected<ScreenCopy, std::string> screen_copy(const Photograph& photograph, int longest);

}  // namespace mullion::picture
