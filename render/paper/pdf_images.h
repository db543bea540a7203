#pragma once

// Photographs in a PDF: their data and their colour spaces.

#include "render/paper/kept_jpegs.h"

class QPDF;

namespace mullion::paper {

// JPEG data take the places of their stand-ins. Cairo calls their colours the device's: where the
// data hold an ICC profile, the image gets the colour space of that profile (ISO 32000-1, 8.6.5.5),
// kept once for all images that share it; CMYK data of Adobe's kind get the decode array that turns
// them round (8.9.5.2).
void place_jpegs(QPDF& document, const KeptJpegs& jpegs);

}  // namespace mullion::paper
