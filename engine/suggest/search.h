#pragma once

// Looks for good arrangements of items, by several threads: at every slicing arrangement of a few
// items, at grown ones, lines and symmetric patterns of many.

#include <atomic>

#include "engine/suggest/ranking.h"

namespace mullion::suggest {

// How far the search is, for another thread to read.
struct Progress {
  std::atomic<std::uint64_t> done{0}, whole{0};
};

struct Search {
  Length gap;
  int threads = 1;
  std::size_t keep = 0;  // arrangements that the ranking keeps
};

struct Found {
  Ranking ranking;
  std::uint64_t looked_at = 0;  // arrangements
};

// Of at most `most_items_for_every_arrangement` items.
Found look_at_every(const std::vector<Item>& items, const Boards& boards, const Search& search,
                    Progress& progress);

Found look_at_good_ones(const std::vector<Item>& items, const Boards& boards, const Search& search,
                        Progress& progress);

}  // namespace mullion::suggest
