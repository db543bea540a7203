#include "engine/suggest/suggest.h"

#include <algorithm>

#include "engine/suggest/arranged_job.h"
#include "engine/suggest/every_arrangement.h"
#include "engine/suggest/growing.h"
#include "engine/suggest/reading_order.h"

namespace mullion::suggest {
namespace {

// Of as many plans as this are the different ones chosen.
std::size_t plans_kept_for(std::size_t count) {
  return std::max<std::size_t>(count, 1) * 8;
}

Problems problem(const Job& job, const char* code, std::string message, Place place = {}) {
  return {{Severity::error, code, std::move(message), place, job.file}};
}

// The first picture of a group through which the sequence leads out and back in.
Place torn_group(const Job& job, const std::vector<Item>& items) {
  for (std::size_t i = 0; i < items.size(); ++i) {
    std::vector<Item> others = items;
    for (std::size_t j = 0; j < items.size(); ++j) {
      if (items[j].group != items[i].group) others[j].group = -1;
    }
    if (items[i].group >= 0 && !Bonds(others).are_possible()) return job.pictures[i].place;
  }
  return {};
}

Result<void> check_pictures(const Job& job, const std::vector<Item>& items) {
  if (items.empty()) return tl::unexpected(problem(job, "suggest-none", "the job has no pictures"));
  if (items.size() > most_items) {
    return tl::unexpected(problem(
        job, "suggest-many",
        "found " + std::to_string(items.size()) + " pictures; suggestions are made for up to 24"));
  }
  if (!Bonds(items).are_possible()) {
    return tl::unexpected(problem(
        job, "suggest-torn-group",
        "a picture of another group, or of none, comes between those of this group by its order; "
        "expected the orders within a group to follow one another",
        torn_group(job, items)));
  }
  return {};
}

}  // namespace

Result<Suggestions> suggest_collages(const Job& job, const Wishes& wishes) {
  const Job bare = without_arrangement(job);
  const std::vector<Item> items = items_of(bare);
  if (const auto good = check_pictures(bare, items); !good) return tl::unexpected(good.error());
  const Length gap = std::max(wishes.gap, bare.least_bar.value_or(Length()));
  const Boards boards(bare, wishes.stock, wishes.border, bottom_extra(bare, wishes.border));
  const Search search{gap, wishes.threads, plans_kept_for(wishes.count)};
  Progress unseen;
  Progress& progress = wishes.progress == nullptr ? unseen : *wishes.progress;

  Suggestions out;
  out.every_one = items.size() <= most_items_for_every_arrangement;
  const Found found = out.every_one ? look_at_every(items, boards, search, progress)
                                    : look_at_good_ones(items, boards, search, progress);
  out.looked_at = found.looked_at;
  for (Ranked& ranked : found.ranking.different(wishes.count)) {
    ranked.block = in_reading_order(ranked.block, items, gap);
    out.best.push_back({ranked, arranged(bare, ranked.block, ranked.board, gap)});
  }
  if (!out.best.empty()) return out;
  return tl::unexpected(problem(bare, "suggest-nothing-fits",
                                "no arrangement of the pictures fits with a border of " +
                                    describe(wishes.border, bare.scale) + " and gaps of " +
                                    describe(gap, bare.scale)));
}

}  // namespace mullion::suggest
