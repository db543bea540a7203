#pragma once

// Sizes in words, for people who may measure in another unit than the sheet was sold in.

#include <string>

#include "engine/length/format.h"
#include "engine/locale/locale.h"

namespace mullion {

// The length in the scale; where the scale cannot say it exactly, in the other system's usual scale
// (1/16 in or 1/2 mm); where neither can, the nearest of the scale with "about".
std::string size_text(Length length, const Scale& scale, const Locale& locale = {});

// "16 x 20 in".
std::string size_text(Length width, Length height, const Scale& scale, const Locale& locale = {});

}  // namespace mullion
