#include "engine/suggest/growing.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace mullion::suggest {
namespace {

using Kind = Block::Kind;

double number(Length length) {
  return static_cast<double>(length.ticks());
}

struct State {
  std::vector<Block> blocks;
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

std::vector<Step> steps_from(const std::vector<State>& states, Length gap, const Taste& taste) {
  std::vector<Step> steps;
  for (std::size_t s = 0; s < states.size(); ++s) {
    const std::vector<Block>& blocks = states[s].blocks;
    for (std::size_t i = 0; i < blocks.size(); ++i) {
      const std::size_t last = taste.keep_order ? std::min(i + 2, blocks.size()) : blocks.size();
      for (std::size_t j = i + 1; j < last; ++j) {
        for (const Kind kind : {Kind::row, Kind::column}) {
          double cost = states[s].waste + waste_of(blocks[i], blocks[j], kind, gap);
          if (blocks.size() <= 3) cost += misshape(blocks[i], blocks[j], kind, gap, taste.shape);
          steps.push_back({s, i, j, kind, cost});
        }
      }
    }
  }
  return steps;
}

std::string state_key(const State& state) {
  std::vector<std::string> keys;
  for (const Block& block : state.blocks) keys.push_back(look_key(block));
  std::sort(keys.begin(), keys.end());
  std::string out;
  for (const std::string& key : keys) out += key + ";";
  return out;
}

State taken(const State& state, const Step& step, Length gap) {
  State out;
  const Block& a = state.blocks[step.first];
  const Block& b = state.blocks[step.second];
  out.waste = state.waste + waste_of(a, b, step.kind, gap);
  for (std::size_t i = 0; i < state.blocks.size(); ++i) {
    if (i == step.first) out.blocks.push_back(joined(step.kind, a, b, gap));
    if (i != step.first && i != step.second) out.blocks.push_back(state.blocks[i]);
  }
  return out;
}

bool turns_well(const Item& item, const std::vector<Item>& items) {
  // An item that may turn stands as most of the others do.
  int upright = 0, lying = 0;
  for (const Item& other : items) {
    if (other.may_turn || other.width == other.height) continue;
    ++(other.width < other.height ? upright : lying);
  }
  const bool is_upright = item.width < item.height;
  return item.may_turn && upright != lying && (upright > lying) != is_upright;
}

}  // namespace

std::vector<Block> grow_arrangements(const std::vector<Item>& items, Length gap,
                                     const Taste& taste) {
  State start;
  for (std::size_t i = 0; i < items.size(); ++i) {
    start.blocks.push_back(picture_block(items, static_cast<int>(i), turns_well(items[i], items)));
  }
  std::vector<State> states{start};
  for (std::size_t left = items.size(); left > 1; --left) {
    std::vector<Step> steps = steps_from(states, gap, taste);
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
  for (State& state : states) out.push_back(std::move(state.blocks.front()));
  return out;
}

Block in_lines(const std::vector<Item>& items, Length gap, Kind across, int lines) {
  const Kind along = across == Kind::row ? Kind::column : Kind::row;
  double total = 0;
  const auto length = [&](const Item& item) {
    return number(along == Kind::row ? item.width : item.height);
  };
  for (const Item& item : items) total += length(item);
  std::vector<Block> made;
  double placed = 0;
  for (std::size_t i = 0; i < items.size(); ++i) {
    const Block picture = picture_block(items, static_cast<int>(i), false);
    const auto line = static_cast<std::size_t>((placed + length(items[i]) / 2) / total * lines);
    placed += length(items[i]);
    if (line < made.size()) {
      made[line] = joined(along, made[line], picture, gap);
    } else {
      made.push_back(picture);
    }
  }
  Block out = made.front();
  for (std::size_t i = 1; i < made.size(); ++i) out = joined(across, out, made[i], gap);
  return out;
}

}  // namespace mullion::suggest
