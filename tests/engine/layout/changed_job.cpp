#include "tests/engine/layout/changed_job.h"

#include <algorithm>

#include "tests/engine/layout/jobs.h"

namespace test {

using namespace mullion;

namespace {

// Every length of the job that the layout reads, the increment and thicknesses included.
std::vector<Length*> lengths_of(Job& job) {
  std::vector<Length*> out{&job.scale.increment, &job.borders.extra};
  const auto add = [&](std::optional<Length>& length) {
    if (length) out.push_back(&*length);
  };
  for (Picture& picture : job.pictures) {
    out.insert(out.end(), {&picture.width, &picture.height});
    add(picture.overlap);
    add(picture.float_gap);
  }
  for (Layer& layer : job.layers) {
    out.push_back(&layer.thickness);
    for (Length Sides::*side : {&Sides::left, &Sides::top, &Sides::right, &Sides::bottom}) {
      out.push_back(&(layer.reveal.*side));
    }
  }
  add(job.outer_width);
  add(job.outer_height);
  add(job.least_bar);
  if (job.frame) {
    out.insert(out.end(), {&job.frame->rabbet_width, &job.frame->rabbet_height,
                           &job.frame->allowance, &job.frame->lip});
  }
  for (Opening* opening : openings_of(job.arrangement)) {
    add(opening->width);
    add(opening->height);
  }
  for (auto Borders::*border :
       {&Borders::left, &Borders::right, &Borders::top, &Borders::bottom_size, &Borders::least}) {
    add(job.borders.*border);
  }
  for (Group* group : groups_of(job.arrangement)) {
    add(group->gap);
    for (Gap& gap : group->gaps) add(gap.size);
  }
  for (Rule& rule : job.rules) out.push_back(&rule.value);
  return out;
}

// The numbers that a framer edits.
std::vector<Length*> numbers_of(Job& job) {
  std::vector<Length*> out;
  for (Length* length : lengths_of(job)) {
    const bool is_fixed = length == &job.scale.increment ||
                          std::any_of(job.layers.begin(), job.layers.end(),
                                      [&](Layer& layer) { return length == &layer.thickness; });
    if (!is_fixed && *length > sixty_fourths(8)) out.push_back(length);
  }
  return out;
}

std::string mirrored(std::string name, const char* first, const char* second) {
  const std::size_t dot = name.rfind('.') + 1;  // the whole name where there is no dot
  const std::string part = name.substr(dot);
  if (part == first) return name.substr(0, dot) + second;
  if (part == second) return name.substr(0, dot) + first;
  return name;
}

}  // namespace

std::vector<Opening*> openings_of(Node& node) {
  if (auto* opening = std::get_if<Opening>(&node.what)) return {opening};
  std::vector<Opening*> out;
  for (Node& child : std::get<Group>(node.what).children) {
    const auto inner = openings_of(child);
    out.insert(out.end(), inner.begin(), inner.end());
  }
  return out;
}

std::vector<Group*> groups_of(Node& node) {
  auto* group = std::get_if<Group>(&node.what);
  if (group == nullptr) return {};
  std::vector<Group*> out{group};
  for (Node& child : group->children) {
    const auto inner = groups_of(child);
    out.insert(out.end(), inner.begin(), inner.end());
  }
  return out;
}

void edit_one_number(Job& job, std::mt19937& random) {
  const std::vector<Length*> numbers = numbers_of(job);
  Length& number =
      *numbers[std::uniform_int_distribution<std::size_t>(0, numbers.size() - 1)(random)];
  const Length change = sixty_fourths(4 * std::uniform_int_distribution<int>(1, 12)(random));
  const bool smaller = std::bernoulli_distribution()(random) && number > change;
  number = smaller ? number - change : number + change;
}

void state_all(Job& job) {
  for (Picture& picture : job.pictures)
    picture.overlap = picture.overlap.value_or(sixty_fourths(8));
  for (Group* group : groups_of(job.arrangement)) {
    group->gap = group->gap.value_or(inches(1));
    for (Gap& gap : group->gaps) gap.size = gap.size.value_or(inches(1));
  }
  for (Opening* opening : openings_of(job.arrangement)) {
    if (opening->picture.empty()) opening->width = opening->width.value_or(inches(4));
    if (opening->picture.empty()) opening->height = opening->height.value_or(inches(4));
  }
  Borders& borders = job.borders;
  if (!job.outer_width && !job.frame && !borders.left) borders.left = inches(2);
  if (!job.outer_height && !job.frame && !borders.top) borders.top = inches(2);
}

void scale(Job& job, int factor) {
  for (Length* length : lengths_of(job)) *length = *length * factor;
}

void mirror(Job& job, layout::Axis axis) {
  const bool across = axis == layout::across;
  auto groups = groups_of(job.arrangement);
  std::reverse(groups.begin(), groups.end());  // inner ones first, since outer ones move them
  for (Group* group : groups) {
    if ((group->along == Along::row) == across) {
      std::reverse(group->children.begin(), group->children.end());
      std::reverse(group->gaps.begin(), group->gaps.end());
    } else if (group->align == Align::start) {
      group->align = Align::end;
    } else if (group->align == Align::end) {
      group->align = Align::start;
    }
  }
  if (across) {
    std::swap(job.borders.left, job.borders.right);
  } else {
    std::swap(job.borders.top, job.borders.bottom_size);
  }
  const char* const sides[2][2] = {{"top", "bottom"}, {"left", "right"}};
  for (Rule& rule : job.rules) {
    rule.edge = mirrored(rule.edge, sides[across][0], sides[across][1]);
    for (std::string& name : rule.of) name = mirrored(name, sides[across][0], sides[across][1]);
  }
}

}  // namespace test
