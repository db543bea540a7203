#include "engine/suggest/composed.h"

#include <algorithm>
#include <set>

#include "engine/layout/ring.h"
#include "engine/suggest/composition.h"
#include "engine/suggest/growing.h"
#include "engine/suggest/lines.h"

namespace mullion::suggest {
namespace {

using Kind = Block::Kind;

constexpr int widths = 9;  // borders that are tried on a given board, from the least one up

// The best of what is shown to it.
class Judging {
 public:
  Judging(const Hanging& hanging) : hanging_(hanging) {}

  void look_at(const Block& block, const Board& board) {
    const Length extra = board.bottom_extra;
    if (block.width + hanging_.border * 2 > board.width ||
        block.height + hanging_.border * 2 + extra > board.height) {
      return;
    }
    const Criteria criteria = judge(block, hanging_.gap, hanging_.items, board);
    const double own = score(criteria);
    if (best_ && own <= best_->score) return;
    best_ = Ranked{block, board, criteria, own};
  }

  void take_to(std::vector<Ranked>& out) {
    if (best_) out.push_back(std::move(*best_));
    best_.reset();
  }

 private:
  const Hanging& hanging_;
  std::optional<Ranked> best_;
};

// The rooms within the borders that may be wished for on one board.
struct Stage {
  Board board;
  std::vector<Room> rooms;
};

std::vector<Stage> stages(const Boards& boards, const Hanging& hanging) {
  std::vector<Stage> out;
  for (const Room& room : boards.rooms()) {
    const auto board = boards.around(room.width, room.height);
    if (!board) continue;
    Stage stage{*board, {}};
    const Length least = std::min(room.width, room.height);
    for (int i = 0; i < widths; ++i) {
      const Length less = round_to_multiple(Length::from_ticks(least.ticks() * i / (widths * 2)),
                                            hanging.increment) *
                          2;
      stage.rooms.push_back({room.width - less, room.height - less});
    }
    out.push_back(std::move(stage));
  }
  return out;
}

Length stepped(Length length, Length step) {
  return Length::from_ticks(length.ticks() / step.ticks() * step.ticks());
}

// --- rings ---------------------------------------------------------------------------------------

// Pictures by their slots, clockwise from the top, and the one in the middle, if there is one.
struct Cast {
  std::vector<Block> around;
  std::optional<Block> centre;
  bool first_on_top = true;
};

bool is_larger(const Block& a, const Block& b) {
  return area(a) > area(b);
}

bool same_size(const Block& a, const Block& b) {
  return a.width == b.width && a.height == b.height;
}

// In mirrored pairs, the larger ones below; what has no twin stands on the axis as far as there is
// room for it.
std::vector<Block> in_slots(std::vector<Block> pictures, bool first_on_top) {
  std::stable_sort(pictures.begin(), pictures.end(), is_larger);
  std::vector<std::pair<Block, Block>> pairs;
  std::vector<Block> singles;
  while (!pictures.empty()) {
    Block one = pictures.front();
    pictures.erase(pictures.begin());
    const auto twin = std::find_if(pictures.begin(), pictures.end(),
                                   [&](const Block& other) { return same_size(one, other); });
    if (twin == pictures.end()) {
      singles.push_back(one);
    } else {
      pairs.emplace_back(one, *twin);
      pictures.erase(twin);
    }
  }
  const std::size_t count = 2 * pairs.size() + singles.size();
  const std::size_t on_axis = first_on_top ? (count % 2 == 0 ? 2 : 1) : count % 2;
  while (singles.size() > on_axis) {
    pairs.emplace_back(singles[singles.size() - 2], singles.back());
    singles.resize(singles.size() - 2);
  }
  while (singles.size() < on_axis) {
    singles.push_back(pairs.back().first);
    singles.push_back(pairs.back().second);
    pairs.pop_back();
  }
  std::stable_sort(pairs.begin(), pairs.end(),
                   [](const auto& a, const auto& b) { return is_larger(a.first, b.first); });
  std::vector<Block> out(count);
  const std::size_t first = first_on_top ? 1 : 0;
  for (std::size_t i = 0; i < pairs.size(); ++i) {
    const std::size_t slot = first + pairs.size() - 1 - i;
    out[slot] = pairs[i].first;
    out[first_on_top ? count - slot : count - 1 - slot] = pairs[i].second;
  }
  if (first_on_top) {
    out[0] = singles.back();
    if (count % 2 == 0) out[count / 2] = singles.front();
  } else if (count % 2 == 1) {
    out[count / 2] = singles.front();
  }
  return out;
}

std::vector<Cast> casts_of(std::vector<Block> pictures) {
  constexpr std::size_t fewest = 4, most = 16;  // around the centre
  constexpr double most_spread = 2.6;           // of the areas around it
  std::vector<Cast> out;
  std::stable_sort(pictures.begin(), pictures.end(), is_larger);
  const auto add = [&](const std::vector<Block>& around, const std::optional<Block>& centre) {
    if (around.size() < fewest || around.size() > most) return;
    if (area(around.front()) > most_spread * area(around.back())) return;
    for (const bool on_top : {true, false})
      out.push_back({in_slots(around, on_top), centre, on_top});
  };
  add({pictures.begin() + 1, pictures.end()}, pictures.front());
  if (pictures.size() > fewest + 1) add(pictures, std::nullopt);
  return out;
}

class Ringing {
 public:
  Ringing(const Cast& cast, const Hanging& hanging) : cast_(cast), hanging_(hanging) {
    group_.children.resize(cast.around.size());
    for (const Block& picture : cast.around) sizes_.push_back({picture.width, picture.height});
    if (cast.centre) {
      group_.children.emplace_back();
      group_.children.back().is_centre = true;
      sizes_.push_back({cast.centre->width, cast.centre->height});
    }
    group_.ring.first_on_top = cast.first_on_top;
  }

