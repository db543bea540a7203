#include "tests/engine/layout/closing.h"

#include <algorithm>
#include <functional>

namespace test {
namespace {

using namespace mullion;

// Visits the arrangement with the rectangle of every part, worked out from the openings alone.
class Walk {
 public:
  Walk(const Job& job, const Layout& layout) : job_(job), layout_(layout) {}

  // Along a group: the gap as stated, if it is, and as it came out.
  std::function<void(std::optional<Length> stated, Length gap)> at_gap = [](auto, auto) {};
  // A group's rectangle in the layout, and the one around its openings.
  std::function<void(const Rect& told, const Rect& around)> at_group = [](auto&, auto&) {};

  Rect run() { return visit(job_.arrangement); }

 private:
  Rect visit(const Node& node) {
    if (std::holds_alternative<Opening>(node.what)) return layout_.openings.at(opening_++).rect;
    const Group& group = std::get<Group>(node.what);
    const std::size_t number = group_++;
    std::vector<Rect> parts;
    for (const Node& child : group.children) parts.push_back(visit(child));
    Rect around = parts.front();
    for (std::size_t i = 0; i < parts.size(); ++i) {
      around = {std::min(around.left, parts[i].left), std::min(around.top, parts[i].top),
                std::max(around.right, parts[i].right), std::max(around.bottom, parts[i].bottom)};
      if (i == 0) continue;
      const Length gap = group.along == Along::row ? parts[i].left - parts[i - 1].right
                                                   : parts[i].top - parts[i - 1].bottom;
      at_gap(group.gaps.at(i - 1).size ? group.gaps[i - 1].size : group.gap, gap);
    }
    at_group(layout_.groups.at(number).rect, around);
    return around;
  }

  const Job& job_;
  const Layout& layout_;
  std::size_t opening_ = 0, group_ = 0;
};

std::string ticks(Length length) {
  return std::to_string(length.ticks());
}

}  // namespace

std::string what_does_not_close(const Job& job, const Layout& layout) {
  std::string out;
  const auto expect = [&](bool holds, const std::string& what) {
    if (!holds) out += what + "\n";
  };
  Walk walk(job, layout);
  walk.at_gap = [&](std::optional<Length> stated, Length gap) {
    expect(gap >= Length(), "a gap of " + ticks(gap));
    if (stated) expect(gap == *stated, "a gap of " + ticks(gap) + " stated as " + ticks(*stated));
  };
  walk.at_group = [&](const Rect& told, const Rect& around) {
    expect(told == around, "a group that is not as large as its parts");
  };
  const Rect all = walk.run();
  const Sides& borders = layout.borders;
  expect(borders.left == all.left && borders.left >= Length(), "the left border");
  expect(borders.top == all.top && borders.top >= Length(), "the top border");
  expect(all.right + borders.right == layout.width && borders.right >= Length(), "the width");
  expect(all.bottom + borders.bottom == layout.height && borders.bottom >= Length(), "the height");
  if (job.outer_width) expect(layout.width == *job.outer_width, "the stated width");
  if (job.outer_height) expect(layout.height == *job.outer_height, "the stated height");
  return out;
}

std::string what_is_off_the_rule(const Job& job, const Layout& layout) {
  std::string out;
  const auto expect = [&](Length length, const std::string& what) {
    if (length.ticks() % job.scale.increment.ticks() != 0) out += what + " " + ticks(length) + "\n";
  };
  Walk walk(job, layout);
  walk.at_gap = [&](std::optional<Length>, Length gap) { expect(gap, "gap"); };
  walk.run();
  expect(layout.width, "width");
  expect(layout.height, "height");
  const Sides& borders = layout.borders;
  for (const Length border : {borders.left, borders.top, borders.right, borders.bottom}) {
    expect(border, "border");
  }
  for (const PlacedOpening& opening : layout.openings) {
    expect(opening.rect.left, "left edge");
    expect(opening.rect.top, "upper edge");
  }
  return out;
}

}  // namespace test
