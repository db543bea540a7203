#include "engine/layout/holding.h"

#include <algorithm>

#include "engine/job/reveal.h"
#include "engine/job/sight.h"
#include "engine/job/usual.h"

namespace mullion::layout {
namespace {

constexpr std::int64_t overcut_thicknesses = 1;

Length on_increment(const Job& job, Length least) {
  const std::int64_t step = job.scale.increment.ticks();
  return Length::from_ticks((least.ticks() + step - 1) / step * step);
}

Length thickness(const Job& job) {
  return job.layers.empty() ? thickness_of(Layer().ply, job.scale.unit)
                            : job.layers.front().thickness;
}

}  // namespace

Reach reach_of(const Job& job, const Opening& opening) {
  const Picture* picture = picture_of(job, opening);
  if (picture == nullptr || picture->float_gap) return {};
  const Sides stack = reveal_stack(job, opening);
  const Sight sight = sight_of(opening, picture);
  const auto beyond = [](Length size, const std::optional<Length>& seen, Length before,
                         Length after) {
    if (!seen) return Length();
    return std::max(half_rounded_down(size - *seen) - std::min(before, after), Length());
  };
  return {beyond(picture->width, sight.width, stack.left, stack.right),
          beyond(picture->height, sight.height, stack.top, stack.bottom)};
}

Length least_held_bar(const Job& job, Length reach) {
  const Length board = thickness(job);
  const Length bevels = bevel_run(board, job.bevel_millidegrees) * 2;
  const Length overcuts = board * (2 * overcut_thicknesses);
  return on_increment(job, std::max(std::max(bevels, overcuts) + board, reach));
}

Length least_held_border(const Job& job, Length reach) {
  const Length board = thickness(job);
  const Length bevel = bevel_run(board, job.bevel_millidegrees);
  const Length lip = job.frame ? job.frame->lip : Length();
  return on_increment(job, std::max(std::max(bevel, lip) + board, reach));
}

bool is_fixed(const Job& job, const std::string& measure) {
  return std::any_of(job.rules.begin(), job.rules.end(), [&](const Rule& rule) {
    return rule.kind == Rule::Kind::fixed && rule.strength == Strength::required &&
           rule.of.front() == measure;
  });
}

bool is_placed_by_rule(const Job& job, const std::vector<std::string>& ids, Axis axis) {
  const auto is_edge = [&](std::string_view edge) {
    if (axis == across) return edge == "left" || edge == "right" || edge == "centre";
    return edge == "top" || edge == "bottom" || edge == "middle";
  };
  const auto is_one = [&](std::string_view id) {
    return std::find(ids.begin(), ids.end(), id) != ids.end();
  };
  return std::any_of(job.rules.begin(), job.rules.end(), [&](const Rule& rule) {
    if (rule.kind == Rule::Kind::same_size) return false;
    if (rule.kind == Rule::Kind::align) {
      return is_edge(rule.edge) && std::any_of(rule.of.begin(), rule.of.end(), is_one);
    }
    if (rule.kind == Rule::Kind::centred) {
      const bool is_this_way = rule.dimension != (axis == across ? "down" : "across");
      return is_this_way &&
             (is_one(rule.on) || std::any_of(rule.of.begin(), rule.of.end(), is_one));
    }
    return std::any_of(rule.of.begin(), rule.of.end(), [&](const std::string& name) {
      const std::size_t dot = name.rfind('.');
      return dot != std::string::npos && is_edge(std::string_view(name).substr(dot + 1)) &&
             is_one(std::string_view(name).substr(0, dot));
    });
  });
}

}  // namespace mullion::layout
