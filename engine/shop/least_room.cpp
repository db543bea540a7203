#include "engine/shop/least_room.h"

#include <algorithm>

#include "engine/job/sight.h"
#include "engine/mat/mat.h"

namespace mullion {
namespace {

class Measuring {
 public:
  explicit Measuring(const Job& job) : job_(job) {}

  Room room_of(const Node& node) const {
    if (const auto* opening = std::get_if<Opening>(&node.what)) return room_of(*opening);
    return room_of(std::get<Group>(node.what));
  }

 private:
  Room room_of(const Opening& opening) const {
    const Sides stack = reveal_stack(job_, opening);
    const Sight sight = sight_of(opening, picture_of(job_, opening));
    return {sight.width.value_or(Length()) + stack.left + stack.right,
            sight.height.value_or(Length()) + stack.top + stack.bottom};
  }

  Room room_of(const Group& group) const {
    if (group.along == Along::ring || group.along == Along::places) return largest_of(group);
    const bool is_row = group.along == Along::row;
    Room out;
    Length& along = is_row ? out.width : out.height;
    Length& across = is_row ? out.height : out.width;
    for (std::size_t i = 0; i < group.children.size(); ++i) {
      const Room part = room_of(group.children[i]);
      along += is_row ? part.width : part.height;
      across = std::max(across, is_row ? part.height : part.width);
      if (i + 1 < group.children.size()) along += gap_after(group, i);
    }
    return out;
  }

  // No less than this, wherever the parts lie.
  Room largest_of(const Group& group) const {
    Room out;
    for (const Node& child : group.children) {
      const Room part = room_of(child);
      out = {std::max(out.width, part.width), std::max(out.height, part.height)};
    }
    return out;
  }

  Length gap_after(const Group& group, std::size_t i) const {
    const auto stated = i < group.gaps.size() ? group.gaps[i].size : group.gap;
    return stated.value_or(job_.least_bar.value_or(Length()));
  }

  const Job& job_;
};

}  // namespace

Room least_room(const Job& job) {
  return Measuring(job).room_of(job.arrangement);
}

}  // namespace mullion
