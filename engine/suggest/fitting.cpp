#include "engine/suggest/fitting.h"

#include <algorithm>
#include <numeric>
#include <optional>
#include <set>

namespace mullion::suggest {
namespace {

constexpr std::int16_t no_size = 16'000;  // twice that is still a number
constexpr std::int64_t most_cells = 4'000;
constexpr std::size_t lanes = 16;
constexpr double most_work = 1e9, most_memory = 4e7;  // additions; entries
constexpr double work_of_a_pair = 100;                // beside the additions

std::int64_t rounded(std::int64_t ticks, std::int64_t unit, bool up) {
  return up ? (ticks + unit - 1) / unit : ticks / unit;
}

std::size_t padded(std::int64_t count) {
  return (static_cast<std::size_t>(count) + lanes - 1) / lanes * lanes;
}

void take_least_sums(std::int16_t* least, const std::int16_t* a, const std::int16_t* b,
                     std::size_t count) {
  for (std::size_t i = 0; i < count; i += lanes) {
    for (std::size_t k = i; k < i + lanes; ++k) {
      const auto sum = static_cast<std::int16_t>(a[k] + b[k]);
      least[k] = std::min(least[k], sum);
    }
  }
}

// Calls `visit` with every state that counts no more of any size than `digits` does, but for zero
// and all of them.
template <class Visit>
void for_each_part(const std::vector<int>& digits, const std::vector<std::size_t>& weights,
                   const Visit& visit) {
  std::vector<int> part(digits.size(), 0);
  std::size_t state = 0;
  for (;;) {
    std::size_t i = 0;
    while (i < digits.size() && part[i] == digits[i]) {
      state -= weights[i] * static_cast<std::size_t>(part[i]);
      part[i++] = 0;
    }
    if (i == digits.size()) return;
    ++part[i];
    state += weights[i];
    if (!visit(state)) return;
  }
}

}  // namespace

Fitting::Fitting(const std::vector<Item>& items, Length gap, std::vector<Room> rooms,
                 Rounding rounding, double effort)
    : items_(items), gap_(gap), rooms_(std::move(rooms)), effort_(effort) {
  if (!has_room()) return;
  is_filled_ = true;
  Length width, height;
  for (const Room& room : rooms_) {
    width = std::max(width, room.width + gap);
    height = std::max(height, room.height + gap);
  }
  std::int64_t unit = 0;
  for (const Item& item : items) {
    unit = std::gcd(unit, (item.width + gap).ticks());
    unit = std::gcd(unit, (item.height + gap).ticks());
  }
  const std::int64_t coarse = (std::max(width, height).ticks() + most_cells - 1) / most_cells;
  is_exact_ = unit >= coarse;
  unit_ = Length::from_ticks(std::max({unit, coarse, std::int64_t{1}}));
  // A room takes whole units only, whichever way sides are rounded.
  for (const Room& room : rooms_) {
    const auto cells = [&](Length side) {
      return static_cast<Cells>(std::max<std::int64_t>(0, (side + gap).ticks() / unit_.ticks()));
    };
    room_cells_.emplace_back(cells(room.width), cells(room.height));
    most_width_ = std::max(most_width_, room_cells_.back().first);
    most_height_ = std::max(most_height_, room_cells_.back().second);
  }
  by_height_ = padded(most_height_ + 1);
  by_width_ = padded(most_width_ + 1);
  sort_into_sizes(items, gap, rounding);
  while (is_too_much()) merge_sizes(rounding);
  for (const Size& size : sizes_) {
    weights_.push_back(states_);
    states_ *= size.items.size() + 1;
  }
  fill();
}

// Whether the items, each with a gap at two sides, are smaller in area than one of the rooms.
bool Fitting::has_room() const {
  const auto whole = [&](Length width, Length height) {
    return number(width + gap_) * number(height + gap_);
  };
  double area = 0;
  for (const Item& item : items_) area += whole(item.width, item.height);
  return std::any_of(rooms_.begin(), rooms_.end(), [&](const Room& room) {
    constexpr double rounding = 1 + 1e-9;
    return room.width > Length() && room.height > Length() &&
           area <= whole(room.width, room.height) * rounding;
  });
}

void Fitting::sort_into_sizes(const std::vector<Item>& items, Length gap, Rounding rounding) {
  const auto cells = [&](Length side) {
    const std::int64_t whole =
        rounded((side + gap).ticks(), unit_.ticks(), rounding == Rounding::up);
    return static_cast<Cells>(std::min<std::int64_t>(whole, no_size));
  };
  for (std::size_t i = 0; i < items.size(); ++i) {
    Size size{cells(items[i].width), cells(items[i].height), items[i].may_turn, {}};
    if (size.may_turn && size.width > size.height) std::swap(size.width, size.height);
    const auto same = std::find_if(sizes_.begin(), sizes_.end(), [&](const Size& other) {
      return other.width == size.width && other.height == size.height &&
             other.may_turn == size.may_turn;
    });
    (same == sizes_.end() ? sizes_.emplace_back(size) : *same).items.push_back(static_cast<int>(i));
  }
}

bool Fitting::is_too_much() const {
  if (sizes_.size() < 2) return false;
  double states = 1, pairs = 0.5;
  for (const Size& size : sizes_) {
    const auto count = static_cast<double>(size.items.size());
    states *= count + 1;
    pairs *= (count + 1) * (count + 2) / 2;
  }
  const auto entries = static_cast<double>(by_width_ + by_height_);
  return states * entries > most_memory || pairs * (entries + work_of_a_pair) > most_work * effort_;
}

// Takes the two sizes for one that cost the least area.
void Fitting::merge_sizes(Rounding rounding) {
  const bool up = rounding == Rounding::up;
  const auto merged = [&](const Size& a, const Size& b) {
    Size out{
        std::min(a.width, b.width), std::min(a.height, b.height), a.may_turn || b.may_turn, {}};
    if (up) {
      out = {
          std::max(a.width, b.width), std::max(a.height, b.height), a.may_turn && b.may_turn, {}};
    }
    return out;
  };
  const auto area = [](const Size& s) { return double{s.width * 1.0} * s.height; };
  const auto cost = [&](const Size& a, const Size& b) {
    const double one = area(merged(a, b));
    return std::abs(one - area(a)) * static_cast<double>(a.items.size()) +
           std::abs(one - area(b)) * static_cast<double>(b.items.size());
  };
  std::size_t first = 0, second = 1;
  for (std::size_t i = 0; i < sizes_.size(); ++i) {
    for (std::size_t j = i + 1; j < sizes_.size(); ++j) {
      if (cost(sizes_[i], sizes_[j]) < cost(sizes_[first], sizes_[second])) {
        first = i;
        second = j;
      }
    }
  }
  Size one = merged(sizes_[first], sizes_[second]);
  std::merge(sizes_[first].items.begin(), sizes_[first].items.end(), sizes_[second].items.begin(),
             sizes_[second].items.end(), std::back_inserter(one.items));
  sizes_[first] = std::move(one);
  sizes_.erase(sizes_.begin() + static_cast<std::ptrdiff_t>(second));
  is_exact_ = false;
}

std::vector<int> Fitting::digits(std::size_t state) const {
  std::vector<int> out;
  for (const Size& size : sizes_) {
    out.push_back(static_cast<int>(state % (size.items.size() + 1)));
    state /= size.items.size() + 1;
  }
  return out;
}

void Fitting::fill_single(std::size_t state, const Size& size) {
  const auto stand = [&](Cells width, Cells height) {
    if (width > most_width_ || height > most_height_) return;
    for (Cells h = height; h <= most_height_; ++h) {
      widths(state)[h] = std::min(widths(state)[h], width);
    }
    for (Cells w = width; w <= most_width_; ++w) {
      heights(state)[w] = std::min(heights(state)[w], height);
    }
  };
  stand(size.width, size.height);
  if (size.may_turn) stand(size.height, size.width);
}

// Tells what rows found to the columns' half of the table, and the other way round.
void Fitting::close(std::size_t state) {
  Cells *w = widths(state), *h = heights(state);
  const std::vector<Cells> rows(w, w + most_height_ + 1);
  const auto note = [](const Cells* from, Cells most_from, Cells* to, Cells most_to) {
    for (Cells i = 0; i <= most_from; ++i) {
      if (from[i] <= most_to) to[from[i]] = std::min(to[from[i]], i);
    }
    for (Cells i = 1; i <= most_to; ++i) to[i] = std::min(to[i], to[i - 1]);
  };
  note(h, most_width_, w, most_height_);
  note(rows.data(), most_height_, h, most_width_);
  std::fill(w + most_height_ + 1, w + by_height_, no_size);
  std::fill(h + most_width_ + 1, h + by_width_, no_size);
  std::replace_if(
      w, w + by_height_, [&](Cells c) { return c > most_width_; }, no_size);
  std::replace_if(
      h, h + by_width_, [&](Cells c) { return c > most_height_; }, no_size);
}

void Fitting::fill() {
  widths_.assign(states_ * by_height_, no_size);
  heights_.assign(states_ * by_width_, no_size);
  for (std::size_t state = 1; state < states_; ++state) {
    const std::vector<int> count = digits(state);
    if (std::accumulate(count.begin(), count.end(), 0) == 1) {
      const auto which = std::find(count.begin(), count.end(), 1) - count.begin();
      fill_single(state, sizes_[static_cast<std::size_t>(which)]);
      continue;
    }
    for_each_part(count, weights_, [&](std::size_t part) {
      if (part > state - part) return true;  // the two halves the other way round
      take_least_sums(widths(state), widths(part), widths(state - part), by_height_);
      take_least_sums(heights(state), heights(part), heights(state - part), by_width_);
      return true;
    });
    close(state);
  }
}

bool Fitting::any() const {
  return is_filled_ && std::any_of(room_cells_.begin(), room_cells_.end(), [&](const auto& room) {
           return widths(states_ - 1)[room.second] <= room.first;
         });
}

std::vector<Room> Fitting::least_sizes() const {
  std::vector<Room> out;
  if (!is_filled_) return out;
  const Cells* w = widths(states_ - 1);
  for (Cells h = 1; h <= most_height_; ++h) {
    if (w[h] == no_size || w[h] == w[h - 1]) continue;
    out.push_back({unit_ * w[h] - gap_, unit_ * h - gap_});
  }
  return out;
}

// Makes blocks of items from the table.
class Fitting::Maker {
 public:
  explicit Maker(const Fitting& table) : table_(table) {}

