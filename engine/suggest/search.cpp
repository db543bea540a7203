#include "engine/suggest/search.h"

#include <algorithm>
#include <functional>
#include <set>
#include <thread>

#include "engine/suggest/choosing.h"
#include "engine/suggest/composed.h"
#include "engine/suggest/every_arrangement.h"
#include "engine/suggest/growing.h"
#include "engine/suggest/hanging.h"
#include "engine/suggest/improving.h"
#include "engine/suggest/lines.h"
#include "engine/suggest/patterns.h"

namespace mullion::suggest {
namespace {

constexpr int most_threads = 8;
constexpr int beam = 24, beam_of_very_many = 10;
constexpr std::size_t very_many = 24;
constexpr std::size_t most_starts = 12;  // of the best that are different, to be improved

// Steps tried from each start with equal gaps, and as it hangs, times the square of the items.
constexpr std::uint64_t equal_steps = 5'000'000;
constexpr std::uint64_t hung_steps = 500'000;

// One way to find arrangements of many pictures.
struct Way {
  std::function<std::vector<Block>()> make;
  bool is_composed = false;  // worth a look as it hangs, whatever it scores with equal gaps
};

int threads_of(const Search& search) {
  return std::clamp(search.threads, 1, most_threads);
}

void in_threads(int threads, const std::function<void(int thread)>& work) {
  std::vector<std::thread> running;
  running.reserve(static_cast<std::size_t>(threads));
  for (int i = 0; i < threads; ++i) running.emplace_back([&work, i] { work(i); });
  for (std::thread& thread : running) thread.join();
}

// What `make` gives for each of so many numbers, in their order.
template <class T, class Make>
std::vector<T> each_of(std::size_t count, int threads, const Make& make) {
  std::vector<T> out(count);
  std::atomic<std::size_t> next{0};
  in_threads(threads, [&](int) {
    for (std::size_t i = next++; i < count; i = next++) out[i] = make(i);
  });
  return out;
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
      out.push_back({[=, &bonds, count = items.size()] {
        const int width = count > very_many ? beam_of_very_many : beam;
        return grow_arrangements(pictures, bonds, gap, {shape, width, keep_order});
      }});
    };
    for (const double shape : {0.6, 0.75, 1.0, 1.33, 1.7}) grow(shape, false);
    for (const double shape : {0.75, 1.33}) grow(shape, true);
    out.push_back({[=] { return symmetric_patterns(pictures, gap); }});
    out.push_back({[=] { return lines_of(pictures, gap); }, true});
    out.push_back({[=] { return even_lines(pictures, gap); }, true});
    out.push_back({[=] { return around_the_largest(pictures, gap); }, true});
    out.push_back({[=] { return titles_below(pictures, gap); }, true});
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

// Of as many plans as this are the different ones chosen.
std::size_t plans_kept(const Search& search) {
  return std::max<std::size_t>(search.count, 1) * 16;
}

class Look {
 public:
  Look(const std::vector<Item>& items, const Boards& boards, const Search& search,
       Progress& progress)
      : items_(items),
        boards_(boards),
        search_(search),
        progress_(progress),
        bonds_(items),
        hanging_{search.gap, search.border, search.increment, items.size()},
        ranking_(plans_kept(search), boards, items, search.gap) {}

  Found run() {
    out_.every_one = items_.size() <= most_items_for_every_arrangement;
    if (out_.every_one) look_at_every();
    std::vector<Block> blocks = look_at_good_ones();
    add(blocks, fitting_blocks());
    if (!out_.every_one) improve();
    for (const Ranked& ranked : ranking_.best()) blocks.push_back(ranked.block);
    hang(blocks);
    if (out_.best.empty()) out_.misses = ranking_.misses();
    return std::move(out_);
  }

 private:
  static void add(std::vector<Block>& to, const std::vector<Block>& blocks) {
    to.insert(to.end(), blocks.begin(), blocks.end());
  }

  void look_at_every() {
    progress_.whole = arrangements_of(items_);
    const EveryArrangement every(items_, search_.gap);
    // No criterion tells an arrangement from its mirror image, so where either may stand one is
    // enough.
    const bool may_be_mirrored = !bonds_.any();
    const int threads = threads_of(search_);
    std::vector<Ranking> rankings(static_cast<std::size_t>(threads), ranking_);
    std::atomic<std::uint64_t> count{0};
    in_threads(threads, [&](int thread) {
      Ranking& ranking = rankings[static_cast<std::size_t>(thread)];
      count += every.visit(
          thread, threads,
          [&](Length width, Length height, std::uint64_t how_many) {
            progress_.done += how_many;
            return ranking.may_enter(width, height);
          },
          [&](const EveryArrangement::Seen& seen) {
            if (may_be_mirrored && is_the_mirrored_one(seen.places)) return;
            ranking.add(seen.places, seen.width, seen.height, seen.block);
          });
    });
    for (const Ranking& ranking : rankings) ranking_.add(ranking);
    out_.looked_at += count;
  }

  // Ranks them with equal gaps; returns those that are worth a look at how they hang whatever they
  // score so.
  std::vector<Block> look_at_good_ones() {
    const std::vector<Way> ways = ways_for(items_, bonds_, search_.gap);
    if (!out_.every_one) progress_.whole = ways.size() + 2 * most_starts;
    const auto found =
        each_of<std::vector<Block>>(ways.size(), threads_of(search_), [&](std::size_t i) {
          std::vector<Block> blocks = ways[i].make();
          if (bonds_.any()) {
            std::erase_if(blocks, [&](const Block& block) { return !bonds_.are_kept(block); });
          }
          if (!out_.every_one) ++progress_.done;
          return blocks;
        });
    std::vector<Block> out;
    for (std::size_t i = 0; i < ways.size(); ++i) {
      for (const Block& block : found[i]) rank(block);
      if (ways[i].is_composed) add(out, found[i]);
    }
    return out;
  }

