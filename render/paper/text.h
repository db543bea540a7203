#pragma once

// Text, set and measured before it is drawn, so that labels can be placed without collisions and
// drawn on many pages without being set again.
//
// Sizes are points. The face is DejaVu Sans; Pango substitutes other faces for characters that it
// lacks. No hinting and no rounding to pixels: text has the same width on every surface.

#include <memory>
#include <string>

#include "render/paper/canvas.h"
#include "render/paper/path.h"

namespace mullion::paper {

// One or several lines: "\n" breaks a line, and so does `wrap` (0: never). Bytes that are not UTF-8
// and control characters are replaced.
class Text {
 public:
  Text(const std::string& content, const TextStyle& style, double wrap = 0);

  const std::string& content() const;
  const TextStyle& style() const;
  double width() const;     // of the widest line, by advance
  double height() const;    // of all lines
  double baseline() const;  // of the first line, from the top

  struct Setting;  // for the writers
  const Setting& setting() const { return *setting_; }

 private:
  std::shared_ptr<const Setting> setting_;
};

}  // namespace mullion::paper
