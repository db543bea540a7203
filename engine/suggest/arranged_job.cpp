#include "engine/suggest/arranged_job.h"

#include <algorithm>
#include <map>

#include "engine/job/sight.h"
#include "engine/mat/mat.h"

namespace mullion::suggest {
namespace {

void list_pictures(const Node& node, std::map<std::string, std::string>& picture_of) {
  if (const auto* opening = std::get_if<Opening>(&node.what)) {
    picture_of[opening->id] = opening->picture;
    return;
  }
  for (const Node& child : std::get<Group>(node.what).children) list_pictures(child, picture_of);
}

void keep_layers_of_pictures(Job& job, const Node& arrangement) {
  std::map<std::string, std::string> picture_of;
  list_pictures(arrangement, picture_of);
  std::vector<Layer> layers;
  for (Layer& layer : job.layers) {
    std::vector<std::string> pictures;
    for (const std::string& id : layer.only) {
      const auto found = picture_of.find(id);
      if (found != picture_of.end() && !found->second.empty()) pictures.push_back(found->second);
    }
    if (!layer.only.empty() && pictures.empty()) continue;
    layer.only = std::move(pictures);
    layers.push_back(std::move(layer));
  }
  job.layers = std::move(layers);
}

Node node_of(const Block& block, const Job& job, Length gap) {
  if (block.kind == Block::Kind::picture) {
    Opening opening;
    opening.picture = job.pictures[static_cast<std::size_t>(block.item)].id;
    opening.id = opening.picture;
    return {opening};
  }
  Group group;
  for (const Block& part : block.parts) {
    Node node = node_of(part, job, gap);
    (block.kind == Block::Kind::row ? node.shift.down : node.shift.right) = part.moved;
    group.children.push_back(std::move(node));
  }
  if (block.kind == Block::Kind::ring) {
    group.along = Along::ring;
    group.ring = block.ring;
    group.children.back().is_centre = block.has_centre;
    return {group};
  }
  group.along = block.kind == Block::Kind::row ? Along::row : Along::column;
  group.align = block.align;
  const bool are_alike = std::all_of(block.gaps.begin(), block.gaps.end(),
                                     [&](Length one) { return one == block.gaps.front(); });
  const Length common = block.gaps.empty() ? gap : block.gaps.front();
  if (are_alike) group.gap = common;
  group.gaps.assign(group.children.size() - 1, {{}, common, {}});
  for (std::size_t i = 0; i < block.gaps.size(); ++i) group.gaps[i].size = block.gaps[i];
  return {group};
}

// By a quarter to the right; back where it hung turned to the right already.
void turn(Picture& picture) {
  std::swap(picture.width, picture.height);
  const double x = picture.pan_x, y = picture.pan_y;
  const bool back = picture.turned == Turn::right;
  picture.pan_x = back ? y : -y;
  picture.pan_y = back ? -x : x;
  picture.turned = picture.turned == Turn::none   ? Turn::right
                   : picture.turned == Turn::over ? Turn::left
                                                  : Turn::none;
}

void turn_pictures(const Block& block, Job& job) {
  if (block.turned) turn(job.pictures[static_cast<std::size_t>(block.item)]);
  for (const Block& part : block.parts) turn_pictures(part, job);
}

}  // namespace

Job without_arrangement(const Job& job) {
  Job out = job;
  keep_layers_of_pictures(out, job.arrangement);
  out.arrangement = {};
  out.rules.clear();
  Borders weighted;
  if (job.borders.bottom != Borders::Bottom::given) {
    weighted.bottom = job.borders.bottom;
    weighted.extra = job.borders.extra;
    weighted.ratio_numerator = job.borders.ratio_numerator;
    weighted.ratio_denominator = job.borders.ratio_denominator;
  }
  out.borders = weighted;
  return out;
}

std::vector<Item> items_of(const Job& bare) {
  std::vector<Item> items;
  std::map<std::string, int> groups;
  for (const Picture& picture : bare.pictures) {
    Opening opening;
    opening.id = opening.picture = picture.id;
    const Sides stack = reveal_stack(bare, opening);
    const Sight sight = sight_of(opening, &picture);
    Item item{*sight.width + stack.left + stack.right, *sight.height + stack.top + stack.bottom,
              picture.may_turn, -1, picture.order};
    if (!picture.group.empty()) {
      item.group = groups.emplace(picture.group, static_cast<int>(groups.size())).first->second;
    }
    items.push_back(item);
  }
  return items;
}

Length bottom_extra(const Job& bare, Length border) {
  const Borders& borders = bare.borders;
  if (borders.bottom == Borders::Bottom::extra) return borders.extra;
  if (borders.bottom != Borders::Bottom::ratio) return {};
  return Length::from_ticks(border.ticks() * borders.ratio_numerator / borders.ratio_denominator) -
         border;
}

// Each part where it lies on the board, in whole steps.
Node places_of(const Block& block, const Job& bare, const Board& board, Length gap) {
  std::vector<Rect> whole{{{}, {}, block.width, block.height}};
  centre(whole, block.width, block.height, board);
  const auto on_step = [&](Length at) {
    const std::int64_t step = bare.scale.increment.ticks();
    return Length::from_ticks(at.ticks() / step * step);
  };
  Group group;
  group.along = Along::places;
  for (std::size_t i = 0; i < block.parts.size(); ++i) {
    Node node = node_of(block.parts[i], bare, gap);
    node.spot.left = on_step(whole.front().left + block.corners[i].left);
    node.spot.top = on_step(whole.front().top + block.corners[i].top);
    group.children.push_back(std::move(node));
  }
  return {group};
}

Job arranged(const Job& bare, const Block& block, const Board& board, Length gap) {
  Job out = bare;
  out.arrangement = block.kind == Block::Kind::pinwheel ? places_of(block, bare, board, gap)
                                                        : node_of(block, bare, gap);
  turn_pictures(block, out);
  if (!out.frame) {
    out.outer_width = board.width;
    out.outer_height = board.height;
  }
  return out;
}

}  // namespace mullion::suggest