  // Nothing where two pictures come nearer than the least gap.
  std::optional<Block> made(Length across, Length down) const {
    Group group = group_;
    group.ring.across = across;
    group.ring.down = down;
    const layout::RingPlaces places =
        layout::ring_places(group, sizes_, hanging_.increment, hanging_.gap);
    Block out;
    out.kind = Kind::ring;
    out.parts = cast_.around;
    if (cast_.centre) out.parts.push_back(*cast_.centre);
    out.has_centre = cast_.centre.has_value();
    out.ring = group.ring;
    if (across == down) out.ring.down.reset();
    settle_corners(out, places);
    return are_apart(out) ? std::optional(out) : std::nullopt;
  }

  // The least one of that shape, height over width.
  std::optional<Block> least(std::int64_t numerator, std::int64_t denominator) const {
    const auto of = [&](std::int64_t steps) {
      const Length across = hanging_.increment * steps;
      return made(across, stepped(Length::from_ticks(across.ticks() * numerator / denominator),
                                  hanging_.increment));
    };
    std::int64_t good = 16;
    constexpr std::int64_t limit = 1 << 16;
    while (good < limit && !of(good)) good *= 2;
    std::int64_t bad = good / 2;
    while (good - bad > 1) {
      const std::int64_t middle = (good + bad) / 2;
      (of(middle) ? good : bad) = middle;
    }
    return of(good);
  }

  // As large as the room, where that leaves the gaps.
  std::optional<Block> filling(const Room& room) const {
    Length across = stepped(half_rounded_down(room.width), hanging_.increment);
    Length down = stepped(half_rounded_down(room.height), hanging_.increment);
    for (int i = 0; i < 4; ++i) {
      const Block whole = unchecked(across, down);
      across += stepped(room.width - whole.width, hanging_.increment);
      down += stepped(room.height - whole.height, hanging_.increment);
      if (across < hanging_.increment || down < hanging_.increment) return std::nullopt;
    }
    constexpr std::int64_t most_drawn_out = 7, of = 4;
    if (across.ticks() * of > down.ticks() * most_drawn_out ||
        down.ticks() * of > across.ticks() * most_drawn_out) {
      return std::nullopt;
    }
    auto out = made(across, down);
    return out && !is_sparse(*out) ? out : std::nullopt;
  }

 private:
  // Its pictures stand too far from each other to be seen together.
  bool is_sparse(const Block& ring) const {
    constexpr std::int64_t widest = 6;  // gaps; our own figure
    const std::size_t count = cast_.around.size();
    for (std::size_t i = 0; i < count; ++i) {
      if (apart(ring, i, (i + 1) % count) <= hanging_.gap * widest) return false;
    }
    return true;
  }

