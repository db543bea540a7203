#include "engine/suggest/every_arrangement.h"

#include <array>
#include <stdexcept>

#include "engine/suggest/bonds.h"

namespace mullion::suggest {
namespace {

using Kind = Block::Kind;

// An arrangement of a subset: a picture, or a first part followed by the rest of the same row or
// column. The first part is never of the node's own kind, so every arrangement has one form.
struct Node {
  Kind kind = Kind::picture;
  bool turned = false;
  int item = -1;
  const Node* first = nullptr;
  const Node* rest = nullptr;
  Members members = 0;
  std::int64_t width = 0, height = 0;
};

class Enumerator {
 public:
  Enumerator(const std::vector<Item>& items, Length gap)
      : items_(items), bonds_(items), gap_(gap.ticks()) {
    if (items.empty() || items.size() > most_items_for_every_arrangement) {
      throw std::invalid_argument("every arrangement is listed for 1 to 6 pictures");
    }
    full_ = (1u << items.size()) - 1;
    for (unsigned subset = 1; subset < full_; ++subset) fill(subset);
    if (full_ == 1) fill(full_);
  }

  template <class Visit>
  std::uint64_t run(int part, int parts, const Visit& visit) {
    if (full_ == 1) {
      if (part != 0) return 0;
      for (const Node& node : nodes_[1]) visit(node);
      return nodes_[1].size();
    }
    std::uint64_t count = 0;
    int turn = 0;
    for_each_pair(
        full_,
        [&](const Node& node) {
          ++count;
          visit(node);
        },
        [&] { return turn++ % parts == part; });
    return count;
  }

  Block block_of(const Node& node) const {
    if (node.kind == Kind::picture) return picture_block(items_, node.item, node.turned);
    return joined(node.kind, block_of(*node.first), block_of(*node.rest), Length::from_ticks(gap_));
  }

 private:
  void fill(unsigned subset) {
    std::vector<Node>& out = nodes_[subset];
    for (std::size_t i = 0; i < items_.size(); ++i) {
      if (subset != 1u << i) continue;
      const Item& item = items_[i];
      const std::int64_t w = item.width.ticks(), h = item.height.ticks();
      out.push_back({Kind::picture, false, static_cast<int>(i), nullptr, nullptr, subset, w, h});
      if (item.may_turn && w != h) {
        out.push_back({Kind::picture, true, static_cast<int>(i), nullptr, nullptr, subset, h, w});
      }
      return;
    }
    for_each_pair(
        subset, [&](const Node& node) { out.push_back(node); }, [] { return true; });
  }

  template <class Visit, class Mine>
  void for_each_pair(unsigned subset, const Visit& visit, const Mine& mine) const {
    for (unsigned first = (subset - 1) & subset; first > 0; first = (first - 1) & subset) {
      const unsigned rest = subset & ~first;
      for (const Kind kind : {Kind::row, Kind::column}) {
        for (const Node& a : nodes_[first]) {
          if (a.kind == kind || !mine()) continue;
          for (const Node& b : nodes_[rest]) {
            if (may_stand(kind, a, b)) visit(pair(kind, a, b));
          }
        }
      }
    }
  }

  bool may_stand(Kind kind, const Node& a, const Node& b) const {
    if (!bonds_.any()) return true;
    std::vector<Members> parts{a.members};
    const Node* rest = &b;
    for (; rest->kind == kind; rest = rest->rest) parts.push_back(rest->first->members);
    parts.push_back(rest->members);
    return bonds_.may_stand(parts);
  }

  Node pair(Kind kind, const Node& a, const Node& b) const {
    Node out{kind, false, -1, &a, &b, a.members | b.members, 0, 0};
    if (kind == Kind::row) {
      out.width = a.width + gap_ + b.width;
      out.height = std::max(a.height, b.height);
    } else {
      out.width = std::max(a.width, b.width);
      out.height = a.height + gap_ + b.height;
    }
    return out;
  }

  const std::vector<Item>& items_;
  Bonds bonds_;
  std::int64_t gap_;
  unsigned full_ = 0;
  std::array<std::vector<Node>, 1u << most_items_for_every_arrangement> nodes_;
};

}  // namespace

std::uint64_t visit_every_arrangement(const std::vector<Item>& items, Length gap, int part,
                                      int parts,
                                      const std::function<bool(Length, Length)>& is_wanted,
                                      const std::function<void(const Block&)>& visit) {
  Enumerator enumerator(items, gap);
  return enumerator.run(part, parts, [&](const Node& node) {
    if (is_wanted(Length::from_ticks(node.width), Length::from_ticks(node.height))) {
      visit(enumerator.block_of(node));
    }
  });
}

}  // namespace mullion::suggest
