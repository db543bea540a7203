#pragma once

// A photograph on a page: it fills a box, cropped, upright as its orientation says.

#include "render/paper/document.h"

namespace mullion::paper {

// The whole photograph when what the crop leaves of it fills the box.
Box uncropped(const ImageHeader& header, const Box& box, const picture::Crop& crop);

// What a document of the format cannot hold as it is stored, or is not to, is decoded here. The
// drawing can be written in every format all the same. The error is one sentence, without the
// file's name.
tl::expected<void, std::string> draw_photograph(Drawing& drawing, Format format,
                                                const picture::Photograph& photograph,
                                                const Box& box, const picture::Crop& crop,
                                                const picture::Resolution& resolution);

}  // namespace mullion::paper
