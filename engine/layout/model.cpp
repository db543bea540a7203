#include "engine/layout/model.h"

#include <algorithm>
#include <optional>
#include <utility>

#include "engine/job/reveal.h"
#include "engine/job/sight.h"
#include "engine/job/usual.h"
#include "engine/layout/holding.h"
#include "engine/layout/ring.h"

namespace mullion::layout {
namespace {

using solver::Constraint;
using solver::Linear;

// Ranks for snapping: the higher, the sooner it takes a remainder.
enum Rank {
  free_size,
  gap_size,
  position,
  outer_size,
  near_border,
  far_side_border,
  bottom_border
};

class Builder {
 public:
  Builder(const Job& job, const Defaults& defaults) : job_(job), defaults_(defaults) {
    model_.statements.push_back({});  // tag 0: structure
  }

  Model build() {
    for (Axis axis : {across, down}) model_.outer[axis] = variable();
    const Part root = place_node(job_.arrangement);
    model_.least_outer = root.least;
    reach_ = root.reach;
    for (Axis axis : {across, down}) {
      const Span& span = root.box.span[axis];
      model_.border[axis] = {span.start, model_.outer[axis] - span.end};
      at_least(span.start, Length(), structure);
      at_least(model_.border[axis].end, Length(), structure);
      state_outer(axis);
    }
    state_borders();
    for (Axis axis : {across, down}) {
      prefer_equal(free_gaps_[axis], level::equal_parts);
      if (const auto mean = prefer_equal(free_sizes_[axis], level::free_sizes)) {
        model_.free_size_axis[*mean] = axis;
      }
    }
    list_measures();
    return std::move(model_);
  }

 private:
  static constexpr int structure = 0;

  // What was placed, with the sizes that no solution can change.
  struct Part {
    Box box;
    std::array<std::optional<Length>, 2> size;
    std::array<Length, 2> least;   // no solution makes it smaller
    std::array<Length, 2> reach;   // of its pictures beyond its openings, at most
    Statement::Part name;          // for messages
    std::vector<std::string> ids;  // its own and those within it
  };

  Linear variable() { return Linear(model_.system.add_variable()); }

  int state(Statement statement) {
    model_.statements.push_back(std::move(statement));
    return static_cast<int>(model_.statements.size()) - 1;
  }
  static Statement said(Statement::Kind kind, Place place, Length value = {}) {
    Statement out;
    out.kind = kind;
    out.place = place;
    out.value = value;
    return out;
  }
  static Statement adjustable(Statement statement) {
    statement.adjustable = true;
    return statement;
  }

  void require(Constraint constraint, int tag) {
    model_.system.add(tagged(std::move(constraint), tag));
  }
  void want(Constraint constraint, int level, int tag = structure) {
    model_.system.add(tagged(prefer(std::move(constraint), level), tag));
  }
  void at_least(const Linear& form, Length value, int tag) {
    require(form >= Linear(value.ticks()), tag);
  }

  Part place_node(const Node& node) {
    if (const auto* opening = std::get_if<Opening>(&node.what)) return place_opening(*opening);
    return place_group(std::get<Group>(node.what));
  }

  Part place_opening(const Opening& opening) {
    const Sides stack = reveal_stack(job_, opening);
    const Sight sight = sight_of(opening, picture_of(job_, opening));
    Part out;
    out.name = {opening.id, std::nullopt};
    out.ids = {opening.id};
    const Reach reach = reach_of(job_, opening);
    out.reach = {reach.across, reach.down};
    for (Axis axis : {across, down}) {
      const Linear start = variable(), end = variable();
      out.box.span[axis] = {start, end};
      const Length around = axis == across ? stack.left + stack.right : stack.top + stack.bottom;
      if (const auto& seen = axis == across ? sight.width : sight.height) {
        const Length size = *seen + around;
        Statement stated = said(Statement::Kind::opening, opening.place, size);
        stated.axis = axis;
        stated.part = out.name;
        require(end - start == Linear(size.ticks()), state(stated));
        out.size[axis] = out.least[axis] = size;
      } else {
        out.least[axis] = usual_for(job_.scale.unit).least_opening + around;
        at_least(end - start, out.least[axis],
                 state(said(Statement::Kind::least_opening, opening.place, out.least[axis])));
        measure(end - start, free_size);
        free_sizes_[axis].push_back(end - start);
      }
    }
    model_.openings.push_back({opening.id, out.box, false, {}});
    return out;
  }

