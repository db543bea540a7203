#include "engine/suggest/patterns.h"

#include <algorithm>
#include <optional>

#include "engine/suggest/growing.h"

namespace mullion::suggest {
namespace {

using Kind = Block::Kind;

constexpr int most_wing_lines = 3;

bool is_larger(const Block& a, const Block& b) {
  return area(a) > area(b);
}

struct Twins {
  Block first, second;
};

// Twins and singles, the largest first.
struct Cast {
  std::vector<Twins> twins;
  std::vector<Block> singles;
};

bool differ_little(Length a, Length b, double share) {
  return to_inches(std::max(a, b) - std::min(a, b)) <= share * to_inches(std::max(a, b));
}

// Takes a block's nearest twin within that share out of the list.
std::optional<Block> take_twin(const Block& block, std::vector<Block>& others, double share) {
  for (auto other = others.begin(); other != others.end(); ++other) {
    if (!differ_little(block.width, other->width, share)) continue;
    if (!differ_little(block.height, other->height, share)) continue;
    Block out = *other;
    others.erase(other);
    return out;
  }
  return std::nullopt;
}

void pair_up(Cast& cast, double share) {
  std::vector<Block> left = std::move(cast.singles);
  cast.singles.clear();
  while (!left.empty()) {
    Block block = left.front();
    left.erase(left.begin());
    if (auto twin = take_twin(block, left, share)) {
      cast.twins.push_back({std::move(block), std::move(*twin)});
    } else {
      cast.singles.push_back(std::move(block));
    }
  }
}

Cast cast_of(std::vector<Block> pictures) {
  std::stable_sort(pictures.begin(), pictures.end(), is_larger);
  Cast cast{{}, std::move(pictures)};
  pair_up(cast, 0);
  pair_up(cast, twin_difference);
  std::stable_sort(cast.twins.begin(), cast.twins.end(),
                   [](const Twins& a, const Twins& b) { return is_larger(a.first, b.first); });
  return cast;
}

Block mirrored(const Block& block, Kind across, const std::vector<Block>& twin_of_item) {
  if (block.kind == Kind::picture) return twin_of_item[static_cast<std::size_t>(block.item)];
  Block out = block;
  for (Block& part : out.parts) part = mirrored(part, across, twin_of_item);
  if (block.kind == across) std::reverse(out.parts.begin(), out.parts.end());
  return out;
}

// Builds one pattern after another; `across` is the direction in which it is mirrored.
class Patterns {
 public:
  Patterns(Cast cast, Length gap, Kind across, std::size_t items)
      : cast_(std::move(cast)), gap_(gap), across_(across), twin_of_item_(items) {
    for (const Twins& twins : cast_.twins) {
      twin_of_item_[static_cast<std::size_t>(twins.first.item)] = twins.second;
    }
  }

  // `above` and `below` twins in the bands, `wing` in the wings, the rest in the middle.
  void add(std::size_t above, std::size_t below, std::size_t wing, bool split) {
    std::vector<Twins> left = cast_.twins;
    std::vector<Block> top, bottom;
    if (split) {
      if (left.size() < above + below + wing + 1) return;
      top.push_back(left.back().first);
      bottom.push_back(left.back().second);
      left.pop_back();
    }
    const auto take = [&](std::size_t count) {
      std::vector<Twins> out(left.end() - static_cast<std::ptrdiff_t>(count), left.end());
      left.resize(left.size() - count);
      return out;
    };
    const std::vector<Twins> wings = take(wing);
    flank(bottom, take(below));
    flank(top, take(above));
    for (const Block& middle : middles(left)) add_around(middle, wings, top, bottom);
  }

  // Mirrored rows, one below the other, with a single in the middle of each as far as they go.
  void add_rows(std::size_t count) {
    if (count < 2 || count > cast_.twins.size() + cast_.singles.size()) return;
    if (count < cast_.singles.size()) return;
    std::vector<std::vector<Block>> rows(count);
    for (std::size_t i = 0; i < cast_.singles.size(); ++i) rows[i].push_back(cast_.singles[i]);
    for (std::size_t i = 0; i < cast_.twins.size(); ++i) {
      flank(rows[count - 1 - i % count], {cast_.twins[i]});
    }
    std::vector<Block> made;
    for (const auto& row : rows) {
      if (row.empty()) return;
      made.push_back(chain(across_, row, gap_));
    }
    made_.push_back(chain(down(), made, gap_));
    made_.push_back(chain(down(), largest_in_middle(made), gap_));
  }

