#pragma once

// The colour spaces of photographs in a PDF.

class QPDF;

namespace mullion::paper {

// Cairo passes JPEG data on and calls its colours the device's. Where the data hold an ICC profile,
// the image gets the colour space of that profile (ISO 32000-1, 8.6.5.5), kept once for all images
// that share it; CMYK data of Adobe's kind get the decode array that turns them round (8.9.5.2).
// The data stay as they are.
void state_colours(QPDF& document);

}  // namespace mullion::paper