  Part place_group(const Group& group) {
    const std::size_t slot = model_.groups.size();
    model_.groups.push_back({group.id, {}, true, {}});
    const std::size_t first_opening = model_.openings.size();
    std::vector<Part> parts;
    for (const Node& child : group.children) parts.push_back(place_node(child));

    Part out;
    out.name = {group.id, group.along};
    if (!group.id.empty()) out.ids.push_back(group.id);
    for (const Part& part : parts) {
      out.ids.insert(out.ids.end(), part.ids.begin(), part.ids.end());
      for (Axis axis : {across, down}) {
        out.least[axis] = std::max(out.least[axis], part.least[axis]);
        out.reach[axis] = std::max(out.reach[axis], part.reach[axis]);
      }
    }
    if (group.along == Along::ring) {
      place_in_ring(group, slot, parts, out);
    } else if (group.along == Along::places) {
      place_on_mat(group, parts, out);
    } else {
      place_in_line(group, static_cast<int>(slot), parts, out);
    }
    NamedBox& named = model_.groups[slot];
    named.box = out.box;
    for (std::size_t i = first_opening; i < model_.openings.size(); ++i) {
      named.openings.push_back(static_cast<int>(i) + 1);
    }
    return out;
  }

  void place_in_line(const Group& group, int number, const std::vector<Part>& parts, Part& out) {
    const Axis main = group.along == Along::row ? across : down;
    const Axis cross = main == across ? down : across;
    out.least[main] = {};
    for (const Part& part : parts) out.least[main] += part.least[main];
    std::vector<Part> slots = parts;
    bool is_moved = false;
    for (std::size_t i = 0; i < parts.size(); ++i) {
      const Shift& shift = group.children[i].shift;
      is_moved |= !shift.is_none();
      slots[i].box = shifted(parts[i].box, {-shift.right, -shift.down});
    }
    out.box.span[main] = {slots.front().box.span[main].start, slots.back().box.span[main].end};
    out.box.span[cross] = {variable(), variable()};
    out.size[main] = place_along(group, number, slots, main);
    out.size[cross] = place_across(group, slots, out.box.span[cross], cross);
    if (is_moved) surround(parts, out);
  }

  static Box shifted(const Box& box, const Shift& by) {
    const auto moved = [](const Span& span, Length length) {
      return Span{span.start + Linear(length.ticks()), span.end + Linear(length.ticks())};
    };
    return {{moved(box.span[across], by.right), moved(box.span[down], by.down)}};
  }

  // The group's box is what its parts fill, wherever they lie.
  void surround(const std::vector<Part>& parts, Part& out) {
    for (Axis axis : {across, down}) {
      const Span span{variable(), variable()};
      Model::Extent extent{span, {}, true};
      for (const Part& part : parts) {
        const Span& own = part.box.span[axis];
        require(own.start >= span.start, structure);
        require(own.end <= span.end, structure);
        extent.parts.push_back(own);
      }
      model_.extents.push_back(std::move(extent));
      out.box.span[axis] = span;
      out.size[axis].reset();
    }
  }

  void place_in_ring(const Group& group, std::size_t slot, const std::vector<Part>& parts,
                     Part& out) {
    std::vector<PartSize> sizes;
    for (const Part& part : parts) sizes.push_back(part.size);
    const Length gap = group.gap.value_or(job_.least_bar.value_or(defaults_.gap));
    const RingPlaces places = ring_places(group, sizes, job_.scale.increment, gap);
    model_.rings.push_back({slot, {}, {places.across, places.down}});
    const bool is_known = std::all_of(sizes.begin(), sizes.end(), [](const PartSize& size) {
      return size[across] && size[down];
    });
    if (!is_known) surround(parts, out);
    for (Axis axis : {across, down}) {
      const Linear centre = variable();
      model_.rings.back().centre[axis] = centre;
      Statement ring =
          said(Statement::Kind::ring, group.place, axis == across ? places.across : places.down);
      ring.axis = axis;
      ring.part = out.name;
      const int tag = state(ring);
      for (std::size_t i = 0; i < parts.size(); ++i) {
        const Shift& shift = group.children[i].shift;
        const Length moved = axis == across ? shift.right : shift.down;
        const Span& own = parts[i].box.span[axis];
        const Linear at =
            centre + Linear(solver::Rational(places.parts[i][axis], 2)) + Linear(moved.ticks());
        require(parts[i].size[axis] ? own.start == at : (own.start + own.end) / 2 == at, tag);
      }
      if (is_known) fill_ring(group, places, parts, axis, centre, out);
    }
  }

