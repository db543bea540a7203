#include "engine/job/standing.h"

#include <algorithm>

namespace mullion {
namespace {

// Walks the tree with the joined groups around the current node; stops where `visit` says so.
template <class Visit>
class Walk {
 public:
  explicit Walk(Visit visit) : visit_(visit) {}

  bool node(const Node& node) {
    if (const auto* opening = std::get_if<Opening>(&node.what)) return visit_(*opening, joined_);
    return group(std::get<Group>(node.what));
  }

 private:
  bool group(const Group& group) {
    const std::size_t index = groups_++;
    if (group.joined_layer > 0) {
      joined_.push_back({group.joined_layer, index, {true, true, true, true}, &group});
    }
    const std::vector<JoinedGroup> outside = joined_;
    const std::size_t first_side = group.along == Along::row ? 0 : 1, last_side = first_side + 2;
    for (std::size_t i = 0; i < group.children.size(); ++i) {
      for (JoinedGroup& joined : joined_) {
        if (i > 0) joined.on_edge[first_side] = false;
        if (i + 1 < group.children.size()) joined.on_edge[last_side] = false;
      }
      if (node(group.children[i])) return true;
      joined_ = outside;
    }
    if (group.joined_layer > 0) joined_.pop_back();
    return false;
  }

  Visit visit_;
  std::vector<JoinedGroup> joined_;
  std::size_t groups_ = 0;
};

}  // namespace

std::vector<Standing> standings_of(const Node& arrangement) {
  std::vector<Standing> out;
  Walk walk([&out](const Opening& opening, const std::vector<JoinedGroup>& joined) {
    out.push_back({&opening, joined});
    return false;
  });
  walk.node(arrangement);
  return out;
}

Standing standing_of(const Node& arrangement, const Opening& opening) {
  Standing out{&opening, {}};
  Walk walk([&](const Opening& each, const std::vector<JoinedGroup>& joined) {
    if (&each != &opening) return false;
    out.joined = joined;
    return true;
  });
  walk.node(arrangement);
  return out;
}

const JoinedGroup* joined_in(const Standing& standing, int layer) {
  const auto found =
      std::find_if(standing.joined.begin(), standing.joined.end(),
                   [layer](const JoinedGroup& group) { return group.layer == layer; });
  return found == standing.joined.end() ? nullptr : &*found;
}

const JoinedGroup* joined_above(const Job& job, const Standing& standing, int layer) {
  const JoinedGroup* innermost = nullptr;
  for (int above = 1; above < layer; ++above) {
    const Layer& board = job.layers.at(static_cast<std::size_t>(above) - 1);
    if (board.spacer) continue;
    const JoinedGroup* group = joined_in(standing, above);
    if (group == nullptr && is_cut_for(board, *standing.opening)) return nullptr;
    if (group != nullptr && (innermost == nullptr || group->group > innermost->group)) {
      innermost = group;
    }
  }
  return innermost;
}

bool is_cut_for(const Layer& layer, const Opening& opening) {
  return layer.only.empty() ||
         std::find(layer.only.begin(), layer.only.end(), opening.id) != layer.only.end();
}

}  // namespace mullion
