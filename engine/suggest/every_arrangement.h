#pragma once

// Every slicing arrangement of a few pictures, one after the other.

#include <array>
#include <functional>
#include <list>

#include "engine/suggest/bonds.h"

namespace mullion::suggest {

inline constexpr std::size_t most_items_for_every_arrangement = 6;

// Every arrangement that keeps the items' bonds, with each way of turning the items that may turn
// (a square is not turned). Arrangements of a subset that have one size are held together, so that
// a size that is not wanted is passed over with all of them at once.
class EveryArrangement {
 public:
  // Throws std::invalid_argument for other than 1 to 6 items.
  EveryArrangement(std::vector<Item> items, Length gap);

  // One of them, while it is visited.
  struct Seen {
    std::vector<Rect> places;  // by item, as places() in block.h has them
    Length width, height;
    std::function<Block()> block;
  };

  using IsWanted = std::function<bool(Length width, Length height, std::uint64_t how_many)>;
  using Visit = std::function<void(const Seen&)>;

  // Asks `is_wanted` of the arrangements by their size, and calls `visit` once for each that is.
  // `part` of `parts` shares the work: each arrangement is in exactly one part. Returns how many
  // there were in this part, wanted or not.
  std::uint64_t visit(int part, int parts, const IsWanted& is_wanted, const Visit& visit) const;

 private:
  // Arrangements of a subset that are of one kind and size: a picture, or every way to put a first
  // part before the rest of the same row or column. The first part is never of the row's own kind,
  // so every arrangement has one form.
  struct Alike {
    Block::Kind kind = Block::Kind::picture;
    Length width, height;
    Members members = 0;
    std::vector<Members> parts;  // of the whole row or column; left empty where there are no bonds
    std::uint64_t count = 0;
    int item = -1;
    bool turned = false;
    std::vector<std::pair<const Alike*, const Alike*>> ways;
  };

  class Walk;

  void fill(Members subset);
  template <class Each>
  void for_each_pair(Members subset, const Each& each) const;
  bool may_stand(Alike& pair, const Alike& first, const Alike& rest) const;
  Alike paired(Block::Kind kind, const Alike& first, const Alike& rest) const;

  std::vector<Item> items_;
  Bonds bonds_;
  Length gap_;
  Members full_ = 0;
  std::array<std::list<Alike>, 1u << most_items_for_every_arrangement> alike_;
};

}  // namespace mullion::suggest