  // From the first edge to the last one of a ring's parts, whose sizes are known.
  static void fill_ring(const Group& group, const RingPlaces& places,
                        const std::vector<Part>& parts, Axis axis, const Linear& centre,
                        Part& out) {
    std::int64_t first = 0, last = 0;  // halves of a tick
    for (std::size_t i = 0; i < parts.size(); ++i) {
      const Shift& shift = group.children[i].shift;
      const std::int64_t start =
          places.parts[i][axis] + 2 * (axis == across ? shift.right : shift.down).ticks();
      const std::int64_t end = start + 2 * parts[i].size[axis]->ticks();
      first = i == 0 ? start : std::min(first, start);
      last = i == 0 ? end : std::max(last, end);
    }
    out.box.span[axis] = {centre + Linear(solver::Rational(first, 2)),
                          centre + Linear(solver::Rational(last, 2))};
    if ((last - first) % 2 == 0) out.size[axis] = Length::from_ticks((last - first) / 2);
  }

  void place_on_mat(const Group& group, const std::vector<Part>& parts, Part& out) {
    for (std::size_t i = 0; i < parts.size(); ++i) {
      const OnMat& spot = group.children[i].spot;
      for (Axis axis : {across, down}) {
        const Span& own = parts[i].box.span[axis];
        const auto& near = axis == across ? spot.left : spot.top;
        const auto& far = axis == across ? spot.right : spot.bottom;
        const auto measured = [&](const Linear& from_edge, Length length, bool is_far) {
          Statement place = said(Statement::Kind::place, place_of(group.children[i]), length);
          place.axis = axis;
          place.far = is_far;
          place.part = parts[i].name;
          require(from_edge == Linear(length.ticks()), state(place));
        };
        if (near) measured(own.start, *near, false);
        if (far) measured(model_.outer[axis] - own.end, *far, true);
        if (near || far) continue;
        want(own.start + own.end == model_.outer[axis], level::free_place);
      }
    }
    surround(parts, out);
  }

  static Place place_of(const Node& node) {
    return std::visit([](const auto& what) { return what.place; }, node.what);
  }

  // The size of the group where its parts and gaps tell it.
  std::optional<Length> place_along(const Group& group, int number, const std::vector<Part>& parts,
                                    Axis main) {
    int shared_tag = -1;  // of the one gap stated for the whole group
    std::optional<Length> size = parts.front().size[main];
    for (std::size_t i = 0; i + 1 < parts.size(); ++i) {
      const bool is_listed = i < group.gaps.size();
      const Gap gap = is_listed ? group.gaps[i] : Gap{};
      const Linear form = parts[i + 1].box.span[main].start - parts[i].box.span[main].end;
      if (!gap.id.empty()) model_.gaps.emplace(gap.id, form);
      measure(form, gap_size);
      const auto stated = is_listed ? gap.size : group.gap;
      const auto& next = parts[i + 1].size[main];
      size = size && stated && next ? std::optional(*size + *stated + *next) : std::nullopt;
      if (!stated) {
        leave_free(form, main, gap.id, parts[i].reach[main] + parts[i + 1].reach[main]);
        continue;
      }
      if (gap.size || shared_tag < 0) {
        const Place place = gap.size ? gap.place : group.place;
        Statement told = said(Statement::Kind::gap, place, *stated);
        told.group = number;
        if (gap.size != group.gap) told.gap = static_cast<int>(i);
        const int tag = state(adjustable(told));
        if (!gap.size) shared_tag = tag;
        require(form == Linear(stated->ticks()), tag);
      } else {
        require(form == Linear(stated->ticks()), shared_tag);
      }
      if (job_.least_bar && *stated < *job_.least_bar) state_least_bar(form);
    }
    return size;
  }

