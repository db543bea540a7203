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

}  // namespace mullion::paper