  void rank(const Block& block) {
    if (!out_.every_one) ++out_.looked_at;
    ranking_.add(block);
  }

  // Where the board is given: blocks that are sure to fit, with the least gap and with wider ones.
  std::vector<Block> fitting_blocks() {
    std::vector<Block> out;
    if (boards_.sizes().empty()) return out;
    constexpr std::size_t most = 24;
    constexpr std::int64_t quarters[] = {4, 5, 6, 8};
    for (const std::int64_t quarter : quarters) {
      const Length wider = Length::from_ticks(search_.gap.ticks() * quarter / 4);
      const Length gap = round_to_multiple(wider, search_.increment);
      if (gap < search_.gap) continue;
      constexpr double less_effort = 0.2;
      const Fitting fitting(items_, quarter == 4 ? search_.gap : gap, boards_.rooms(),
                            Fitting::Rounding::up, quarter == 4 ? 1 : less_effort);
      if (!fitting.any()) {
        if (quarter == 4) out_.nothing_fits = is_proved(fitting);
        break;
      }
      for (Block& block : fitting.blocks(most)) {
        settle(block, search_.gap);
        if (bonds_.any() && !bonds_.are_kept(block)) continue;
        rank(block);
        out.push_back(std::move(block));
      }
    }
    return out;
  }

  bool is_proved(const Fitting& rounded_up) const {
    return rounded_up.is_exact() ||
           !Fitting(items_, search_.gap, boards_.rooms(), Fitting::Rounding::down).any();
  }

  // The best that are different, with equal gaps.
  void improve() {
    const std::vector<Ranked> starts = ranking_.different(most_starts);
    const auto better = each_of<Improved>(starts.size(), threads_of(search_), [&](std::size_t i) {
      ++progress_.done;
      return improved(starts[i].block, items_, bonds_, boards_, search_.gap,
                      equal_steps / (items_.size() * items_.size() + 100));
    });
    for (const Improved& one : better) {
      ranking_.add(one.block);
      out_.looked_at += one.looked_at;
    }
  }

  std::vector<Ranked> hung_ones(const std::vector<Block>& blocks) const {
    const auto hung = each_of<std::optional<Ranked>>(
        blocks.size(), threads_of(search_),
        [&](std::size_t i) { return suggest::hung(blocks[i], boards_, hanging_); });
    std::vector<Ranked> out;
    for (const auto& one : hung) {
      if (one) out.push_back(*one);
    }
    return out;
  }

  // What rows and columns do not give, of pictures that no bond keeps together or in sequence.
  std::vector<Ranked> composed_ones() {
    std::vector<Ranked> out;
    if (bonds_.any()) return out;
    std::set<std::string> seen;
    for (const Standing standing : {Standing::as_most_do, Standing::upright, Standing::lying}) {
      const std::vector<Block> pictures = standing_blocks(items_, standing);
      std::string stand;
      for (const Block& picture : pictures) stand += picture.turned ? 't' : '-';
      if (!seen.insert(stand).second) continue;
      for (Ranked& one : composed(pictures, boards_, hanging_)) {
        out.push_back(std::move(one));
        if (!out_.every_one) ++out_.looked_at;
      }
    }
    return out;
  }

  // Hangs the blocks, improves the best that are different as they hang, and chooses.
  void hang(const std::vector<Block>& blocks) {
    std::vector<Ranked> hung = hung_ones(blocks);
    const std::vector<Ranked> others = composed_ones();
    if (hung.empty()) {
      out_.best = chosen(others, search_.count, search_.gap, items_.size());
      return;
    }
    const std::vector<Ranked> starts =
        chosen(hung, most_starts, search_.gap, items_.size(), most_starts);
    const ScoreOf score_of = [&](const Block& block, double least) {
      return hung_score(block, boards_, hanging_, least);
    };
    const std::uint64_t steps = hung_steps / (items_.size() * items_.size() + 50);
    const auto better = each_of<Improved>(starts.size(), threads_of(search_), [&](std::size_t i) {
      if (!out_.every_one) ++progress_.done;
      Block start = starts[i].block;
      unhang(start);
      settle(start, search_.gap);
      return improved(start, items_, bonds_, search_.gap, score_of, steps);
    });
    std::vector<Block> after;
    for (const Improved& one : better) {
      after.push_back(one.block);
      if (!out_.every_one) out_.looked_at += one.looked_at;
    }
    for (Ranked& one : hung_ones(after)) hung.push_back(std::move(one));
    hung.insert(hung.end(), others.begin(), others.end());
    out_.best = chosen(std::move(hung), search_.count, search_.gap, items_.size());
  }

  static void unhang(Block& block) {
    block.gaps.clear();
    block.align = Align::centre;
    for (Block& part : block.parts) unhang(part);
  }

  const std::vector<Item>& items_;
  const Boards& boards_;
  const Search& search_;
  Progress& progress_;
  Bonds bonds_;
  Hanging hanging_;
  Ranking ranking_;
  Found out_;
};

}  // namespace

Found look(const std::vector<Item>& items, const Boards& boards, const Search& search,
           Progress& progress) {
  return Look(items, boards, search, progress).run();
}

}  // namespace mullion::suggest
