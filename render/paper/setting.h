#pragma once

// The set text as the writers see it: a Pango layout of a fixed em size, to be drawn scaled.

#include <pango/pangocairo.h>

#include "render/paper/text.h"

namespace mullion::paper {

struct Text::Setting {
  std::string content;
  TextStyle style;
  std::shared_ptr<PangoLayout> layout;
  double scale = 1;  // from the layout's units to points
  double width = 0, height = 0, baseline = 0;
};

// So that text has the same width on every surface: no hinting, letters not on whole points, and
// Pango's scale of a font size 1/72 in, as ours is.
void set_for_any_surface(PangoContext* context);

}  // namespace mullion::paper
