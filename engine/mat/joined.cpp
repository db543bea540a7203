#include "engine/mat/joined.h"

#include <algorithm>
#include <polyclipping/clipper.hpp>

#include "engine/job/standing.h"
#include "engine/mat/rect.h"

namespace mullion {
namespace {

// Where a part goes on to, behind a bar; in the order of every_side.
using Bars = std::array<std::optional<Length>, 4>;

Rect extended(Rect rect, const Bars& bars) {
  constexpr std::array<Length Rect::*, 4> edges{&Rect::left, &Rect::top, &Rect::right,
                                                &Rect::bottom};
  for (std::size_t side = 0; side < edges.size(); ++side) {
    if (bars[side]) rect.*edges[side] = *bars[side];
  }
  return rect;
}

Rect united(const std::vector<Rect>& rects) {
  Rect out = rects.front();
  for (const Rect& rect : rects) out = united(out, rect);
  return out;
}

class Parts {
 public:
  Parts(const Layout& layout, int first, const std::vector<JoinedPart>& parts, Length step)
      : layout_(layout), first_(first), parts_(parts), step_(step) {}

  std::vector<Rect> of(const Group& group) {
    std::vector<Rect> out = below(group, {});
    if (is_shown_whole(first_)) return {united(out)};
    return out;
  }

 private:
  // Takes the openings in their order.
  std::vector<Rect> of(const Node& node, const Bars& bars) {
    const int before = next();
    if (std::holds_alternative<Opening>(node.what)) {
      return {extended(parts_[taken_++].edge, bars)};
    }
    std::vector<Rect> out = below(std::get<Group>(node.what), bars);
    if (is_shown_whole(before)) return {united(out)};
    return out;
  }

  std::vector<Rect> below(const Group& group, const Bars& bars) {
    const std::size_t start = group.along == Along::row ? 0 : 1, end = start + 2;
    std::vector<Rect> out;
    Bars own = bars;
    int number = next();
    for (std::size_t i = 0; i < group.children.size(); ++i) {
      const int after = number + count(group.children[i]);
      const bool is_last = i + 1 == group.children.size();
      own[end] = is_last ? bars[end]
                         : middle(placed(number, after),
                                  placed(after, after + count(group.children[i + 1])), group.along);
      const std::vector<Rect> more = of(group.children[i], own);
      out.insert(out.end(), more.begin(), more.end());
      own[start] = own[end];
      number = after;
    }
    return out;
  }

  int next() const { return first_ + static_cast<int>(taken_); }

  // Whether the openings taken since then are all seen through one window above.
  bool is_shown_whole(int since) const {
    const auto& shared = parts_[static_cast<std::size_t>(since - first_)].shared;
    if (!shared) return false;
    const std::vector<int>& openings = layout_.groups[*shared].openings;
    return openings.front() <= since && openings.back() >= next() - 1;
  }

  static int count(const Node& node) {
    const auto* group = std::get_if<Group>(&node.what);
    if (group == nullptr) return 1;
    int sum = 0;
    for (const Node& child : group->children) sum += count(child);
    return sum;
  }

  Rect placed(int from, int to) const {
    std::vector<Rect> rects;
    for (int number = from; number < to; ++number) {
      rects.push_back(layout_.openings[static_cast<std::size_t>(number) - 1].rect);
    }
    return united(rects);
  }

  Length middle(const Rect& a, const Rect& b, Along along) const {
    const Length from = along == Along::row ? a.right : a.bottom;
    const Length to = along == Along::row ? b.left : b.top;
    const Length middle = half_rounded_down(from + to);
    const Length on_rule = round_to_multiple(middle, step_);
    return from < on_rule && on_rule < to ? on_rule : middle;
  }

  const Layout& layout_;
  int first_;
  const std::vector<JoinedPart>& parts_;
  Length step_;
  std::size_t taken_ = 0;
};

Outline outline_of(const ClipperLib::Path& path) {
  std::vector<Point> corners;
  for (const ClipperLib::IntPoint& p : path) {
    corners.push_back({Length::from_ticks(p.X), Length::from_ticks(p.Y)});
  }
  if (signed_area(polygon(corners)) < 0) std::reverse(corners.begin(), corners.end());
  const auto first = std::min_element(
      corners.begin(), corners.end(),
      [](const Point& a, const Point& b) { return a.y != b.y ? a.y < b.y : a.x < b.x; });
  std::rotate(corners.begin(), first, corners.end());
  return polygon(corners);
}

// Of rectangles that hang together without a hole.
std::optional<Outline> outline_around(const std::vector<Rect>& rects, Length outward) {
  ClipperLib::Clipper clipper;
  for (const Rect& rect : rects) {
    const Rect r = outset(rect, outward);
    if (r.width() <= Length() || r.height() <= Length()) return std::nullopt;
    clipper.AddPath({{r.left.ticks(), r.top.ticks()},
                     {r.right.ticks(), r.top.ticks()},
                     {r.right.ticks(), r.bottom.ticks()},
                     {r.left.ticks(), r.bottom.ticks()}},
                    ClipperLib::ptSubject, true);
  }
  ClipperLib::Paths found;
  clipper.Execute(ClipperLib::ctUnion, found, ClipperLib::pftNonZero, ClipperLib::pftNonZero);
  if (found.size() != 1) return std::nullopt;
  return outline_of(found.front());
}

}  // namespace

std::optional<JoinedEdges> joined_edges(const Group& group, const Layout& layout, int first,
                                        const std::vector<JoinedPart>& parts, Length step,
                                        Length run) {
  const std::vector<Rect> rects = Parts(layout, first, parts, step).of(group);
  std::optional<Outline> back = outline_around(rects, Length());
  std::optional<Outline> face = outline_around(rects, run);
  if (!back || !face) return std::nullopt;
  return JoinedEdges{std::move(*back), std::move(*face)};
}

}  // namespace mullion
