#include "render/template/tool_path.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace mullion {
namespace {

using paper::Spot;
using Corner = ToolPath::Corner;

constexpr double tolerance = 0.003;  // mm, of an arc from the curve
constexpr int most_halvings = 10;
constexpr double mm_per_point = 25.4 / 72;

Vector vector_of(Spot spot) {
  return {spot.x, spot.y};
}

Spot spot_of(Vector v) {
  return {v.x, v.y};
}

Vector in_millimetres(Vector ticks) {
  return ticks * (1.0 / static_cast<double>(ticks_per_mm));
}

std::array<Cubic, 2> halves(const Cubic& curve) {
  const auto between = [](Vector p, Vector q) { return (p + q) * 0.5; };
  const Vector ab = between(curve.start, curve.control1),
               bc = between(curve.control1, curve.control2),
               cd = between(curve.control2, curve.end);
  const Vector abc = between(ab, bc), bcd = between(bc, cd), middle = between(abc, bcd);
  return {Cubic{curve.start, ab, abc, middle}, Cubic{middle, bcd, cd, curve.end}};
}

std::optional<Circle> circle_through(Vector p, Vector q, Vector r) {
  const Vector b = q - p, c = r - p;
  const double d = 2 * cross(b, c);
  if (std::abs(d) < 1e-9) return std::nullopt;
  const double b2 = dot(b, b), c2 = dot(c, c);
  const Vector u{(c.y * b2 - b.y * c2) / d, (b.x * c2 - c.x * b2) / d};
  return Circle{spot_of(p + u), norm(u)};
}

// The circle through the curve's ends and middle, where the curve follows it.
std::optional<Circle> circle_along(const Cubic& curve) {
  const auto circle = circle_through(curve.start, place(curve, 0.5), curve.end);
  if (!circle) return std::nullopt;
  for (int i = 1; i < 16; ++i) {
    const double off = norm(place(curve, i / 16.0) - vector_of(circle->centre)) - circle->radius;
    if (std::abs(off) > tolerance) return std::nullopt;
  }
  return circle;
}

bool is_straight(const Cubic& curve) {
  const Vector along = curve.end - curve.start;
  const double length = norm(along);
  const auto off = [&](Vector v) {
    return length == 0 ? norm(v - curve.start) : std::abs(cross(v - curve.start, along)) / length;
  };
  return off(curve.control1) < tolerance && off(curve.control2) < tolerance;
}

// Of an arc of less than half a circle between the curve's ends.
double bulge_of(const Cubic& curve, const Circle& circle) {
  const Vector from = curve.start - vector_of(circle.centre),
               to = curve.end - vector_of(circle.centre);
  return std::tan(std::atan2(cross(from, to), dot(from, to)) / 4);
}

void add(std::vector<Corner>& corners, const Cubic& curve, int halvings) {
  const Spot start = spot_of(curve.start);
  if (norm(curve.end - curve.start) == 0 && is_straight(curve)) return;
  if (is_straight(curve)) return corners.push_back({start, 0});
  if (const auto circle = circle_along(curve)) {
    return corners.push_back({start, bulge_of(curve, *circle)});
  }
  if (halvings == 0) return corners.push_back({start, 0});
  for (const Cubic& half : halves(curve)) add(corners, half, halvings - 1);
}

// A part of a path, from a corner to the next.
struct Part {
  Vector from, to;
  double bulge = 0;

  double angle() const { return 4 * std::atan(bulge); }
  double chord() const { return norm(to - from); }
  double length() const {
    return bulge == 0 ? chord() : std::abs(chord() / (2 * std::sin(angle() / 2)) * angle());
  }
  Vector centre() const {
    const Vector across{from.y - to.y, to.x - from.x};
    return (from + to) * 0.5 + across * ((1 - bulge * bulge) / (4 * bulge));
  }
  Vector direction() const {  // at its start
    const Vector along = to - from;
    const double half = -angle() / 2;
    return unit({along.x * std::cos(half) - along.y * std::sin(half),
                 along.x * std::sin(half) + along.y * std::cos(half)});
  }
  Vector at(double share) const {
    if (bulge == 0) return from + (to - from) * share;
    const Vector c = centre(), out = from - c;
    const double turn = angle() * share;
    return c + Vector{out.x * std::cos(turn) - out.y * std::sin(turn),
                      out.x * std::sin(turn) + out.y * std::cos(turn)};
  }
  Part between(double first, double last) const {
    return {at(first), at(last), std::tan(std::atan(bulge) * (last - first))};
  }
};

std::vector<Part> parts_of(const ToolPath& path) {
  std::vector<Part> parts;
  for (std::size_t i = 0; i < path.corners.size(); ++i) {
    const Corner& corner = path.corners[i];
    const Corner& next = path.corners[(i + 1) % path.corners.size()];
    parts.push_back({vector_of(corner.at), vector_of(next.at), corner.bulge});
  }
  return parts;
}

// Runs from the middle of the longest straight part, or of the first one, around to it.
std::vector<Part> opened(std::vector<Part> parts) {
  const auto straight = [](const Part& part) { return part.bulge == 0 ? part.length() : 0; };
  const auto longest =
      std::max_element(parts.begin(), parts.end(),
                       [&](const Part& a, const Part& b) { return straight(a) < straight(b); });
  std::rotate(parts.begin(), longest, parts.end());
  const Part first = parts.front();
  parts.front() = first.between(0.5, 1);
  parts.push_back(first.between(0, 0.5));
  return parts;
}

double twice_area(const std::vector<Part>& parts) {
  double sum = 0;
  for (const Part& part : parts) {
    sum += cross(part.from, part.to);
    if (part.bulge == 0) continue;
    const double radius = norm(part.from - part.centre()), angle = part.angle();
    sum += radius * radius * (angle - std::sin(angle));
  }
  return sum;
}

// Is the straight way from `start` free of the parts, but for its start?
bool crosses(const std::vector<Part>& parts, Vector start, Vector end) {
  constexpr int chords = 8;
  const Vector near = start + (end - start) * 1e-3;
  return std::any_of(parts.begin(), parts.end(), [&](const Part& part) {
    for (int i = 0; i < chords; ++i) {
      if (cross_each_other(near, end, part.at(i / static_cast<double>(chords)),
                           part.at((i + 1) / static_cast<double>(chords)))) {
        return true;
      }
    }
    return false;
  });
}

}  // namespace