  void leave_free(const Linear& gap, Axis main, const std::string& id, Length reach) {
    free_gaps_[main].push_back(gap);
    if (job_.least_bar || (!id.empty() && is_fixed(job_, id))) {
      state_least_bar(gap);
    } else {
      hold(gap, Statement::Kind::held_bar, least_held_bar(job_, reach));
    }
    want(gap >= Linear(defaults_.gap.ticks()), level::least_gap);
    want(gap == Linear(defaults_.gap.ticks()), level::default_gap);
  }

  // Narrower could not be cut and held.
  void hold(const Linear& size, Statement::Kind kind, Length least) {
    const auto [tag, is_new] = held_tags_.try_emplace({kind, least}, 0);
    if (is_new) tag->second = state(said(kind, {}, least));
    at_least(size, least, tag->second);
  }

  void state_least_bar(const Linear& size) {
    const Length least = job_.least_bar.value_or(Length());
    if (least_bar_tag_ < 0 && job_.least_bar) {
      least_bar_tag_ = state(adjustable(said(Statement::Kind::least_bar, {}, least)));
    }
    at_least(size, least, job_.least_bar ? least_bar_tag_ : structure);
  }

  // The largest part fills the group. Where it is known which one that is, that is required at
  // once; else it is left to the solution.
  std::optional<Length> place_across(const Group& group, const std::vector<Part>& parts,
                                     const Span& span, Axis cross) {
    std::optional<Length> largest = parts.front().size[cross];
    for (const Part& part : parts) {
      const auto& size = part.size[cross];
      largest = largest && size ? std::optional(std::max(*largest, *size)) : std::nullopt;
    }
    Model::Extent extent{span, {}};
    extent.is_hull = std::any_of(parts.begin(), parts.end(), [&](const Part& part) {
      return is_placed_by_rule(job_, part.ids, cross);
    });
    if (extent.is_hull) {
      largest.reset();
    }
    for (const Part& part : parts) {
      const Span& own = part.box.span[cross];
      if (largest && part.size[cross] == largest) {
        require(own.start == span.start, structure);
        require(own.end == span.end, structure);
        continue;
      }
      Statement alignment = said(Statement::Kind::alignment, group.place);
      alignment.axis = group.along == Along::row ? across : down;
      alignment.part = part.name;
      align(group.align, own, span, state(alignment));
      if (!largest) want(own.size() == span.size(), level::fill);
      extent.parts.push_back(own);
    }
    if (!largest) model_.extents.push_back(std::move(extent));
    return largest;
  }

  // A part of a group, in the direction across the group.
  void align(Align align, const Span& part, const Span& group, int tag) {
    require(part.start >= group.start, structure);
    require(part.end <= group.end, structure);
    if (align == Align::start || align == Align::stretch) {
      want(part.start == group.start, level::symmetry, tag);
    }
    if (align == Align::end || align == Align::stretch) {
      want(part.end == group.end, level::symmetry, tag);
    }
    if (align == Align::centre) {
      want(part.start + part.end == group.start + group.end, level::symmetry, tag);
    }
  }

  void state_outer(Axis axis) {
    const auto& stated = axis == across ? job_.outer_width : job_.outer_height;
    if (!stated && !job_.frame) return;
    Statement size = said(Statement::Kind::outer, job_.outer_place, stated.value_or(Length()));
    if (!stated) {
      const Frame& frame = *job_.frame;
      const Length rabbet = axis == across ? frame.rabbet_width : frame.rabbet_height;
      size = said(Statement::Kind::frame, frame.place, rabbet - frame.allowance);
    }
    size.axis = axis;
    require(model_.outer[axis] == Linear(size.value.ticks()), state(adjustable(size)));
  }

  void state_border(Axis axis, bool far, const std::optional<Length>& stated) {
    if (!stated) return;
    Statement border = said(Statement::Kind::border, job_.borders.place, *stated);
    border.axis = axis;
    border.far = far;
    const Span& span = model_.border[axis];
    require((far ? span.end : span.start) == Linear(stated->ticks()), state(adjustable(border)));
  }

