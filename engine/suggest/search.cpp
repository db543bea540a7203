#include "engine/suggest/search.h"

#include <algorithm>
#include <functional>
#include <set>
#include <thread>

#include "engine/suggest/every_arrangement.h"
#include "engine/suggest/growing.h"
#include "engine/suggest/improving.h"
#include "engine/suggest/patterns.h"

namespace mullion::suggest {
namespace {

constexpr int most_threads = 8;
constexpr int beam = 24;
constexpr std::size_t most_starts = 12;  // of the best that are different, to be improved

// One way to find arrangements of many pictures.
using Way = std::function<std::vector<Block>()>;

// Gives each thread a ranking of its own, and joins them.
template <class Look>
Found in_threads(const std::vector<Item>& items, const Boards& boards, const Search& search,
                 const Look& look) {
  const auto parts = static_cast<std::size_t>(std::clamp(search.threads, 1, most_threads));
  std::vector<Found> found(parts, {Ranking(search.keep, boards, items, search.gap), 0});
  std::vector<std::thread> threads;
  for (std::size_t part = 0; part < parts; ++part) {
    threads.emplace_back([&, part] {
      found[part].looked_at =
          look(static_cast<int>(part), static_cast<int>(parts), found[part].ranking);
    });
  }
  for (std::thread& thread : threads) thread.join();
  for (std::size_t part = 1; part < parts; ++part) {
    found.front().ranking.add(found[part].ranking);
    found.front().looked_at += found[part].looked_at;
  }
  return std::move(found.front());
}

std::vector<Block> lines_of(const std::vector<Block>& pictures, Length gap) {
  std::vector<Block> out;
  for (int lines = 1; lines <= static_cast<int>(pictures.size()); ++lines) {
    out.push_back(in_lines(pictures, gap, Block::Kind::row, lines));
    out.push_back(in_lines(pictures, gap, Block::Kind::column, lines));
  }
  return out;
}

std::vector<Way> ways_for(const std::vector<Item>& items, const Bonds& bonds, Length gap) {
  std::vector<Way> out;
  std::set<std::string> seen;
  for (const Standing standing : {Standing::as_most_do, Standing::upright, Standing::lying}) {
    const std::vector<Block> pictures = standing_blocks(items, standing);
    std::string stand;
    for (const Block& picture : pictures) stand += picture.turned ? 't' : '-';
    if (!seen.insert(stand).second) continue;
    const auto grow = [&](double shape, bool keep_order) {
      out.push_back([=, &bonds] {
        return grow_arrangements(pictures, bonds, gap, {shape, beam, keep_order});
      });
    };
    for (const double shape : {0.6, 0.75, 1.0, 1.33, 1.7}) grow(shape, false);
    for (const double shape : {0.75, 1.33}) grow(shape, true);
    out.push_back([=] { return symmetric_patterns(pictures, gap); });
    out.push_back([=] { return lines_of(pictures, gap); });
  }
  return out;
}

// Whether the arrangement is the other one of two that mirror each other left to right: of the
// first two openings that stand beside one another, the second is on the left. Such openings are
// parted by a row, so that their order is exact and turns about in the mirror.
bool is_the_mirrored_one(const std::vector<Rect>& places) {
  for (std::size_t i = 0; i < places.size(); ++i) {
    for (std::size_t j = i + 1; j < places.size(); ++j) {
      const Rect &a = places[i], &b = places[j];
      if (a.top < b.bottom && b.top < a.bottom) return b.left < a.left;
    }
  }
  return false;
}

std::uint64_t arrangements_of(const std::vector<Item>& items) {
  constexpr std::uint64_t schroeder[] = {1, 1, 2, 6, 22, 90, 394};  // block.h
  std::uint64_t count = schroeder[items.size()];
  for (std::size_t i = 0; i < items.size(); ++i) {
    count *= (i + 1) * (items[i].may_turn && items[i].width != items[i].height ? 2 : 1);
  }
  return count;
}

}  // namespace

Found look_at_every(const std::vector<Item>& items, const Boards& boards, const Search& search,
                    Progress& progress) {
  progress.whole = arrangements_of(items);
  const EveryArrangement every(items, search.gap);
  // No criterion tells an arrangement from its mirror image, so where either may stand one is
  // enough.
  const bool may_be_mirrored = !Bonds(items).any();
  return in_threads(items, boards, search, [&](int part, int parts, Ranking& ranking) {
    return every.visit(
        part, parts,
        [&](Length width, Length height, std::uint64_t how_many) {
          progress.done += how_many;
          return ranking.may_enter(width, height);
        },
        [&](const EveryArrangement::Seen& seen) {
          if (may_be_mirrored && is_the_mirrored_one(seen.places)) return;
          ranking.add(seen.places, seen.width, seen.height, seen.block);
        });
  });
}

Found look_at_good_ones(const std::vector<Item>& items, const Boards& boards, const Search& search,
                        Progress& progress) {
  const Bonds bonds(items);
  const std::vector<Way> ways = ways_for(items, bonds, search.gap);
  progress.whole = ways.size() + most_starts;
  std::atomic<std::size_t> next{0};
  Found found = in_threads(items, boards, search, [&](int, int, Ranking& ranking) {
    std::uint64_t count = 0;
    for (std::size_t i = next++; i < ways.size(); i = next++) {
      for (const Block& block : ways[i]()) {
        ++count;
        if (bonds.are_kept(block)) ranking.add(block);
      }
      ++progress.done;
    }
    return count;
  });
  const std::vector<Ranked> starts = found.ranking.different(most_starts);
  next = 0;
  const Found better = in_threads(items, boards, search, [&](int, int, Ranking& ranking) {
    std::uint64_t count = 0;
    for (std::size_t i = next++; i < starts.size(); i = next++) {
      const Improved after = improved(starts[i].block, items, bonds, boards, search.gap);
      ranking.add(after.block);
      count += after.looked_at;
      ++progress.done;
    }
    return count;
  });
  found.ranking.add(better.ranking);
  found.looked_at += better.looked_at;
  return found;
}

}  // namespace mullion::suggest
