#include "engine/layout/changed_statement.h"

namespace mullion::layout {
namespace {

Group* group_at(Node& node, int& number) {
  auto* group = std::get_if<Group>(&node.what);
  if (group == nullptr) return nullptr;
  if (number-- == 0) return group;
  for (Node& child : group->children) {
    if (Group* found = group_at(child, number)) return found;
  }
  return nullptr;
}

void change_gap(Job& job, const Statement& gap, std::optional<Length> size) {
  int number = gap.group;
  Group* group = group_at(job.arrangement, number);
  if (group == nullptr) return;
  if (gap.gap >= 0) {
    group->gaps[static_cast<std::size_t>(gap.gap)].size = size;
    return;
  }
  for (Gap& one : group->gaps) {
    if (one.size == group->gap) one.size = size;
  }
  group->gap = size;
}

void change_border(Borders& borders, const Statement& border, std::optional<Length> size) {
  if (border.axis == across) {
    (border.far ? borders.right : borders.left) = size;
  } else {
    (border.far ? borders.bottom_size : borders.top) = size;
  }
}

}  // namespace

void change(Job& job, const Statement& statement, std::optional<Length> number) {
  switch (statement.kind) {
    case Statement::Kind::outer:
      (statement.axis == across ? job.outer_width : job.outer_height) = number;
      return;
    case Statement::Kind::frame: {
      if (!number) {
        job.frame.reset();
        return;
      }
      Frame& frame = *job.frame;
      (statement.axis == across ? frame.rabbet_width : frame.rabbet_height) =
          *number + frame.allowance;
      return;
    }
    case Statement::Kind::border:
      change_border(job.borders, statement, number);
      return;
    case Statement::Kind::gap:
      change_gap(job, statement, number);
      return;
    case Statement::Kind::least_bar:
      job.least_bar = number;
      return;
    case Statement::Kind::least_border:
      job.borders.least = number;
      return;
    case Statement::Kind::rule: {
      if (number) {
        job.rules[statement.rule].value = *number;
        return;
      }
      job.rules[statement.rule].strength = Strength::weak;  // so that other rules keep their place
      return;
    }
    case Statement::Kind::wider_bottom:
    case Statement::Kind::bottom_times:
      if (!number) job.borders.bottom = Borders::Bottom::given;
      return;
    case Statement::Kind::structure:
    case Statement::Kind::equal_gaps:
    case Statement::Kind::equal_sizes:
    case Statement::Kind::alignments:
    case Statement::Kind::side_borders:
    case Statement::Kind::end_borders:
    case Statement::Kind::optical_border:
    case Statement::Kind::alignment:
    case Statement::Kind::opening:
    case Statement::Kind::ring:
    case Statement::Kind::place:
    case Statement::Kind::least_opening:
    case Statement::Kind::held_bar:
    case Statement::Kind::held_border:
      return;
  }
}

}  // namespace mullion::layout
