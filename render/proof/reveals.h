#pragma once

// Reveals in words: how much of each under-mat shows, and where that differs.

#include <vector>

#include "render/proof/facts.h"

namespace mullion::proof {

// For each layer below the top mat the reveal that most sides have, then the sides that have
// another; by openings where these differ among one another.
std::vector<SizeFact> reveal_facts(const Piece& piece, const Locale& locale);

}  // namespace mullion::proof
