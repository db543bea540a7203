#pragma once

// Paths on paper: straight lines and cubic Bezier curves, open or closed; boxes and affine maps.
//
// Units are points (1/72 in), x to the right, y down. Geometry that is cut stays exact in Length
// until it is drawn; `trace` converts it, once.

#include <cstddef>
#include <vector>

#include "engine/layout/layout.h"
#include "engine/mat/outline.h"

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

Box grown(const Box& box, double by);
Box united(const Box& a, const Box& b);
Box common(const Box& a, const Box& b);    // empty where they do not overlap
bool overlap(const Box& a, const Box& b);  // touching counts
bool contains(const Box& outer, const Box& inner);

// An affine map: x' = xx x + xy y + x0, y' = yx x + yy y + y0.
struct Transform {
  double xx = 1, yx = 0, xy = 0, yy = 1, x0 = 0, y0 = 0;

  Spot operator()(Spot spot) const;
  bool moves() const { return *this != Transform{}; }
  friend bool operator==(const Transform&, const Transform&) = default;
};

Transform shifted(double x, double y);
Transform scaled(double factor);
Transform turned(double degrees);  // clockwise on paper
Transform then(const Transform& first, const Transform& second);
Transform inverse(const Transform& map);
Box bounds_of(const Transform& map, const Box& box);

class Path {
 public:
  enum class Kind { move, line, curve, close };
  struct Step {
    Kind kind = Kind::move;
    Spot to;                  // unused by close
    Spot control1, control2;  // curve only
  };

  Path& move_to(Spot to);
  Path& line_to(Spot to);
  Path& curve_to(Spot control1, Spot control2, Spot to);
  Path& close();
  Path& append(const Path& other);

  const std::vector<Step>& steps() const { return steps_; }
  bool empty() const { return steps_.empty(); }

 private:
  std::vector<Step> steps_;
};

// Smallest box around the path's points and control points; an empty path has an empty box.
Box bounds_of(const Path& path);

Path line(Spot from, Spot to);
Path rectangle(const Box& box);
Path rounded_rectangle(const Box& box, double radius);
Path circle(Spot centre, double radius);
Path ellipse(const Box& box);
Path polyline(const std::vector<Spot>& spots);
Path polygon(const std::vector<Spot>& corners);

Spot to_spot(const Point& point);
Box to_box(const Rect& rect);
Path trace(const Rect& rect);
Path trace(const Outline& outline);

Path transformed(const Path& path, const Transform& map);

struct Edge {
  Spot from, to;
};

// The path's straight lines, and chords of its curves that stray by less than 0.05 point.
std::vector<Edge> flattened(const Path& path);

bool has_curves(const Path& path);

// What lies in the box of a path of straight lines: to be stroked, and to be filled.
Path lines_inside(const Path& path, const Box& box);
Path area_inside(const Path& path, const Box& box);

// The region's inside (even-odd) filled with parallel lines `spacing` apart, at an angle from the
// horizontal, counterclockwise on paper. Lines of neighbouring regions are in step. Curves are
// followed to within 0.05 point.
Path hatching(const Path& region, double spacing, double degrees = 45);

}  // namespace mullion::paper
