#pragma once

// What an arrangement has to keep: pictures of a group together, and pictures with an order in
// sequence.
//
// Together: where the pictures of a group part, in one row or column, they stand next to each
// other and no other picture stands between them. In sequence: of two pictures in one row the one
// with the smaller number is on the left, of two in one column it is above.

#include <vector>

#include "engine/suggest/block.h"

namespace mullion::suggest {

using Members = std::uint64_t;  // one bit for each item

class Bonds {
 public:
  explicit Bonds(const std::vector<Item>& items);

  bool any() const { return !groups_.empty() || has_order_; }

  // Whether a row or column of these parts may stand, or be the end of a longer one, where its
  // parts may stand by themselves.
  bool may_stand(const std::vector<Members>& parts) const;

  // Whether a finished arrangement keeps everything.
  bool are_kept(const Block& block) const;

  // Whether `first` and then `second` may be joined on the way to an arrangement: no group is left
  // open, no number left out between them.
  bool may_join(Members first, Members second) const;

  // False where the sequence leads out of a group and back into it, so that not both can be kept.
  bool are_possible() const;

  // The items so that groups stand together and orders rise; else as they come in the list.
  std::vector<int> sequence() const;

 private:
  struct Span {
    int first = 0, last = 0;  // ranks of the members that have an order, from 1; 0: none has
  };
  Span span(Members members) const;

  std::vector<Members> groups_;  // of two members or more
  std::vector<int> rank_;        // by item: place in the sequence from 1, 0: anywhere
  bool has_order_ = false;
};

Members members_of(const Block& block);

}  // namespace mullion::suggest
