#include "likeness.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace mats {

using namespace mullion;
using simulator::Spot;
using simulator::Track;

namespace {

using Way = std::vector<Spot>;

double distance(Spot p, Spot a, Spot b) {
  const double dx = b.x - a.x, dy = b.y - a.y;
  const double square = dx * dx + dy * dy;
  const double along =
      square > 0 ? std::clamp(((p.x - a.x) * dx + (p.y - a.y) * dy) / square, 0.0, 1.0) : 0;
  return std::hypot(p.x - a.x - along * dx, p.y - a.y - along * dy);
}

bool lies_on(Spot p, const std::vector<Way>& ways, double loose) {
  for (const Way& way : ways) {
    for (std::size_t i = 1; i < way.size(); ++i) {
      const Spot a = way[i - 1], b = way[i];
      if (p.x < std::min(a.x, b.x) - loose || p.x > std::max(a.x, b.x) + loose) continue;
      if (p.y < std::min(a.y, b.y) - loose || p.y > std::max(a.y, b.y) + loose) continue;
      if (distance(p, a, b) <= loose) return true;
    }
  }
  return false;
}

// The edge's corners, points beside them and points between them.
Way points_of(const Outline& outline) {
  Way out;
  for (const Cubic& curve : curves_of(outline)) {
    for (const double t : {0.0, 0.005, 0.2, 0.4, 0.6, 0.8, 0.995}) {
      const Vector v = mullion::place(curve, t);
      out.push_back({v.x, v.y});
    }
  }
  return out;
}

Way closed_way(const Outline& outline) {
  Way out;
  for (const Vector& v : flatten(outline, Length::from_ticks(2))) out.push_back({v.x, v.y});
  out.push_back(out.front());
  return out;
}

bool all_cut(const Outline& edge, const std::vector<Way>& cuts, double loose) {
  const Way points = points_of(edge);
  return std::all_of(points.begin(), points.end(), [&](Spot p) { return lies_on(p, cuts, loose); });
}

// An odd number of crossings to the right.
bool within(Spot p, const Way& around) {
  bool inside = false;
  for (std::size_t i = 1; i < around.size(); ++i) {
    const Spot a = around[i - 1], b = around[i];
    if ((a.y > p.y) == (b.y > p.y)) continue;
    if (a.x + (p.y - a.y) / (b.y - a.y) * (b.x - a.x) > p.x) inside = !inside;
  }
  return inside;
}

// What lies within the window falls out with it.
bool cuts_into_board(const Outline& edge, const std::vector<Way>& cuts, double loose) {
  const std::vector<Way> around{closed_way(edge)};
  constexpr std::size_t checks = 24;
  for (const Way& way : cuts) {
    const std::size_t stride = std::max<std::size_t>(1, way.size() / checks);
    for (std::size_t i = 0; i < way.size(); i += stride) {
      const Spot p = i + stride < way.size() ? way[i] : way.back();
      if (!within(p, around.front()) && !lies_on(p, around, loose)) return true;
    }
  }
  return false;
}

double ticks(Length a) {
  return static_cast<double>(a.ticks());
}

}  // namespace

std::string unlike(const Window& window, const std::vector<Track>& tracks, double loose) {
  std::vector<Way> back, face;
  for (const Track& track : tracks) {
    back.push_back(track.back);
    face.push_back(track.face);
  }
  if (!all_cut(window.back_edge, back, loose)) return "the back edge";
  if (!all_cut(window.face_edge, face, loose)) return "the face edge";
  if (cuts_into_board(window.face_edge, face, loose)) return "a cut into the face";
  return "";
}

double ellipse_off_parallel(const Rect& ellipse, const Rect& sight) {
  const double a = ticks(sight.width()) / 2, b = ticks(sight.height()) / 2;
  const double outward = ticks(ellipse.width()) / 2 - a;
  double most = 0;
  for (int i = 0; i <= 90; ++i) {
    const double angle = i * std::numbers::pi / 180;
    const double c = std::cos(angle), s = std::sin(angle);
    const double drawn = std::hypot(a * c, b * s) + outward;
    const double cut = std::hypot((a + outward) * c, (b + outward) * s);
    most = std::max(most, std::abs(drawn - cut));
  }
  return most;
}

}  // namespace mats
