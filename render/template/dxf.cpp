#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <numbers>
#include <optional>

#include "render/template/plot.h"

namespace mullion {
namespace {

using paper::Spot;

constexpr double tolerance = 0.003;  // mm, of an arc from the curve
constexpr int most_halvings = 10;

struct Cubic {
  Spot a, b, c, d;
};

Spot between(Spot p, Spot q) {
  return {(p.x + q.x) / 2, (p.y + q.y) / 2};
}

Spot at(const Cubic& curve, double t) {
  const double u = 1 - t;
  const double wa = u * u * u, wb = 3 * u * u * t, wc = 3 * u * t * t, wd = t * t * t;
  return {wa * curve.a.x + wb * curve.b.x + wc * curve.c.x + wd * curve.d.x,
          wa * curve.a.y + wb * curve.b.y + wc * curve.c.y + wd * curve.d.y};
}

std::array<Cubic, 2> halves(const Cubic& curve) {
  const Spot ab = between(curve.a, curve.b), bc = between(curve.b, curve.c),
             cd = between(curve.c, curve.d);
  const Spot abc = between(ab, bc), bcd = between(bc, cd), middle = between(abc, bcd);
  return {Cubic{curve.a, ab, abc, middle}, Cubic{middle, bcd, cd, curve.d}};
}

struct Arc {
  Spot centre;
  double radius = 0;
};

// The circle through the curve's ends and middle, where the curve follows it.
std::optional<Arc> arc_along(const Cubic& curve) {
  const Spot p = curve.a, q = at(curve, 0.5), r = curve.d;
  const double bx = q.x - p.x, by = q.y - p.y, cx = r.x - p.x, cy = r.y - p.y;
  const double d = 2 * (bx * cy - by * cx);
  if (std::abs(d) < 1e-9) return std::nullopt;
  const double b2 = bx * bx + by * by, c2 = cx * cx + cy * cy;
  const double ux = (cy * b2 - by * c2) / d, uy = (bx * c2 - cx * b2) / d;
  const Arc arc{{p.x + ux, p.y + uy}, std::hypot(ux, uy)};
  for (int i = 1; i < 16; ++i) {
    const Spot s = at(curve, i / 16.0);
    if (std::abs(std::hypot(s.x - arc.centre.x, s.y - arc.centre.y) - arc.radius) > tolerance) {
      return std::nullopt;
    }
  }
  return arc;
}

bool is_straight(const Cubic& curve) {
  const double x = curve.d.x - curve.a.x, y = curve.d.y - curve.a.y, length = std::hypot(x, y);
  const auto off = [&](Spot s) {
    return length == 0 ? std::hypot(s.x - curve.a.x, s.y - curve.a.y)
                       : std::abs((s.x - curve.a.x) * y - (s.y - curve.a.y) * x) / length;
  };
  return off(curve.b) < tolerance && off(curve.c) < tolerance;
}

class Dxf {
 public:
  explicit Dxf(double height) : height_(height) {
    text_ =
        "999\nmillimetres, seen from the back of the board\n0\nSECTION\n2\nHEADER\n"
        "9\n$ACADVER\n1\nAC1009\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n";
  }

  void add(const Outline& outline, const char* layer) {
    layer_ = layer;
    Spot here = spot(outline.start);
    for (const Segment& segment : outline.segments) {
      const Spot to = spot(segment.to);
      if (segment.curved) {
        curve({here, spot(segment.control1), spot(segment.control2), to}, most_halvings);
      } else {
        line(here, to);
      }
      here = to;
    }
    line(here, spot(outline.start));
  }

  std::string finish() { return text_ + "0\nENDSEC\n0\nEOF\n"; }

 private:
  Spot spot(const Point& point) const {
    return {to_millimetres(point.x), height_ - to_millimetres(point.y)};
  }

  void curve(const Cubic& cubic, int halvings) {
    if (is_straight(cubic)) return line(cubic.a, cubic.d);
    if (const auto found = arc_along(cubic)) return arc(*found, cubic);
    if (halvings == 0) return line(cubic.a, cubic.d);
    for (const Cubic& half : halves(cubic)) curve(half, halvings - 1);
  }

  void line(Spot from, Spot to) {
    if (from.x == to.x && from.y == to.y) return;
    entity("LINE");
    pair(10, from);
    pair(11, to);
  }

  // Arcs run counterclockwise; y points upward.
  void arc(const Arc& arc, const Cubic& cubic) {
    const Spot middle = at(cubic, 0.5);
    const double turn = (middle.x - cubic.a.x) * (cubic.d.y - cubic.a.y) -
                        (middle.y - cubic.a.y) * (cubic.d.x - cubic.a.x);
    const Spot first = turn > 0 ? cubic.a : cubic.d, last = turn > 0 ? cubic.d : cubic.a;
    entity("ARC");
    pair(10, arc.centre);
    number(40, arc.radius);
    number(50, degrees(arc.centre, first));
    number(51, degrees(arc.centre, last));
  }

  static double degrees(Spot centre, Spot at) {
    const double angle = std::atan2(at.y - centre.y, at.x - centre.x) * 180 / std::numbers::pi;
    return angle < 0 ? angle + 360 : angle;
  }

  void entity(const char* kind) { text_ += std::string("0\n") + kind + "\n8\n" + layer_ + "\n"; }
  void pair(int code, Spot value) {
    number(code, value.x);
    number(code + 10, value.y);
  }
  void number(int code, double value) {
    char line[64];
    std::snprintf(line, sizeof line, "%d\n%.6f\n", code, value);
    text_ += line;
  }

  double height_;
  std::string text_;
  std::string layer_;
};

const char* layer_of(PlotLine::Kind kind) {
  switch (kind) {
    case PlotLine::Kind::opening:
      return "OPENINGS";
    case PlotLine::Kind::groove:
      return "GROOVES";
    case PlotLine::Kind::outer_edge:
      return "OUTER_EDGE";
  }
  return "";
}

}  // namespace

std::string write_dxf(const Plot& plot) {
  Dxf dxf(to_millimetres(plot.height));
  for (const PlotLine& line : plot.lines) {
    dxf.add(line.outline, layer_of(line.kind));
  }
  return dxf.finish();
}

}  // namespace mullion
