#pragma once

// The best arrangements of those that were looked at, one for each plan; what may not enter is
// dropped early. The result is the same whatever the order in which arrangements come.

#include <functional>
#include <map>
#include <string>

#include "engine/suggest/boards.h"
#include "engine/suggest/criteria.h"
#include "engine/suggest/near_misses.h"

namespace mullion::suggest {

struct Ranked {
  Block block;
  Board board;
  Criteria criteria;
  double score = 0;
};

class Ranking {
 public:
  // Keeps at least the `most` best.
  Ranking(std::size_t most, const Boards& boards, const std::vector<Item>& items, Length gap);

  // False where no arrangement of this size can still be among the best.
  bool may_enter(Length width, Length height);
  void add(const Block& block);
  // The same, by the places of a block's openings; the block is asked for where it enters.
  void add(const std::vector<Rect>& places, Length width, Length height,
           const std::function<Block()>& block);
  void add(const Ranking& other);

  // The best `count` that are different (difference.h), by falling score; where there are fewer,
  // those of another plan alone after them.
  std::vector<Ranked> different(std::size_t count) const;

  // All that are kept, by falling score.
  std::vector<Ranked> best() const;

  // What was too large for every board, as long as nothing fits.
  const NearMisses& misses() const { return misses_; }

 private:
  std::optional<Board> board_around(Length width, Length height);
  void enter(const std::string& plan, Ranked ranked);
  std::vector<std::pair<std::string, Ranked>> sorted() const;
  void shrink();

  std::size_t most_;
  const Boards& boards_;
  std::size_t items_;
  double openings_ = 0;  // their area
  Length gap_;
  double least_ = 0;
  std::map<std::string, Ranked> by_plan_;
  NearMisses misses_;
  std::vector<Rect> on_board_;  // scratch
};

}  // namespace mullion::suggest