  // A block of the state within a room; `turn` picks another way to part it where there are some.
  Block made(std::size_t state, Cells width, Cells height, std::size_t turn) {
    const std::vector<int> count = table_.digits(state);
    if (std::accumulate(count.begin(), count.end(), 0) == 1) return single(count, width, height);
    const std::vector<Way> ways = ways_of(state, width, height, turn + 1);
    return by(ways[turn % ways.size()], state, width, height, turn);
  }

  struct Way {
    std::size_t part = 0;
    Block::Kind kind = Block::Kind::row;
  };

  std::vector<Way> ways_of(std::size_t state, Cells width, Cells height, std::size_t most) const {
    std::vector<Way> out;
    for_each_part(table_.digits(state), table_.weights_, [&](std::size_t part) {
      if (part > state - part) return true;
      if (table_.widths(part)[height] + table_.widths(state - part)[height] <= width) {
        out.push_back({part, Block::Kind::row});
      }
      if (table_.heights(part)[width] + table_.heights(state - part)[width] <= height) {
        out.push_back({part, Block::Kind::column});
      }
      return out.size() < most;
    });
    return out;
  }

  Block by(const Way& way, std::size_t state, Cells width, Cells height, std::size_t turn) {
    const std::size_t rest = state - way.part;
    if (way.kind == Block::Kind::row) {
      const Cells first = table_.widths(way.part)[height];
      Block a = made(way.part, first, height, turn);
      const Block b = made(rest, static_cast<Cells>(width - first), height, turn);
      return joined(Block::Kind::row, a, b, table_.gap_);
    }
    const Cells first = table_.heights(way.part)[width];
    Block a = made(way.part, width, first, turn);
    const Block b = made(rest, width, static_cast<Cells>(height - first), turn);
    return joined(Block::Kind::column, a, b, table_.gap_);
  }

