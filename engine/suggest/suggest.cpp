#include "engine/suggest/suggest.h"

#include <algorithm>
#include <map>
#include <optional>
#include <thread>

#include "engine/mat/mat.h"
#include "engine/suggest/every_arrangement.h"
#include "engine/suggest/growing.h"

namespace mullion::suggest {
namespace {

std::vector<Item> items_of(const Job& job) {
  std::vector<Item> items;
  for (const Picture& picture : job.pictures) {
    Opening opening;
    opening.id = opening.picture = picture.id;
    const Sides stack = reveal_stack(job, opening);
    const Length covered = picture.overlap.value_or(default_overlap) * 2;
    const Length change = picture.float_gap ? *picture.float_gap * 2 : -covered;
    items.push_back({picture.width + change + stack.left + stack.right,
                     picture.height + change + stack.top + stack.bottom, picture.may_turn});
  }
  return items;
}

std::optional<Board> given_board(const Job& job) {
  if (job.outer_width && job.outer_height) return Board{*job.outer_width, *job.outer_height};
  if (!job.frame) return std::nullopt;
  return Board{job.frame->rabbet_width - job.frame->allowance,
               job.frame->rabbet_height - job.frame->allowance};
}

class Boards {
 public:
  Boards(const Job& job, const Wishes& wishes) : wishes_(wishes) {
    if (const auto given = given_board(job)) {
      sizes_ = {*given};
    } else {
      for (const Board& board : wishes.stock) {
        sizes_.push_back(board);
        if (board.width != board.height) sizes_.push_back({board.height, board.width});
      }
    }
    std::stable_sort(sizes_.begin(), sizes_.end(), [](const Board& a, const Board& b) {
      return to_inches(a.width) * to_inches(a.height) < to_inches(b.width) * to_inches(b.height);
    });
    any_ = sizes_.empty();
  }

  // The smallest board that takes a block of this size with the least border around it.
  std::optional<Board> around(Length width, Length height) const {
    const Length w = width + wishes_.border * 2, h = height + wishes_.border * 2;
    if (any_) return Board{w, h};
    for (const Board& board : sizes_) {
      if (w <= board.width && h <= board.height) return board;
    }
    return std::nullopt;
  }

 private:
  const Wishes& wishes_;
  std::vector<Board> sizes_;
  bool any_ = false;
};

// The best arrangements so far, one for each look.
class Best {
 public:
  Best(std::size_t most, const Boards& boards, Length gap, std::size_t items)
      : most_(most), boards_(boards), gap_(gap), items_(items) {}

  // False where no arrangement of this size can still be among the best.
  bool may_enter(Length width, Length height, double area) const {
    const auto board = boards_.around(width, height);
    if (!board) return false;
    if (by_look_.size() < most_) return true;
    const double share = area / (to_inches(board->width) * to_inches(board->height));
    const double across = to_inches(board->width - width), down = to_inches(board->height - height);
    Criteria bound{share, 0, 1, 1, 1, 1};
    bound.borders = std::min(across, down) / std::max({across, down, 1e-9});
    return suggest::score(bound) >= least_;
  }

  void add(const Block& block) {
    const auto board = boards_.around(block.width, block.height);
    if (!board) return;
    const Criteria criteria = judge(block, gap_, items_, *board);
    add({block, *board, criteria, suggest::score(criteria), {}}, look_key(block));
  }

  void add(Suggestion suggestion, const std::string& look) {
    const auto [entry, is_new] = by_look_.emplace(look, suggestion);
    if (!is_new) {
      if (before(suggestion, entry->second)) entry->second = std::move(suggestion);
      return;
    }
    if (by_look_.size() > 2 * most_) shrink();
  }

  void take(const Best& other) {
    for (const auto& [look, suggestion] : other.by_look_) add(suggestion, look);
  }

  std::vector<std::pair<std::string, Suggestion>> sorted() const {
    std::vector<std::pair<std::string, Suggestion>> out(by_look_.begin(), by_look_.end());
    std::stable_sort(out.begin(), out.end(), [](const auto& a, const auto& b) {
      return a.second.score != b.second.score ? a.second.score > b.second.score : a.first < b.first;
    });
    return out;
  }

 private:
  // Among arrangements of one look the first in the order of the pictures.
  static std::vector<int> items_in_order(const Block& block) {
    if (block.kind == Block::Kind::picture) return {block.item};
    std::vector<int> out;
    for (const Block& part : block.parts) {
      const std::vector<int> inner = items_in_order(part);
      out.insert(out.end(), inner.begin(), inner.end());
    }
    return out;
  }
  static bool before(const Suggestion& a, const Suggestion& b) {
    if (a.score != b.score) return a.score > b.score;
    return items_in_order(a.block) < items_in_order(b.block);
  }

  void shrink() {
    auto best = sorted();
    best.resize(most_);
    least_ = best.back().second.score;
    by_look_ = std::map<std::string, Suggestion>(best.begin(), best.end());
  }

