#pragma once

// A page to draw on. Coordinates and line widths are points (1/72 in) from the upper left corner,
// y down; lengths of the job are converted once, by `points`.

#include <string>
#include <vector>

#include "engine/job/job.h"
#include "engine/layout/layout.h"
#include "engine/mat/outline.h"
#include "render/paper/kept_jpegs.h"
#include "render/paper/stamps.h"

typedef struct _cairo cairo_t;

namespace mullion::paper {

constexpr double points(Length length) {
  return to_points(length);
}

struct Spot {
  double x = 0, y = 0;
};

struct Box {
  double x = 0, y = 0, width = 0, height = 0;
};

struct Pen {
  double width = 0.5;
  Colour colour{0, 0, 0};
  std::vector<double> dashes;
  double opacity = 1;
  friend bool operator==(const Pen&, const Pen&) = default;
};

struct Fill {
  Colour colour;
  double opacity = 1;
};

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

class Canvas {
 public:
  // `layers` is told the names of the layers that begin, in their order; `jpegs` and
  // `stamps` are the document's. All three are a PDF's alone.
  explicit Canvas(cairo_t* context, std::vector<std::string>* layers = nullptr,
                  KeptJpegs* jpegs = nullptr, Stamps* stamps = nullptr)
      : context_(context), layers_(layers), jpegs_(jpegs), stamps_(stamps) {}

  void line(Spot from, Spot to, const Pen& pen);
  void polyline(const std::vector<Spot>& spots, const Pen& pen);
  void rectangle(const Box& box, const Pen& pen);
  void fill(const Box& box, const Fill& fill);
  void fill(const std::vector<Spot>& polygon, const Fill& fill);
  void circle(Spot centre, double radius, const Pen& pen);

  // Outlines in ticks, placed with their origin at `origin` and scaled by `scale` (1: true size).
  void outline(const Outline& outline, Spot origin, double scale, const Pen& pen);
  void fill(const Outline& outline, Spot origin, double scale, const Fill& fill);
  // Adds the outline to the current path alone.
  void trace(const Outline& outline, Spot origin, double scale);
  // The area between an outer and an inner outline.
  void fill_between(const Outline& outer, const Outline& inner, Spot origin, double scale,
                    const Fill& fill);
  // Slanting lines inside the outline.
  void hatch(const Outline& outline, Spot origin, double scale, double spacing, const Pen& pen);

  // The spot is where the baseline starts, its middle or its end. Any script.
  void text(const std::string& text, Spot spot, const TextStyle& style);
  double text_width(const std::string& text, const TextStyle& style);
  // The longest beginning of the text that fits, ended by an ellipsis where it was cut.
  std::string fitted(const std::string& text, double width, const TextStyle& style);

  // Lines broken at `width`, from the upper left corner down. Returns the height.
  double paragraph(const std::string& text, Spot corner, double width, const TextStyle& style);

  // Everything drawn between the two calls appears only inside the outline or box.
  void clip(const Outline& outline, Spot origin, double scale);
  void clip(const Box& box);
  void end_clip();

  // What is drawn between the two calls belongs to a layer that a viewer of the PDF can hide; on
  // every page the same name is the same layer. Layers do not nest.
  void begin_layer(const std::string& name);
  void end_layer();

  cairo_t* context() { return context_; }
  KeptJpegs* jpegs() { return jpegs_; }  // null where the page holds none as they are
  Stamps* stamps() { return stamps_; }   // null where each page draws all by itself

 private:
  void stroke(const Pen& pen);
  void paint(const Fill& fill);

  cairo_t* context_;
  std::vector<std::string>* layers_;
  KeptJpegs* jpegs_;
  Stamps* stamps_;
};

}  // namespace mullion::paper
