#pragma once

// How much of something a piece takes, as an exact number with its reckoning in words.

#include <string>

#include "engine/locale/locale.h"
#include "engine/shop/book.h"

namespace mullion::price {

struct Quantity {
  Amount number;
  std::string how;  // "16 + 14 = 30 united inches"
};

Quantity united_inches(Length width, Length height, const Locale& locale);
Quantity area(Length width, Length height, Basis basis, const Scale& scale, const Locale& locale);

// Share of a sheet that one blank takes: one part in as many as a plain grid gets out of it, the
// blank turned or not. Zero where it does not fit.
Quantity sheet_share(Length width, Length height, const BoardPrice& board, const Scale& scale,
                     const Locale& locale);

// Length of moulding: once around the rabbet, eight widths of the moulding for the mitres (common
// practice, no source), the waste, and up to what it is sold in.
Quantity moulding_length(const Frame& frame, const MouldingPrice& moulding, const Scale& scale,
                         const Locale& locale);

// A decimal of at most two places, for reading.
std::string plain(const Amount& number, const Locale& locale);

}  // namespace mullion::price