  void begin() { taken_.assign(table_.sizes_.size(), 0); }

 private:
  Block single(const std::vector<int>& count, Cells width, Cells height) {
    const auto which =
        static_cast<std::size_t>(std::find(count.begin(), count.end(), 1) - count.begin());
    const int item = table_.sizes_[which].items[taken_[which]++];
    const Item& it = table_.items_[static_cast<std::size_t>(item)];
    const bool stands = table_.unit_ * width >= it.width + table_.gap_ &&
                        table_.unit_ * height >= it.height + table_.gap_;
    return picture_block(table_.items_, item, !stands);
  }

  const Fitting& table_;
  std::vector<std::size_t> taken_;  // items of each size that stand already
};

std::vector<Block> Fitting::blocks(std::size_t most) const {
  std::vector<Block> out;
  std::set<std::string> seen;
  if (!is_filled_) return out;
  if (items_.size() == 1) {
    const Size& size = sizes_.front();
    for (const auto& [width, height] : room_cells_) {
      const bool stands = size.width <= width && size.height <= height;
      const bool turns = size.may_turn && size.height <= width && size.width <= height;
      if (!stands && !turns) continue;
      Maker maker(*this);
      maker.begin();
      return {maker.made(states_ - 1, width, height, 0)};
    }
    return out;
  }
  for (const auto& [width, height] : room_cells_) {
    if (widths(states_ - 1)[height] > width) continue;
    Maker maker(*this);
    std::vector<Maker::Way> ways = maker.ways_of(states_ - 1, width, height, most * 32);
    // Spread over all of them: neighbours in the list differ little.
    const std::size_t step = std::max<std::size_t>(1, ways.size() / most);
    for (std::size_t turn = 0; turn < 3; ++turn) {
      for (std::size_t i = 0; i < ways.size() && out.size() < most; i += step) {
        maker.begin();
        Block block = maker.by(ways[i], states_ - 1, width, height, turn);
        if (seen.insert(look_key(block)).second) out.push_back(std::move(block));
      }
    }
  }
  return out;
}

}  // namespace mullion::suggest