  static Length apart(const Block& block, std::size_t i, std::size_t j) {
    const Corner &a = block.corners[i], &b = block.corners[j];
    const Block &one = block.parts[i], &other = block.parts[j];
    const Length beside = std::max(b.left - a.left - one.width, a.left - b.left - other.width);
    const Length above = std::max(b.top - a.top - one.height, a.top - b.top - other.height);
    return std::max(beside, above);
  }

  Block unchecked(Length across, Length down) const {
    Group group = group_;
    group.ring.across = across;
    group.ring.down = down;
    Block out;
    out.parts = cast_.around;
    if (cast_.centre) out.parts.push_back(*cast_.centre);
    settle_corners(out, layout::ring_places(group, sizes_, hanging_.increment, hanging_.gap));
    return out;
  }

  static void settle_corners(Block& block, const layout::RingPlaces& places) {
    std::array<std::int64_t, 2> first = places.parts.front(), last = first;
    for (std::size_t i = 0; i < block.parts.size(); ++i) {
      const std::array<Length, 2> size{block.parts[i].width, block.parts[i].height};
      for (const std::size_t axis : {0u, 1u}) {
        first[axis] = std::min(first[axis], places.parts[i][axis]);
        last[axis] = std::max(last[axis], places.parts[i][axis] + 2 * size[axis].ticks());
      }
    }
    for (const auto& part : places.parts) {
      block.corners.push_back({Length::from_ticks((part[0] - first[0]) / 2),
                               Length::from_ticks((part[1] - first[1]) / 2)});
    }
    block.width = Length::from_ticks((last[0] - first[0]) / 2);
    block.height = Length::from_ticks((last[1] - first[1]) / 2);
  }

  bool are_apart(const Block& block) const {
    for (std::size_t i = 0; i < block.parts.size(); ++i) {
      for (std::size_t j = 0; j < i; ++j) {
        if (apart(block, i, j) < hanging_.gap) return false;
      }
    }
    return true;
  }