  std::size_t most_;
  const Boards& boards_;
  Length gap_;
  std::size_t items_;
  double least_ = 0;
  std::map<std::string, Suggestion> by_look_;
};

double area_of(const std::vector<Item>& items) {
  double area = 0;
  for (const Item& item : items) area += to_inches(item.width) * to_inches(item.height);
  return area;
}

std::uint64_t look_at_every(const std::vector<Item>& items, const Wishes& wishes, Best& best,
                            const Boards& boards, std::size_t keep) {
  const int parts = std::clamp(wishes.threads, 1, 8);
  const double area = area_of(items);
  std::vector<Best> own(static_cast<std::size_t>(parts),
                        Best(keep, boards, wishes.gap, items.size()));
  std::vector<std::uint64_t> counts(static_cast<std::size_t>(parts));
  std::vector<std::thread> threads;
  for (int part = 0; part < parts; ++part) {
    threads.emplace_back([&, part] {
      Best& mine = own[static_cast<std::size_t>(part)];
      counts[static_cast<std::size_t>(part)] = visit_every_arrangement(
          items, wishes.gap, part, parts,
          [&](Length width, Length height) { return mine.may_enter(width, height, area); },
          [&](const Block& block) { mine.add(block); });
    });
  }
  for (std::thread& thread : threads) thread.join();
  std::uint64_t sum = 0;
  for (std::size_t i = 0; i < own.size(); ++i) {
    best.take(own[i]);
    sum += counts[i];
  }
  return sum;
}

std::uint64_t grow(const std::vector<Item>& items, const Wishes& wishes, Best& best) {
  std::vector<Taste> tastes;
  for (const double shape : {0.6, 0.75, 1.0, 1.33, 1.7}) tastes.push_back({shape, 24, false});
  for (const double shape : {0.75, 1.33}) tastes.push_back({shape, 24, true});
  std::vector<std::vector<Block>> grown(tastes.size());
  const std::size_t parts = static_cast<std::size_t>(std::clamp(wishes.threads, 1, 8));
  std::vector<std::thread> threads;
  for (std::size_t part = 0; part < parts; ++part) {
    threads.emplace_back([&, part] {
      for (std::size_t i = part; i < tastes.size(); i += parts) {
        grown[i] = grow_arrangements(items, wishes.gap, tastes[i]);
      }
    });
  }
  for (std::thread& thread : threads) thread.join();
  std::uint64_t count = 0;
  for (const auto& blocks : grown) {
    for (const Block& block : blocks) best.add(block);
    count += blocks.size();
  }
  for (int lines = 1; lines <= static_cast<int>(items.size()); ++lines) {
    best.add(in_lines(items, wishes.gap, Block::Kind::row, lines));
    best.add(in_lines(items, wishes.gap, Block::Kind::column, lines));
    count += 2;
  }
  return count;
}

Node node_of(const Block& block, const Job& job) {
  if (block.kind == Block::Kind::picture) {
    Opening opening;
    opening.picture = job.pictures[static_cast<std::size_t>(block.item)].id;
    opening.id = opening.picture;
    return {opening};
  }
  Group group;
  group.along = block.kind == Block::Kind::row ? Along::row : Along::column;
  for (const Block& part : block.parts) group.children.push_back(node_of(part, job));
  group.gaps.resize(group.children.size() - 1);
  return {group};
}

void state_gap(Node& node, Length gap) {
  if (auto* group = std::get_if<Group>(&node.what)) {
    group->gap = gap;
    for (Node& child : group->children) state_gap(child, gap);
  }
}

void turn_pictures(const Block& block, Job& job) {
  if (block.turned) {
    Picture& picture = job.pictures[static_cast<std::size_t>(block.item)];
    std::swap(picture.width, picture.height);
  }
  for (const Block& part : block.parts) turn_pictures(part, job);
}

Job arranged(const Job& job, const Suggestion& suggestion, Length gap) {
  Job out = job;
  out.arrangement = node_of(suggestion.block, job);
  state_gap(out.arrangement, gap);
  turn_pictures(suggestion.block, out);
  out.rules.clear();
  if (!out.frame) {
    out.outer_width = suggestion.board.width;
    out.outer_height = suggestion.board.height;
  }
  out.borders = {};
  return out;
}

Problems problem(const Job& job, const char* code, std::string message) {
  return {{Severity::error, code, std::move(message), {}, job.file}};
}

}  // namespace

Result<Suggestions> suggest_collages(const Job& job, const Wishes& wishes) {
  const std::vector<Item> items = items_of(job);
  if (items.empty()) return tl::unexpected(problem(job, "suggest-none", "the job has no pictures"));
  if (items.size() > most_items) {
    return tl::unexpected(problem(
        job, "suggest-many",
        "found " + std::to_string(items.size()) + " pictures; suggestions are made for up to 24"));
  }
  const Boards boards(job, wishes);
  const std::size_t keep = std::max<std::size_t>(wishes.count, 1) * 4;
  Best best(keep, boards, wishes.gap, items.size());
  Suggestions out;
  out.every_one = items.size() <= most_items_for_every_arrangement;
  out.looked_at =
      out.every_one ? look_at_every(items, wishes, best, boards, keep) : grow(items, wishes, best);
  for (auto& [look, suggestion] : best.sorted()) {
    if (out.best.size() == wishes.count) break;
    suggestion.job = arranged(job, suggestion, wishes.gap);
    out.best.push_back(std::move(suggestion));
  }
  if (out.best.empty()) {
    return tl::unexpected(problem(job, "suggest-nothing-fits",
                                  "no arrangement of the pictures fits with a border of " +
                                      describe(wishes.border, job.scale) + " and gaps of " +
                                      describe(wishes.gap, job.scale)));
  }
  return out;
}

}  // namespace mullion::suggest