ToolPath tool_path(const Outline& outline) {
  ToolPath path;
  for (const Cubic& curve : curves_of(outline)) {
    add(path.corners,
        {in_millimetres(curve.start), in_millimetres(curve.control1),
         in_millimetres(curve.control2), in_millimetres(curve.end)},
        most_halvings);
  }
  return path;
}

std::optional<Circle> circle_of(const ToolPath& path) {
  if (!path.closed || path.corners.size() < 4) return std::nullopt;
  const auto [left, right] =
      std::minmax_element(path.corners.begin(), path.corners.end(),
                          [](const Corner& a, const Corner& b) { return a.at.x < b.at.x; });
  const auto [top, bottom] =
      std::minmax_element(path.corners.begin(), path.corners.end(),
                          [](const Corner& a, const Corner& b) { return a.at.y < b.at.y; });
  const Circle circle{{(left->at.x + right->at.x) / 2, (top->at.y + bottom->at.y) / 2},
                      (right->at.x - left->at.x) / 2};
  const std::vector<Part> parts = parts_of(path);
  const bool round = std::all_of(parts.begin(), parts.end(), [&](const Part& part) {
    const auto off = [&](Vector v) {
      return std::abs(norm(v - vector_of(circle.centre)) - circle.radius);
    };
    return part.bulge != 0 && off(part.from) < tolerance && off(part.at(0.5)) < tolerance;
  });
  return round ? std::optional(circle) : std::nullopt;
}

tl::expected<ToolPath, std::string> with_leads(const ToolPath& path, const Leads& leads,
                                               WasteSide waste) {
  const std::vector<Part> parts = opened(parts_of(path));
  const Vector start = parts.front().from, ahead = parts.front().direction();
  const bool to_the_right = (twice_area(parts) > 0) == (waste == WasteSide::inside);
  const Vector across{to_the_right ? -ahead.y : ahead.y, to_the_right ? ahead.x : -ahead.x};
  const double in = to_millimetres(leads.in);
  double over = to_millimetres(leads.over_cut);
  ToolPath result{{}, false};
  if (in > 0) {
    const Vector from = start + across * in;
    if (crosses(parts, start, start + across * (2 * in))) {
      return tl::unexpected(std::string("there is no room in the waste for the lead-in"));
    }
    result.corners.push_back({spot_of(from), 0});
  }
  for (const Part& part : parts) result.corners.push_back({spot_of(part.from), part.bulge});
  for (std::size_t i = 0; over > 0; ++i) {
    if (i == parts.size()) {
      return tl::unexpected(std::string("the over-cut is longer than the line"));
    }
    const double share = std::min(1.0, over / parts[i].length());
    const Part run = parts[i].between(0, share);
    result.corners.push_back({spot_of(run.from), run.bulge});
    over -= parts[i].length();
    if (over <= 0) result.corners.push_back({spot_of(run.to), 0});
  }
  if (leads.over_cut == Length()) result.corners.push_back({spot_of(start), 0});
  return result;
}

paper::Path traced(const ToolPath& path) {
  const auto on_paper = [](Vector v) { return Spot{v.x / mm_per_point, v.y / mm_per_point}; };
  paper::Path result;
  std::vector<Part> parts = parts_of(path);
  if (!path.closed) parts.pop_back();
  result.move_to(on_paper(parts.front().from));
  for (const Part& part : parts) {
    if (part.bulge == 0) {
      result.line_to(on_paper(part.to));
      continue;
    }
    const Vector centre = part.centre(), out = part.from - centre;
    const double from = std::atan2(out.y, out.x);
    for (const Cubic& curve : arc(centre, norm(out), from, from + part.angle())) {
      result.curve_to(on_paper(curve.control1), on_paper(curve.control2), on_paper(curve.end));
    }
  }
  if (path.closed) result.close();
  return result;
}

}  // namespace mullion
