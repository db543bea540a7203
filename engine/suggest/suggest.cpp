#include "engine/suggest/suggest.h"

#include <algorithm>

#include "engine/job/usual.h"
#include "engine/shop/wished_borders.h"
#include "engine/suggest/arranged_job.h"
#include "engine/suggest/every_arrangement.h"
#include "engine/suggest/growing.h"
#include "engine/suggest/reading_order.h"

namespace mullion::suggest {
namespace {

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
    return tl::unexpected(problem(job, "suggest-many",
                                  "found " + std::to_string(items.size()) +
                                      " pictures; suggestions are made for up to " +
                                      std::to_string(most_items)));
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

struct Task {
  const Job& bare;
  const std::vector<Item>& items;
  const Wishes& wishes;

  Found look(const Boards& boards, Length gap, Progress& progress) const {
    return suggest::look(items, boards,
                         {gap, wishes.border, bare.scale.increment, wishes.threads, wishes.count},
                         progress);
  }
};

// The smallest blocks that there are with this gap: all of them, since no board has such a border.
NearMisses smallest_blocks(const Task& task, Length gap) {
  const Boards none(task.bare, task.wishes.stock, inches(10'000), {});
  Progress unseen;
  return task.look(none, gap, unseen).misses;
}

// No border is proposed that is narrower than a quarter of a usual one (our own figure) or hidden
// by more than half behind the frame's lip.
Length least_border(const Job& bare) {
  const Length quarter = Length::from_ticks(usual_border(bare.scale.unit).ticks() / 4);
  return bare.frame ? std::max(bare.frame->lip * 2, quarter) : quarter;
}

// A narrower border, or where none is enough narrower gaps too, in words.
std::optional<std::string> narrower(const Task& task, Length gap, const NearMisses& misses) {
  const Job& bare = task.bare;
  const Length step = bare.scale.increment;
  const auto border_for = [&](const NearMisses& blocks, Length most) {
    return widest_border(blocks, bare, task.wishes.stock, least_border(bare), most);
  };
  if (const auto border = border_for(misses, task.wishes.border)) {
    return "a border of " + describe(*border, bare.scale);
  }
  for (const int share : {2, 4, 8}) {
    const Length less = step * (gap.ticks() / share / step.ticks());
    if (less <= Length() || less < bare.least_bar.value_or(Length())) break;
    if (const auto border = border_for(smallest_blocks(task, less), task.wishes.border + step)) {
      return "gaps of " + describe(less, bare.scale) + " and a border of " +
             describe(*border, bare.scale);
    }
  }
  return std::nullopt;
}

Problems nothing_fits(const Task& task, const Boards& boards, Length gap, const Found& found) {
  const NearMisses& misses = found.misses;
  const Scale& scale = task.bare.scale;
  const auto size = [&](const Board& board) {
    return describe(board.width, scale) + " x " + describe(board.height, scale);
  };
  const std::string which =
      found.every_one || found.nothing_fits
          ? "no arrangement of the pictures in rows and columns fits on "
          : "none of the " + std::to_string(found.looked_at) + " arrangements looked at fits on ";
  std::string message = which +
                        (boards.sizes().size() == 1 ? size(boards.sizes().front())
                                                    : std::string("any size of the list")) +
                        " with a border of " + describe(task.wishes.border, scale) +
                        " and gaps of " + describe(gap, scale);
  const auto less = narrower(task, gap, misses);
  const auto board = nearest_board(misses, task.bare, boards.sizes(), task.wishes.border);
  if (less) message += "; " + *less;
  if (board) message += (less ? " or" : ";") + std::string(" a board of ") + size(*board);
  if (less || board) message += " would fit";
  return problem(task.bare, "suggest-nothing-fits", std::move(message));
}

void list_gaps(const Block& block, Length gap, std::vector<Length>& out) {
  if (block.gaps.empty() && !block.parts.empty()) out.push_back(gap);
  out.insert(out.end(), block.gaps.begin(), block.gaps.end());
  for (const Block& part : block.parts) list_gaps(part, gap, out);
}

Suggestion suggestion_of(const Job& bare, const Ranked& ranked, Length gap) {
  Suggestion out{ranked,
                 arranged(bare, ranked.block, ranked.board, gap),
                 composition_of(ranked.block, gap, bare.pictures.size()),
                 {},
                 {}};
  std::vector<Length> gaps;
  list_gaps(ranked.block, gap, gaps);
  if (gaps.empty()) return out;
  const auto [least, widest] = std::minmax_element(gaps.begin(), gaps.end());
  out.least_gap = *least;
  out.widest_gap = *widest;
  return out;
}

}  // namespace

Length usual_gap(Unit unit) {
  return usual_for(unit).gap;
}

Problems left_aside(const Job& job, const Wishes& wishes) {
  const Borders& borders = job.borders;
  std::string stated;
  const auto add = [&](const char* side, const std::optional<Length>& border) {
    if (!border) return;
    stated += (stated.empty() ? "" : ", ") + std::string(side) + " " + describe(*border, job.scale);
  };
  add("left", borders.left);
  add("top", borders.top);
  add("right", borders.right);
  if (borders.bottom == Borders::Bottom::given) add("bottom", borders.bottom_size);
  Problems out;
  const auto note = [&](std::string message, Place place) {
    out.push_back({Severity::note, "suggest-left-aside", std::move(message), place, job.file});
  };
  if (!stated.empty()) {
    note("of the stated borders (" + stated + ") suggestions keep that none is narrower than " +
             describe(wishes.border, job.scale),
         borders.place);
  }
  if (!job.rules.empty()) {
    note("suggestions leave the job's rules aside (" + std::to_string(job.rules.size()) +
             "), since they speak of its own arrangement",
         job.rules.front().place);
  }
  return out;
}

Result<Suggestions> suggest_collages(const Job& job, const Wishes& wishes) {
  const Job bare = without_arrangement(job);
  const std::vector<Item> items = items_of(bare);
  if (const auto good = check_pictures(bare, items); !good) return tl::unexpected(good.error());
  const Length gap = std::max(wishes.gap, bare.least_bar.value_or(Length()));
  const Boards boards(bare, wishes.stock, wishes.border, bottom_extra(bare, wishes.border));
  Progress unseen;
  Progress& progress = wishes.progress == nullptr ? unseen : *wishes.progress;

  const Task task{bare, items, wishes};
  const Found found = task.look(boards, gap, progress);
  Suggestions out;
  out.every_one = found.every_one;
  out.looked_at = found.looked_at;
  for (Ranked ranked : found.best) {
    ranked.block = in_reading_order(ranked.block, items, gap);
    out.best.push_back(suggestion_of(bare, ranked, gap));
  }
  if (out.best.empty()) return tl::unexpected(nothing_fits(task, boards, gap, found));
  return out;
}

}  // namespace mullion::suggest
