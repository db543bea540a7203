#pragma once

// The letters of a proof: one family, few sizes, generous space.

#include "render/paper/drawing.h"

namespace mullion::proof::type {

inline constexpr Colour ink{0x26, 0x24, 0x21}, quiet{0x69, 0x65, 0x5e}, rule{0xcf, 0xcb, 0xc3};
inline constexpr const char* family = "Lato, DejaVu Sans";

inline paper::TextStyle body(double size = 8.5) {
  return {.size = size, .colour = ink, .family = family};
}
inline paper::TextStyle strong(double size = 8.5) {
  return {.size = size, .bold = true, .colour = ink, .family = family};
}
inline paper::TextStyle faint(double size = 8) {
  return {.size = size, .colour = quiet, .family = family};
}
inline paper::TextStyle heading() {
  return {.size = 7, .bold = true, .colour = quiet, .family = family, .tracking = 0.9};
}
inline paper::TextStyle title(double size = 23) {
  return {.size = size, .colour = ink, .family = "Lato Light, Lato, DejaVu Sans"};
}
inline paper::TextStyle right(paper::TextStyle style) {
  style.anchor = paper::Anchor::right;
  return style;
}
inline paper::TextStyle centred(paper::TextStyle style) {
  style.anchor = paper::Anchor::centre;
  return style;
}

inline constexpr double row = 12.5;  // from line to line of a table

}  // namespace mullion::proof::type
