#pragma once

// Looks for good arrangements of items, by several threads: at every slicing arrangement of a few
// items, at grown ones, lines, symmetric patterns and a larger one amid the others, and where the
// board is given at some that are sure to fit (fitting.h). The best with equal gaps are hung
// (hanging.h), improved as they hang, and chosen from.

#include <atomic>

#include "engine/suggest/ranking.h"

namespace mullion::suggest {

// How far the search is, for another thread to read.
struct Progress {
  std::atomic<std::uint64_t> done{0}, whole{0};
};

struct Search {
  Length gap;     // the least one
  Length border;  // the least one
  Length increment;
  int threads = 1;
  std::size_t count = 0;  // suggestions
};

struct Found {
  std::vector<Ranked> best;     // hung, different, by falling score
  std::uint64_t looked_at = 0;  // arrangements
  bool every_one = false;       // every slicing arrangement with equal gaps was
  bool nothing_fits = false;    // proved, for every slicing arrangement
  NearMisses misses;            // where there is no best
};

// Looks at every slicing arrangement of up to `most_items_for_every_arrangement` items.
Found look(const std::vector<Item>& items, const Boards& boards, const Search& search,
           Progress& progress);

}  // namespace mullion::suggest
