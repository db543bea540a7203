#pragma once

// Text, set and measured before it is drawn, so that labels can be placed without collisions and
// drawn on many pages without being set again. All fitting of texts to a width is here.
//
// Sizes are points. Pango substitutes other faces for characters that a face lacks. No hinting and
// no rounding to pixels: text has the same width on every surface.

#include <memory>
#include <string>
#include <vector>

#include "engine/xml/colour.h"
#include "render/paper/path.h"

namespace mullion::paper {

enum class Anchor { left, centre, right };

struct TextStyle {
  double size = 9;  // of the font, in points
  bool bold = false;
  Colour colour{0, 0, 0};
  Anchor anchor = Anchor::left;
  double turn = 0;                     // degrees clockwise about the spot
  const char* family = "DejaVu Sans";  // several with commas: the first that is installed
  double tracking = 0;                 // points added between letters
};

// One line, or several where `wrap` is a width: "\n" breaks a line then, as does a word that would
// pass the width. Bytes that are not UTF-8 and control characters are replaced; of a single line, no
// more than 16,000 bytes are kept.
class Text {
 public:
  Text(const std::string& content, const TextStyle& style, double wrap = 0);

  const std::string& content() const;
  const TextStyle& style() const;
  double width() const;     // of the widest line, by advance
  double height() const;    // of all lines
  double baseline() const;  // of the first line, from the top

  // Each without the blanks at its end; none of an empty text.
  std::vector<std::string> lines() const;

  struct Setting;  // for the writers (cairo.h)
  const Setting& setting() const { return *setting_; }

 private:
  std::shared_ptr<const Setting> setting_;
};

double text_width(const std::string& content, const TextStyle& style);

// The longest beginning of the text that fits, ended by an ellipsis where it was cut.
std::string fitted(const std::string& content, double width, const TextStyle& style);

// The style made smaller where the text is wider than the width: to as little as `least` of its
// size, where a text may still be too wide.
TextStyle narrowed(const std::string& content, double width, TextStyle style, double least = 0);

// Broken between words where it is wider than the width, within a word where there is no other way.
std::vector<std::string> lines_of(const std::string& content, double width, const TextStyle& style);

// The letters' outlines, from the text's upper left corner.
Path outlines_of(const Text& text);

}  // namespace mullion::paper
