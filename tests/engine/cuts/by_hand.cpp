#include "by_hand.h"

#include <cmath>
#include <numbers>

#include "engine/length/format.h"

namespace simulator {

using mullion::Length;
using nlohmann::json;

namespace {

// A chord lies no farther from its arc, in ticks.
constexpr double chord_error = 2;

double ticks(const json& text) {
  return static_cast<double>(length_of(text).ticks());
}

Spot spot(const json& point) {
  return {ticks(point.at("from_B")), ticks(point.at("from_A"))};
}

Spot operator+(Spot a, Spot b) {
  return {a.x + b.x, a.y + b.y};
}
Spot operator-(Spot a, Spot b) {
  return {a.x - b.x, a.y - b.y};
}
Spot operator*(Spot a, double k) {
  return {a.x * k, a.y * k};
}
double size(Spot a) {
  return std::hypot(a.x, a.y);
}
// To the left of the way as the front shows it, where y goes down.
Spot left_of(Spot way) {
  return Spot{way.y, -way.x} * (1 / size(way));
}

void add(Track& track, Spot at, Spot way, double run) {
  track.back.push_back(at);
  track.face.push_back(at + left_of(way) * run);
}

Track oval(const json& curve, double run) {
  const Spot centre = spot(curve.at("centre"));
  const double a = ticks(curve.at("back").at("half_width"));
  const double b = ticks(curve.at("back").at("half_height"));
  const double flattest = std::max(a * a / b, b * b / a);
  const int steps =
      8 + static_cast<int>(2 * std::numbers::pi / std::sqrt(8 * chord_error / flattest));
  Track track;
  for (int i = 0; i <= steps; ++i) {
    const double angle = 2 * std::numbers::pi * i / steps;
    const double c = std::cos(angle), s = std::sin(angle);
    add(track, centre + Spot{a * c, b * s}, {-a * s, b * c}, run);
  }
  return track;
}

// Four points of a cubic Bezier curve, and the way at them.
struct Bend {
  Spot a, b, c, d;

  Spot at(double t) const {
    const double s = 1 - t;
    return a * (s * s * s) + b * (3 * s * s * t) + c * (3 * s * t * t) + d * (t * t * t);
  }
  Spot way(double t) const {
    const double s = 1 - t;
    const Spot out = (b - a) * (s * s) + (c - b) * (2 * s * t) + (d - c) * (t * t);
    if (size(out) > 1e-3) return out;  // a control point on an end
    return t < 0.5 ? c - a : d - b;
  }
  int steps() const {
    const double most = 6 * std::max(size(a - b * 2 + c), size(b - c * 2 + d));
    return 1 + static_cast<int>(std::sqrt(most / (8 * chord_error)));
  }
};

Bend bend_of(Spot from, const json& part) {
  const Spot to = spot(part.at("to"));
  if (!part.contains("controls")) {
    return {from, from + (to - from) * (1.0 / 3), from + (to - from) * (2.0 / 3), to};
  }
  return {from, spot(part.at("controls")[0]), spot(part.at("controls")[1]), to};
}

// Each part of the line on past both its ends by their over-cuts, straight ahead.
std::vector<Track> along_template(const json& line, double run) {
  std::vector<Track> tracks;
  Spot from = spot(line.at("from"));
  double before = ticks(line.at("over_cut"));
  for (const json& part : line.at("parts")) {
    const Bend bend = bend_of(from, part);
    const double after = ticks(part.at("over_cut"));
    const Spot out = bend.way(0), in = bend.way(1);
    Track track;
    if (before > 0) add(track, bend.a - out * (before / size(out)), out, run);
    for (int i = 0, n = bend.steps(); i <= n; ++i) {
      add(track, bend.at(double(i) / n), bend.way(double(i) / n), run);
    }
    if (after > 0) add(track, bend.d + in * (after / size(in)), in, run);
    tracks.push_back(std::move(track));
    from = bend.d;
    before = after;
  }
  return tracks;
}

}  // namespace

Length length_of(const json& text) {
  return mullion::parse_length(text.get<std::string>(), mullion::Unit::inch).value();
}

Track along_rail(const json& cut, const Cutter& cutter, Length run) {
  const auto past = [&](std::size_t end, Length lead) {
    return static_cast<double>((length_of(cut.at("mark_past_line")[end]) + lead).ticks());
  };
  const Spot from = spot(cut.at("from")), to = spot(cut.at("to"));
  const Spot ahead = (to - from) * (1 / size(to - from));
  // Face down and pulled toward the operator, the table's left is the front's.
  const bool tip_left = cutter.guide_on_left == cutter.tip_to_guide;
  const double out = static_cast<double>(run.ticks()) * (tip_left == cutter.pulled ? 1 : -1);
  Track track;
  add(track, from - ahead * past(0, cutter.start_lead), to - from, out);
  add(track, to + ahead * past(1, cutter.mark_lead), to - from, out);
  return track;
}

std::vector<Track> along_curve(const json& curve, Length run) {
  const double out = static_cast<double>(run.ticks());
  if (curve.at("kind") == "oval cutter") return {oval(curve, out)};
  // Clockwise, the window is to the right and the board that is kept to the left.
  const double side = curve.at("direction") == "clockwise as seen from the front" ? 1 : -1;
  std::vector<Track> tracks;
  for (const json& line : curve.at("lines")) {
    for (Track& track : along_template(line, out * side)) tracks.push_back(std::move(track));
  }
  return tracks;
}

}  // namespace simulator