  void state_borders() {
    const Borders& borders = job_.borders;
    const Linear& left = model_.border[across].start;
    const Linear& right = model_.border[across].end;
    const Linear& top = model_.border[down].start;
    const Linear& bottom = model_.border[down].end;
    state_border(across, false, borders.left);
    state_border(across, true, borders.right);
    state_border(down, false, borders.top);
    state_border(down, true, borders.bottom_size);
    if (borders.least) {
      const int tag =
          state(adjustable(said(Statement::Kind::least_border, borders.place, *borders.least)));
      for (const Linear* border : {&left, &right, &top, &bottom}) {
        at_least(*border, *borders.least, tag);
      }
    }
    hold_border(across, left, borders.left, "border.left");
    hold_border(across, right, borders.right, "border.right");
    hold_border(down, top, borders.top, "border.top");
    hold_border(down, bottom, borders.bottom_size, "border.bottom");
    want(right == left, level::symmetry, balance(Statement::Kind::side_borders));
    state_bottom(top, bottom);
    want(left == top, level::equal_borders);
    want(right == top, level::equal_borders);
    for (const Linear* border : {&left, &right, &top}) {
      want(*border == Linear(defaults_.border.ticks()), level::default_border);
    }
  }

  void hold_border(Axis axis, const Linear& border, const std::optional<Length>& stated,
                   const char* name) {
    if (stated || is_fixed(job_, name)) return;
    if (!job_.borders.least) {
      hold(border, Statement::Kind::held_border, least_held_border(job_, reach_[axis]));
    }
    const bool outer_is_free =
        !(axis == across ? job_.outer_width : job_.outer_height) && !job_.frame;
    if (outer_is_free) want(border >= Linear(defaults_.border.ticks()), level::default_gap);
  }

  // What a preference keeps alike, so that a message can name it when it could not.
  int balance(Statement::Kind what, Length value = {}) {
    Statement statement = said(what, job_.borders.place, value);
    statement.gives_way = true;
    return state(statement);
  }

  void state_bottom(const Linear& top, const Linear& bottom) {
    const Borders& borders = job_.borders;
    switch (borders.bottom) {
      case Borders::Bottom::given:
        return;
      case Borders::Bottom::equal:
        want(bottom == top, level::symmetry, balance(Statement::Kind::end_borders));
        return;
      case Borders::Bottom::extra:
        require(bottom == top + Linear(borders.extra.ticks()),
                balance(Statement::Kind::wider_bottom, borders.extra));
        return;
      case Borders::Bottom::ratio: {
        const solver::Rational ratio(borders.ratio_numerator, borders.ratio_denominator);
        require(bottom == top * ratio, balance(Statement::Kind::bottom_times));
        return;
      }
      case Borders::Bottom::optical:
        want(bottom == top * defaults_.optical_ratio, level::symmetry,
             balance(Statement::Kind::optical_border));
        return;
    }
  }

  // All equal to each other, as a preference that treats every pair alike: each equals the mean.
  // The mean's variable, where there are several.
  std::optional<int> prefer_equal(const std::vector<Linear>& forms, int level) {
    if (forms.size() < 2) return std::nullopt;
    const Linear mean = variable();
    for (const Linear& form : forms) want(form == mean, level);
    return mean.terms().front().variable;
  }

  void measure(const Linear& form, Rank rank) { model_.measures.push_back({form, rank}); }

  void list_measures() {
    for (const NamedBox& opening : model_.openings) {
      for (Axis axis : {across, down}) measure(opening.box.span[axis].start, position);
    }
    for (Axis axis : {across, down}) {
      measure(model_.outer[axis], outer_size);
      measure(model_.border[axis].start, near_border);
    }
    measure(model_.border[across].end, far_side_border);
    measure(model_.border[down].end, bottom_border);
  }

  const Job& job_;
  const Defaults& defaults_;
  Model model_;
  std::array<std::vector<Linear>, 2> free_gaps_, free_sizes_;
  std::array<Length, 2> reach_;  // of the pictures beyond their openings, at most
  int least_bar_tag_ = -1;
  std::map<std::pair<Statement::Kind, Length>, int> held_tags_;
};

}  // namespace

Model build_model(const Job& job, const Defaults& defaults) {
  Model model = Builder(job, defaults).build();
  add_rules(model, job);
  return model;
}

}  // namespace mullion::layout