  std::vector<Block> take() { return std::move(made_); }

 private:
  Kind down() const { return across_ == Kind::row ? Kind::column : Kind::row; }

  // Puts twins outside of what stands in a band.
  static void flank(std::vector<Block>& band, const std::vector<Twins>& twins) {
    for (const Twins& pair : twins) {
      band.insert(band.begin(), pair.first);
      band.push_back(pair.second);
    }
  }

  // What stands on the axis: each single, and twins side by side; the largest first or in the
  // middle. Nothing gives one empty block.
  std::vector<Block> middles(const std::vector<Twins>& twins) const {
    std::vector<Block> parts = cast_.singles;
    for (const Twins& pair : twins) parts.push_back(joined(across_, pair.first, pair.second, gap_));
    if (parts.empty()) return {Block{}};
    std::stable_sort(parts.begin(), parts.end(), is_larger);
    std::vector<Block> out{chain(down(), parts, gap_)};
    if (parts.size() > 2) out.push_back(chain(down(), largest_in_middle(parts), gap_));
    return out;
  }

  static std::vector<Block> largest_in_middle(std::vector<Block> parts) {
    std::stable_sort(parts.begin(), parts.end(), is_larger);
    std::vector<Block> out;
    for (std::size_t i = 0; i < parts.size(); ++i) {
      out.insert(i % 2 == 0 ? out.end() : out.begin(), parts[i]);
    }
    return out;
  }

  void add_around(const Block& middle, const std::vector<Twins>& wings,
                  const std::vector<Block>& top, const std::vector<Block>& bottom) {
    const int lines = std::min(most_wing_lines, static_cast<int>(wings.size()));
    for (int line = wings.empty() ? 0 : 1; line <= lines; ++line) {
      std::vector<Block> row;
      const bool has_middle = middle.width > Length();
      if (line > 0) {
        std::vector<Block> firsts;
        firsts.reserve(wings.size());
        for (const Twins& pair : wings) firsts.push_back(pair.first);
        const Block wing = in_lines(firsts, gap_, across_, line);
        row.push_back(wing);
        if (has_middle) row.push_back(middle);
        row.push_back(mirrored(wing, across_, twin_of_item_));
      } else if (has_middle) {
        row.push_back(middle);
      }
      std::vector<Block> rows;
      if (!top.empty()) rows.push_back(chain(across_, top, gap_));
      if (!row.empty()) rows.push_back(chain(across_, row, gap_));
      if (!bottom.empty()) rows.push_back(chain(across_, bottom, gap_));
      made_.push_back(chain(down(), rows, gap_));
    }
  }

  Cast cast_;
  Length gap_;
  Kind across_;
  std::vector<Block> twin_of_item_;
  std::vector<Block> made_;
};

}  // namespace

std::vector<Block> symmetric_patterns(const std::vector<Block>& pictures, Length gap) {
  const Cast cast = cast_of(pictures);
  std::vector<Block> out;
  for (const Kind across : {Kind::row, Kind::column}) {
    Patterns patterns(cast, gap, across, pictures.size());
    for (std::size_t rows = 2; rows <= pictures.size() / 2 + 1; ++rows) patterns.add_rows(rows);
    for (std::size_t band = 0; band <= cast.twins.size(); ++band) {
      for (std::size_t wing = 0; band + wing <= cast.twins.size(); ++wing) {
        if (band > 0) patterns.add(band, 0, wing, false);
        for (const bool split : {false, true}) {
          if (2 * band + wing <= cast.twins.size()) patterns.add(band, band, wing, split);
        }
      }
    }
    const std::vector<Block> made = patterns.take();
    out.insert(out.end(), made.begin(), made.end());
  }
  return out;
}

}  // namespace mullion::suggest