  const Cast& cast_;
  const Hanging& hanging_;
  Group group_;
  std::vector<layout::PartSize> sizes_;
};

void add_rings(const std::vector<Block>& pictures, const Boards& boards, const Hanging& hanging,
               const std::vector<Stage>& all, std::vector<Ranked>& out) {
  Judging judging(hanging);
  for (const Cast& cast : casts_of(pictures)) {
    const Ringing ringing(cast, hanging);
    if (all.empty()) {
      constexpr std::pair<std::int64_t, std::int64_t> shapes[] = {{1, 1}, {4, 5}, {5, 4}, {2, 3}};
      for (const auto& [numerator, denominator] : shapes) {
        const auto ring = ringing.least(numerator, denominator);
        if (!ring) continue;
        if (const auto board = boards.around(ring->width, ring->height)) {
          judging.look_at(*ring, *board);
        }
      }
      continue;
    }
    for (const Stage& stage : all) {
      for (const Room& room : stage.rooms) {
        if (const auto ring = ringing.filling(room)) judging.look_at(*ring, stage.board);
      }
    }
  }
  judging.take_to(out);
}

// --- pinwheels -----------------------------------------------------------------------------------

struct Arms {
  Block first, second, third, fourth;  // clockwise from the upper left one
  std::optional<Block> hub;
};

// So wide and high that the hub has the least gap around it, and as much wider as the room is.
std::optional<Block> pinwheel(const Arms& arms, const Hanging& hanging,
                              const std::optional<Room>& room) {
  const Block &lying = arms.first, &upright = arms.second;
  const Length gap = hanging.gap;
  const Length hub_width = arms.hub ? arms.hub->width : Length();
  const Length hub_height = arms.hub ? arms.hub->height : Length();
  const Length around = arms.hub ? gap * 2 : gap;
  const Length least_across = std::max(gap, hub_width + around - lying.width + upright.width);
  const Length least_down = std::max(gap, hub_height + around - upright.height + lying.height);
  const auto widened = [&](Length least, Length filling) {
    const Length most = std::max(least, gap * (widest_gap + 1));
    return std::clamp(stepped(filling, hanging.increment), least, most);
  };
  const Length across =
      room ? widened(least_across, room->width - lying.width - upright.width) : least_across;
  const Length down =
      room ? widened(least_down, room->height - lying.height - upright.height) : least_down;
  Block out;
  out.kind = Kind::pinwheel;
  out.width = lying.width + across + upright.width;
  out.height = lying.height + down + upright.height;
  out.parts = {arms.first, arms.second, arms.third, arms.fourth};
  out.corners = {{{}, {}},
                 {out.width - upright.width, {}},
                 {out.width - lying.width, out.height - lying.height},
                 {{}, out.height - upright.height}};
  const Length hole_across = out.width - upright.width * 2;
  const Length hole_down = out.height - lying.height * 2;
  if (arms.hub) {
    out.parts.push_back(*arms.hub);
    out.corners.push_back({upright.width + half_rounded_down(hole_across - hub_width),
                           lying.height + half_rounded_down(hole_down - hub_height)});
  } else if (hole_across > gap * 3 && hole_down > gap * 3) {
    return std::nullopt;
  }
  return out;
}

// All ways to choose two lying and two upright twins; the rest stand in lines in the middle.
std::vector<Arms> arms_of(const std::vector<Block>& pictures, Length gap) {
  constexpr std::size_t most = 12;
  std::vector<Arms> out;
  if (pictures.size() < 4 || pictures.size() > most) return out;
  std::set<std::array<Length, 4>> seen;
  const auto others_than = [&](const std::set<std::size_t>& taken) {
    std::vector<Block> rest;
    for (std::size_t i = 0; i < pictures.size(); ++i) {
      if (!taken.contains(i)) rest.push_back(pictures[i]);
    }
    return rest;
  };
  const auto twins = [&](bool lying) {
    std::vector<std::pair<std::size_t, std::size_t>> found;
    for (std::size_t i = 0; i < pictures.size(); ++i) {
      for (std::size_t j = i + 1; j < pictures.size(); ++j) {
        const Block& p = pictures[i];
        if (!same_size(p, pictures[j])) continue;
        if (lying ? p.width > p.height : p.width < p.height) found.emplace_back(i, j);
      }
    }
    return found;
  };
  const auto uprights = twins(false);
  for (const auto& [a, c] : twins(true)) {
    for (const auto& [b, d] : uprights) {
      const Block &lying = pictures[a], &upright = pictures[b];
      if (!seen.insert({lying.width, lying.height, upright.width, upright.height}).second) continue;
      const std::vector<Block> rest = others_than({a, b, c, d});
      const Arms arms{pictures[a], pictures[b], pictures[c], pictures[d], std::nullopt};
      if (rest.empty()) out.push_back(arms);
      for (int lines = 1; lines <= static_cast<int>(rest.size()); ++lines) {
        for (const Kind kind : {Kind::row, Kind::column}) {
          out.push_back(arms);
          out.back().hub = in_lines(rest, gap, kind, lines);
        }
      }
    }
  }
  return out;
}

void add_pinwheels(const std::vector<Block>& pictures, const Boards& boards, const Hanging& hanging,
                   const std::vector<Stage>& all, std::vector<Ranked>& out) {
  Judging judging(hanging);
  for (const Arms& arms : arms_of(pictures, hanging.gap)) {
    if (all.empty()) {
      const auto block = pinwheel(arms, hanging, std::nullopt);
      const auto board = block ? boards.around(block->width, block->height) : std::nullopt;
      if (board) judging.look_at(*block, *board);
    }
    for (const Stage& stage : all) {
      for (const Room& room : stage.rooms) {
        if (const auto block = pinwheel(arms, hanging, room)) judging.look_at(*block, stage.board);
      }
    }
  }
  judging.take_to(out);
}

// --- staggered lines -----------------------------------------------------------------------------

Length side(const Block& block, Kind kind) {
  return along(block, kind);
}

// Lines of so many pictures each, `less` fewer in every other one; `kind` is the lines' own.
struct Stagger {
  Kind kind = Kind::column;
  std::size_t lines = 0, longer = 0;
  int less_in = -1;  // 0: the first line is the shorter one, 1: the second; -1: they are moved
};

std::vector<Stagger> staggers_of(std::size_t count) {
  std::vector<Stagger> out;
  for (const Kind kind : {Kind::column, Kind::row}) {
    for (std::size_t lines = 3; lines <= count; ++lines) {
      const std::size_t first = (lines + 1) / 2, second = lines / 2;
      for (std::size_t longer = 2; longer * lines <= count + lines; ++longer) {
        if (first * longer + second * (longer - 1) == count)
          out.push_back({kind, lines, longer, 1});
        if (first * (longer - 1) + second * longer == count)
          out.push_back({kind, lines, longer, 0});
        if (lines * longer == count && lines % 2 == 1) out.push_back({kind, lines, longer, -1});
      }
    }
  }
  return out;
}

// With those gaps between the pictures of a line and between the lines.
Block staggered(const Stagger& plan, const std::vector<Block>& pictures, Length within,
                Length between) {
  const Kind down = other_way(plan.kind);
  Block out;
  out.kind = down;
  std::size_t next = 0;
  const Length half = half_rounded_down(side(pictures.front(), plan.kind) + within);
  Length whole, longest;
  for (std::size_t i = 0; i < plan.lines; ++i) {
    const bool is_other = plan.less_in < 0 ? false : static_cast<int>(i % 2) == plan.less_in;
    Block line;
    line.kind = plan.kind;
    const std::size_t count = plan.longer - (is_other ? 1 : 0);
    Length own;
    for (std::size_t k = 0; k < count; ++k) {
      line.parts.push_back(pictures[next++]);
      own += side(line.parts.back(), plan.kind) + (k > 0 ? within : Length());
    }
    line.gaps.assign(count - 1, within);
    (plan.kind == Kind::row ? line.width : line.height) = own;
    (plan.kind == Kind::row ? line.height : line.width) = side(line.parts.front(), down);
    if (count == 1) line = Block(line.parts.front());
    if (plan.less_in < 0 && i % 2 == 1) line.moved = half;
    longest = std::max(longest, own + line.moved);
    whole += side(line, down) + (i > 0 ? between : Length());
    out.parts.push_back(std::move(line));
  }
  out.gaps.assign(plan.lines - 1, between);
  if (plan.less_in < 0) out.align = Align::start;
  (down == Kind::row ? out.width : out.height) = whole;
  (down == Kind::row ? out.height : out.width) = longest;
  return out;
}

// The gaps with which it fills the room, as far as they may.
Block staggered_in(const Stagger& plan, const std::vector<Block>& pictures, const Hanging& hanging,
                   const Room& room) {
  const Kind down = other_way(plan.kind);
  const Block least = staggered(plan, pictures, hanging.gap, hanging.gap);
  const Length along_room = plan.kind == Kind::row ? room.width : room.height;
  const Length across_room = plan.kind == Kind::row ? room.height : room.width;
  const auto gap_for = [&](Length room_for_all, Length without, std::int64_t halves) {
    const Length each =
        Length::from_ticks(std::max(room_for_all - without, Length()).ticks() * 2 / halves);
    return std::min(hanging.gap + stepped(each, hanging.increment), hanging.gap * (widest_gap + 1));
  };
  // A moved line takes half a gap more.
  const std::int64_t halves =
      2 * static_cast<std::int64_t>(plan.longer - 1) + (plan.less_in < 0 ? 1 : 0);
  const Length within =
      gap_for(along_room, side(least, plan.kind), std::max<std::int64_t>(halves, 1));
  const Length between =
      gap_for(across_room, side(least, down), 2 * static_cast<std::int64_t>(plan.lines - 1));
  return staggered(plan, pictures, within, between);
}

// Long low pictures one below the other, from the left and from the right in turn.
std::optional<Block> from_side_to_side(const std::vector<Block>& pictures, const Hanging& hanging,
                                       const std::optional<Room>& room) {
  constexpr std::size_t most = 8;
  constexpr double low = 1.8;
  const bool are_low = std::all_of(pictures.begin(), pictures.end(), [](const Block& one) {
    return number(one.width) >= low * number(one.height);
  });
  if (!are_low || pictures.size() < 3 || pictures.size() > most) return std::nullopt;
  Block out = chain(Kind::column, pictures, hanging.gap);
  const auto gaps = static_cast<std::int64_t>(pictures.size()) - 1;
  Length gap = hanging.gap;
  Length width = Length::from_ticks(out.width.ticks() * 5 / 4);
  if (room) {
    const Length more =
        stepped(Length::from_ticks((room->height - out.height).ticks() / gaps), hanging.increment);
    gap = std::clamp(gap + more, hanging.gap, hanging.gap * (widest_gap + 1));
    width = std::clamp(room->width, out.width, Length::from_ticks(out.width.ticks() * 3 / 2));
  }
  width = stepped(width, hanging.increment);
  if (width < out.width + hanging.increment) return std::nullopt;
  out.align = Align::start;
  out.gaps.assign(pictures.size() - 1, gap);
  out.height += (gap - hanging.gap) * gaps;
  out.width = width;
  for (std::size_t i = 1; i < out.parts.size(); i += 2) {
    out.parts[i].moved = width - out.parts[i].width;
  }
  return out;
}

void add_staggered(const std::vector<Block>& pictures, const Boards& boards, const Hanging& hanging,
                   const std::vector<Stage>& all, std::vector<Ranked>& out) {
  constexpr std::size_t fewest = 5;
  const bool are_alike = std::all_of(pictures.begin(), pictures.end(), [&](const Block& one) {
    return same_size(one, pictures.front());
  });
  std::vector<Stagger> plans;
  if (are_alike && pictures.size() >= fewest) plans = staggers_of(pictures.size());
  for (const Kind kind : {Kind::column, Kind::row}) {
    Judging judging(hanging);
    const auto look_at = [&](const std::optional<Block>& block, const std::optional<Board>& board) {
      if (block && board) judging.look_at(*block, *board);
    };
    for (const Stagger& plan : plans) {
      if (plan.kind != kind) continue;
      const Block least = staggered(plan, pictures, hanging.gap, hanging.gap);
      if (all.empty()) look_at(least, boards.around(least.width, least.height));
      for (const Stage& stage : all) {
        for (const Room& room : stage.rooms) {
          look_at(staggered_in(plan, pictures, hanging, room), stage.board);
        }
      }
    }
    if (kind == Kind::row) {
      const auto least = from_side_to_side(pictures, hanging, std::nullopt);
      if (all.empty() && least) look_at(least, boards.around(least->width, least->height));
      for (const Stage& stage : all) {
        for (const Room& room : stage.rooms) {
          look_at(from_side_to_side(pictures, hanging, room), stage.board);
        }
      }
    }
    judging.take_to(out);
  }
}

// --- rows on baselines ---------------------------------------------------------------------------

// The row's pictures on one line.
void stand_on_lines(Block& block) {
  if (block.kind == Kind::row) block.align = Align::end;
  for (Block& part : block.parts) stand_on_lines(part);
}

void add_baselines(const std::vector<Block>& pictures, const Boards& boards, const Hanging& hanging,
                   std::vector<Ranked>& out) {
  std::vector<Block> blocks = even_lines(pictures, hanging.gap);
  for (int lines = 1; lines <= static_cast<int>(pictures.size()) / 2; ++lines) {
    blocks.push_back(in_lines(pictures, hanging.gap, Kind::column, lines));
  }
  blocks.push_back(chain(Kind::row, pictures, hanging.gap));
  Judging judging(hanging);
  for (const Block& block : blocks) {
    auto ranked = hung(block, boards, hanging);
    if (!ranked) continue;
    stand_on_lines(ranked->block);
    if (composition_of(ranked->block, hanging.gap, hanging.items) != Composition::baseline_rows) {
      continue;
    }
    judging.look_at(ranked->block, ranked->board);
  }
  judging.take_to(out);
}

}  // namespace

std::vector<Ranked> composed(const std::vector<Block>& pictures, const Boards& boards,
                             const Hanging& hanging) {
  std::vector<Ranked> out;
  if (pictures.size() < 3) return out;
  const std::vector<Stage> all = stages(boards, hanging);
  if (all.empty() && !boards.sizes().empty()) return out;
  add_rings(pictures, boards, hanging, all, out);
  add_pinwheels(pictures, boards, hanging, all, out);
  add_staggered(pictures, boards, hanging, all, out);
  add_baselines(pictures, boards, hanging, out);
  return out;
}

std::vector<Block> titles_below(const std::vector<Block>& pictures, Length gap) {
  constexpr double low = 2.5;
  std::vector<Block> others, out;
  std::vector<Block> titles;
  for (const Block& one : pictures) {
    (number(one.width) >= low * number(one.height) ? titles : others).push_back(one);
  }
  if (titles.size() != 1 || others.size() < 2) return out;
  std::vector<Block> above = even_lines(others, gap);
  for (const Block& block : around_the_largest(others, gap)) above.push_back(block);
  for (int lines = 1; lines <= static_cast<int>(others.size()); ++lines) {
    above.push_back(in_lines(others, gap, Kind::column, lines));
    above.push_back(in_lines(others, gap, Kind::row, lines));
  }
  for (const Block& block : above) out.push_back(joined(Kind::column, block, titles.front(), gap));
  return out;
}

}  // namespace mullion::suggest
