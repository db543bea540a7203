#include "engine/suggest/growing.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace mullion::suggest {
namespace {

using Kind = Block::Kind;

struct Grown {
  Block block;
  Members members = 0;
  std::string look;
};

Grown grown(Block block) {
  const Members members = members_of(block);
  std::string look = look_key(block);
  return {std::move(block), members, std::move(look)};
}

struct State {
  std::vector<Grown> blocks;
  double waste = 0;  // area lost in the joints so far
};

struct Step {
  std::size_t state = 0, first = 0, second = 0;
  Kind kind = Kind::row;
  double cost = 0;
};

double waste_of(const Block& a, const Block& b, Kind kind, Length gap) {
  const double g = number(gap);
  if (kind == Kind::row) {
    const double height = std::max(number(a.height), number(b.height));
    return (height - number(a.height)) * number(a.width) +
           (height - number(b.height)) * number(b.width) + g * height;
  }
  const double width = std::max(number(a.width), number(b.width));
  return (width - number(a.width)) * number(a.height) +
         (width - number(b.width)) * number(b.height) + g * width;
}

// How far the last block's shape is from the wished one, as a share of its area.
double misshape(const Block& a, const Block& b, Kind kind, Length gap, double shape) {
  const Block whole = joined(kind, a, b, gap);
  const double ratio = number(whole.width) / number(whole.height) / shape;
  return std::abs(std::log(ratio)) * number(whole.width) * number(whole.height);
}

// The steps that join blocks i < j: as they come, or the other way round where only that is
// allowed.
void add_steps(std::vector<Step>& steps, const State& state, std::size_t index, std::size_t i,
               std::size_t j, Length gap, double shape) {
  const Block &a = state.blocks[i].block, &b = state.blocks[j].block;
  for (const Kind kind : {Kind::row, Kind::column}) {
    double cost = state.waste + waste_of(a, b, kind, gap);
    if (state.blocks.size() <= 3) cost += misshape(a, b, kind, gap, shape);
    steps.push_back({index, i, j, kind, cost});
  }
}

std::vector<Step> steps_from(const std::vector<State>& states, const Bonds& bonds, Length gap,
                             const Taste& taste) {
  std::vector<Step> steps;
  for (std::size_t s = 0; s < states.size(); ++s) {
    const std::vector<Grown>& blocks = states[s].blocks;
    for (std::size_t i = 0; i < blocks.size(); ++i) {
      const std::size_t last = taste.keep_order ? std::min(i + 2, blocks.size()) : blocks.size();
      for (std::size_t j = i + 1; j < last; ++j) {
        if (bonds.may_join(blocks[i].members, blocks[j].members)) {
          add_steps(steps, states[s], s, i, j, gap, taste.shape);
        } else if (bonds.may_join(blocks[j].members, blocks[i].members)) {
          add_steps(steps, states[s], s, j, i, gap, taste.shape);
        }
      }
    }
  }
  return steps;
}

std::string state_key(const State& state) {
  std::vector<std::string> keys;
  for (const Grown& grown : state.blocks) keys.push_back(grown.look);
  std::sort(keys.begin(), keys.end());
  std::string out;
  for (const std::string& key : keys) out += key + ";";
  return out;
}

State taken(const State& state, const Step& step, Length gap) {
  State out;
  const Grown &a = state.blocks[step.first], &b = state.blocks[step.second];
  out.waste = state.waste + waste_of(a.block, b.block, step.kind, gap);
  const std::size_t place = std::min(step.first, step.second);
  for (std::size_t i = 0; i < state.blocks.size(); ++i) {
    if (i == place) out.blocks.push_back(grown(joined(step.kind, a.block, b.block, gap)));
    if (i != step.first && i != step.second) out.blocks.push_back(state.blocks[i]);
  }
  return out;
}

bool turns(const Item& item, const std::vector<Item>& items, Standing standing) {
  if (!item.may_turn || item.width == item.height) return false;
  const bool is_upright = item.width < item.height;
  if (standing != Standing::as_most_do) return is_upright != (standing == Standing::upright);
  int upright = 0, lying = 0;
  for (const Item& other : items) {
    if (other.may_turn || other.width == other.height) continue;
    ++(other.width < other.height ? upright : lying);
  }
  return upright != lying && (upright > lying) != is_upright;
}

}  // namespace

std::vector<Block> standing_blocks(const std::vector<Item>& items, Standing standing) {
  std::vector<Block> out;
  for (const int item : Bonds(items).sequence()) {
    out.push_back(
        picture_block(items, item, turns(items[static_cast<std::size_t>(item)], items, standing)));
  }
  return out;
}

std::vector<Block> grow_arrangements(const std::vector<Block>& pictures, const Bonds& bonds,
                                     Length gap, const Taste& taste) {
  State start;
  for (const Block& picture : pictures) start.blocks.push_back(grown(picture));
  std::vector<State> states{start};
  for (std::size_t left = pictures.size(); left > 1; --left) {
    std::vector<Step> steps = steps_from(states, bonds, gap, taste);
    std::stable_sort(steps.begin(), steps.end(),
                     [](const Step& a, const Step& b) { return a.cost < b.cost; });
    std::vector<State> next;
    std::set<std::string> seen;
    for (const Step& step : steps) {
      if (next.size() >= static_cast<std::size_t>(taste.beam)) break;
      State state = taken(states[step.state], step, gap);
      if (seen.insert(state_key(state)).second) next.push_back(std::move(state));
    }
    states = std::move(next);
  }
  std::vector<Block> out;
  out.reserve(states.size());
  for (State& state : states) out.push_back(std::move(state.blocks.front().block));
  return out;
}

Block in_lines(const std::vector<Block>& blocks, Length gap, Kind across, int lines) {
  const Kind along = across == Kind::row ? Kind::column : Kind::row;
  double total = 0;
  const auto length = [&](const Block& block) {
    return number(along == Kind::row ? block.width : block.height);
  };
  for (const Block& block : blocks) total += length(block);
  std::vector<Block> made;
  double placed = 0;
  for (const Block& block : blocks) {
    const auto line = static_cast<std::size_t>((placed + length(block) / 2) / total * lines);
    placed += length(block);
    if (line < made.size()) {
      made[line] = joined(along, made[line], block, gap);
    } else {
      made.push_back(block);
    }
  }
  Block out = made.front();
  for (std::size_t i = 1; i < made.size(); ++i) out = joined(across, out, made[i], gap);
  return out;
}

}  // namespace mullion::suggest
