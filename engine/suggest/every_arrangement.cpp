#include "engine/suggest/every_arrangement.h"

#include <map>
#include <stdexcept>
#include <tuple>

namespace mullion::suggest {

using Kind = Block::Kind;

EveryArrangement::EveryArrangement(std::vector<Item> items, Length gap)
    : items_(std::move(items)), bonds_(items_), gap_(gap) {
  if (items_.empty() || items_.size() > most_items_for_every_arrangement) {
    throw std::invalid_argument("every arrangement is listed for 1 to 6 pictures");
  }
  full_ = (1u << items_.size()) - 1;
  for (Members subset = 1; subset < full_; ++subset) fill(subset);
  if (full_ == 1) fill(full_);
}

void EveryArrangement::fill(Members subset) {
  std::list<Alike>& out = alike_[subset];
  for (std::size_t i = 0; i < items_.size(); ++i) {
    if (subset != 1u << i) continue;
    const Item& item = items_[i];
    const int n = static_cast<int>(i);
    out.push_back({Kind::picture, item.width, item.height, subset, {}, 1, n, false, {}});
    if (item.may_turn && item.width != item.height) {
      out.push_back({Kind::picture, item.height, item.width, subset, {}, 1, n, true, {}});
    }
    return;
  }
  std::map<std::tuple<Kind, Length, Length, std::vector<Members>>, Alike*> by_size;
  for_each_pair(subset, [&](Kind kind, const Alike& first, const Alike& rest) {
    Alike pair = paired(kind, first, rest);
    if (bonds_.any() && !may_stand(pair, first, rest)) return;
    Alike*& alike = by_size[{kind, pair.width, pair.height, pair.parts}];
    if (alike == nullptr) alike = &out.emplace_back(std::move(pair));
    alike->count += first.count * rest.count;
    alike->ways.emplace_back(&first, &rest);
  });
}

template <class Each>
void EveryArrangement::for_each_pair(Members subset, const Each& each) const {
  for (Members first = (subset - 1) & subset; first > 0; first = (first - 1) & subset) {
    for (const Kind kind : {Kind::row, Kind::column}) {
      for (const Alike& a : alike_[first]) {
        if (a.kind == kind) continue;
        for (const Alike& b : alike_[subset & ~first]) each(kind, a, b);
      }
    }
  }
}

// Lists the parts of the pair too.
bool EveryArrangement::may_stand(Alike& pair, const Alike& first, const Alike& rest) const {
  pair.parts = {first.members};
  if (rest.kind == pair.kind) {
    pair.parts.insert(pair.parts.end(), rest.parts.begin(), rest.parts.end());
  } else {
    pair.parts.push_back(rest.members);
  }
  return bonds_.may_stand(pair.parts);
}

EveryArrangement::Alike EveryArrangement::paired(Kind kind, const Alike& first,
                                                 const Alike& rest) const {
  const bool is_row = kind == Kind::row;
  Alike out;
  out.kind = kind;
  out.members = first.members | rest.members;
  out.width = is_row ? first.width + gap_ + rest.width : std::max(first.width, rest.width);
  out.height = is_row ? std::max(first.height, rest.height) : first.height + gap_ + rest.height;
  return out;
}

// Goes through the arrangements that are alike, one way after the other, and places their items.
class EveryArrangement::Walk {
 public:
  Walk(const EveryArrangement& every, const Visit& visit) : every_(every), visit_(visit) {
    seen_.places.resize(every.items_.size());
    seen_.block = [this] {
      std::size_t way = 0;
      return block_of(*whole_, way);
    };
  }

  void through(const Alike& whole) {
    whole_ = &whole;
    seen_.width = whole.width;
    seen_.height = whole.height;
    const Box box{&whole, {}, {}, whole.width, whole.height, nullptr};
    go_on(&box);
  }

 private:
  // Where a part is to stand; a row that goes on another one has the height of the whole row. The
  // boxes that follow are still to be filled.
  struct Box {
    const Alike* alike;
    Length left, top, width, height;
    const Box* next;
  };

  void go_on(const Box* box) {
    if (box == nullptr) return visit_(seen_);
    const Alike& alike = *box->alike;
    if (alike.kind == Kind::picture) {
      seen_.places[static_cast<std::size_t>(alike.item)] = {
          box->left, box->top, box->left + alike.width, box->top + alike.height};
      return go_on(box->next);
    }
    for (const auto& way : alike.ways) {
      ways_.push_back(&way);
      const bool is_row = alike.kind == Kind::row;
      const Length along = (is_row ? way.first->width : way.first->height) + every_.gap_;
      const Box second = part_of(*box, *way.second, along, box->next);
      const Box first = part_of(*box, *way.first, {}, &second);
      go_on(&first);
      ways_.pop_back();
    }
  }

  static Box part_of(const Box& box, const Alike& part, Length along, const Box* next) {
    const Kind kind = box.alike->kind;
    const bool is_row = kind == Kind::row, goes_on = part.kind == kind;
    Box out{&part, box.left, box.top, part.width, part.height, next};
    (is_row ? out.left : out.top) += along;
    if (goes_on) {
      (is_row ? out.height : out.width) = is_row ? box.height : box.width;
    } else if (is_row) {
      out.top += half_rounded_down(box.height - part.height);
    } else {
      out.left += half_rounded_down(box.width - part.width);
    }
    return out;
  }

  Block block_of(const Alike& alike, std::size_t& way) const {
    if (alike.kind == Kind::picture) return picture_block(every_.items_, alike.item, alike.turned);
    const auto& [first, rest] = *ways_[way++];
    const Block a = block_of(*first, way);
    return joined(alike.kind, a, block_of(*rest, way), every_.gap_);
  }

  const EveryArrangement& every_;
  const Visit& visit_;
  const Alike* whole_ = nullptr;
  Seen seen_;
  std::vector<const std::pair<const Alike*, const Alike*>*> ways_;  // taken, in reading order
};

std::uint64_t EveryArrangement::visit(int part, int parts, const IsWanted& is_wanted,
                                      const Visit& visit) const {
  std::uint64_t count = 0;
  int turn = 0;
  Walk walk(*this, visit);
  const auto look_at = [&](const Alike& alike) {
    count += alike.count;
    if (is_wanted(alike.width, alike.height, alike.count)) walk.through(alike);
  };
  if (full_ == 1 && part == 0) {
    for (const Alike& picture : alike_[full_]) look_at(picture);
  }
  for_each_pair(full_, [&](Kind kind, const Alike& first, const Alike& rest) {
    if (turn++ % parts != part) return;
    Alike pair = paired(kind, first, rest);
    if (bonds_.any() && !may_stand(pair, first, rest)) return;
    pair.count = first.count * rest.count;
    pair.ways = {{&first, &rest}};
    look_at(pair);
  });
  return count;
}

}  // namespace mullion::suggest
