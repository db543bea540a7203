#include <algorithm>
#include <map>
#include <optional>

#include "engine/job/usual.h"
#include "engine/layout/arrangement.h"
#include "engine/layout/conflict.h"
#include "engine/layout/crowding.h"
#include "engine/layout/layout.h"
#include "engine/layout/snapping.h"
#include "engine/layout/told_conflict.h"
#include "engine/layout/words.h"

namespace mullion {
namespace {

using namespace layout;

bool is_small_board(const Job& job, const solver::Rational& width, const solver::Rational& height) {
  const Usual& usual = usual_for(job.scale.unit);
  const auto& [shorter, longer] = std::minmax(width, height);
  return shorter <= usual.small_board_short.ticks() && longer <= usual.small_board_long.ticks();
}

bool is_on_small_board(const Job& job, const Arrangement& arrangement) {
  return is_small_board(job, arrangement.solution.value(arrangement.model.outer[across]),
                        arrangement.solution.value(arrangement.model.outer[down]));
}

bool may_be_on_small_board(const Job& job, const Model& model) {
  return is_small_board(job, model.least_outer[across].ticks(), model.least_outer[down].ticks());
}

bool borders_may_follow_the_board(const Job& job) {
  const bool free_width =
      !job.outer_width && !job.frame && !(job.borders.left && job.borders.right);
  const bool free_height = !job.outer_height && !job.frame && !job.borders.top;
  return free_width || free_height;
}

// The optical-centre construction (mmresourcecenter.org/matting.html): for a picture w x h on a
// board W x H, top border = (H - h)(W + w) / 4W, so bottom / top = (3W - w) / (W + w).
solver::Rational optical_ratio(const Arrangement& arrangement) {
  const Span& border = arrangement.model.border[across];
  const solver::Linear& outer = arrangement.model.outer[across];
  const solver::Rational board = arrangement.solution.value(outer);
  const solver::Rational picture = arrangement.solution.value(outer - border.start - border.end);
  return (solver::Rational(3) * board - picture) / (board + picture);
}

using Arranged = tl::expected<Arrangement, Refusal>;

// With the border that goes with the size of the board, which is left in `defaults`.
Arranged arrange_with_border(const Job& job, Defaults& defaults, const std::vector<int>& look_at) {
  const Usual& usual = usual_for(job.scale.unit);
  defaults.border = usual.small_border;
  if (!borders_may_follow_the_board(job)) return arrange(build_model(job, defaults), look_at);
  defaults.border = usual.large_border;
  Model on_large_board = build_model(job, defaults);
  if (!may_be_on_small_board(job, on_large_board)) {
    return arrange(std::move(on_large_board), look_at);
  }
  defaults.border = usual.small_border;
  auto out = arrange(build_model(job, defaults), look_at);
  if (!out || is_on_small_board(job, *out)) return out;
  defaults.border = usual.large_border;
  return arrange(std::move(on_large_board), out->solution.looked_at);
}

Arranged arrange_with_defaults(const Job& job, const std::vector<int>& look_at) {
  const Usual& usual = usual_for(job.scale.unit);
  Defaults defaults{usual.small_border, usual.gap};
  auto out = arrange_with_border(job, defaults, look_at);
  if (!out || job.borders.bottom != Borders::Bottom::optical) return out;
  defaults.optical_ratio = optical_ratio(*out);
  return arrange(build_model(job, defaults), out->solution.looked_at);
}

// To the nearest tick. Only rules that no whole number of ticks can satisfy leave anything to
// round; since edges are rounded, not sizes, the parts still add up.
Length whole(const Values& values, const solver::Linear& form) {
  return Length::from_ticks((values.value(form) + solver::Rational(1, 2)).floor().to_int64());
}

Rect rect_of(const Values& values, const Box& box) {
  return {whole(values, box.span[across].start), whole(values, box.span[down].start),
          whole(values, box.span[across].end), whole(values, box.span[down].end)};
}

Layout read_layout(const Model& model, const Values& values) {
  Layout out;
  out.width = whole(values, model.outer[across]);
  out.height = whole(values, model.outer[down]);
  int number = 0;
  for (const NamedBox& opening : model.openings) {
    out.openings.push_back({++number, opening.id, rect_of(values, opening.box)});
  }
  for (const NamedBox& group : model.groups) {
    out.groups.push_back({group.id, rect_of(values, group.box), group.openings});
  }
  for (const Model::RingOf& ring : model.rings) {
    const auto down_to_tick = [&](Axis axis) {
      return Length::from_ticks(values.value(ring.centre[axis]).floor().to_int64());
    };
    out.groups[ring.group].ring =
        PlacedRing{down_to_tick(across), down_to_tick(down), ring.size[across], ring.size[down]};
  }
  const auto last_edge = [&](Axis axis) {
    return whole(values, model.outer[axis] - model.border[axis].end);
  };
  out.borders = {whole(values, model.border[across].start), whole(values, model.border[down].start),
                 out.width - last_edge(across), out.height - last_edge(down)};
  return out;
}

// What a wish gave way to: the required statements with which it cannot hold.
std::vector<Statement> stronger_than(const Model& model, int tag) {
  solver::System system;
  for (int v = 0; v < model.system.variable_count(); ++v) system.add_variable();
  std::vector<int> tags;
  for (solver::Constraint rule : model.system.constraints()) {
    if (rule.level != level::required && rule.tag != tag) continue;
    rule.level = level::required;
    tags.push_back(rule.tag);
    system.add(std::move(rule));
  }
  std::vector<Statement> out;
  const auto solution = solver::solve(system);
  if (solution) return out;
  for (const auto& part : solution.error().parts) {
    const int other = tags[static_cast<std::size_t>(part.constraint)];
    if (other > 0 && other != tag) out.push_back(model.statements[static_cast<std::size_t>(other)]);
  }
  return out;
}

// Rules of the job that are wishes and do not hold. For large jobs without what they gave way to.
void tell_wishes(const Job& job, const Arrangement& arrangement, std::vector<LayoutNote>& notes) {
  constexpr std::size_t most_explained = 8;
  constexpr int large = 1'000;  // variables
  const Model& model = arrangement.model;
  std::map<int, solver::Rational> off;  // by tag
  for (const solver::Constraint& rule : model.system.constraints()) {
    if (rule.level == level::required || rule.tag <= 0) continue;
    const Statement& what = model.statements[static_cast<std::size_t>(rule.tag)];
    if (what.kind != Statement::Kind::rule) continue;
    const solver::Rational amount = abs(violation(rule, arrangement.solution.value(rule.form)));
    if (amount > off[rule.tag]) off[rule.tag] = amount;
  }
  std::size_t explained = 0;
  for (const auto& [tag, amount] : off) {
    const Length by = Length::from_ticks(amount.floor().to_int64());
    if (by < job.scale.increment) continue;
    const bool is_explained =
        model.system.variable_count() <= large && explained++ < most_explained;
    notes.push_back(GaveWay{model.statements[static_cast<std::size_t>(tag)], by,
                            is_explained ? stronger_than(model, tag) : std::vector<Statement>()});
  }
}

Layout read(const Job& job, const Arrangement& arrangement) {
  const Snapping snapping = snap_to_increment(job, arrangement.model, arrangement.solution);
  Layout out = read_layout(arrangement.model, snapping.values);
  out.on_increment = snapping.on_increment;
  out.notes = snapping.notes;
  tell_wishes(job, arrangement, out.notes);
  return out;
}

}  // namespace

Result<Layout> lay_out(const Job& job, const Locale& locale) {
  return OpenJob().lay_out(job, locale);
}

std::vector<ToldConflict> conflicts_of(const Job& job, const Locale& locale) {
  const auto arrangement = arrange_with_defaults(job, {});
  if (arrangement) return {};
  return conflicts_of(job, arrangement.error().model, arrangement.error().conflict, locale);
}

Problems told_notes(const Layout& layout, const Job& job, const Locale& locale) {
  Problems out = job.remarks;
  for (const LayoutNote& note : layout.notes) {
    const auto* off = std::get_if<OffBy>(&note);
    const auto* wish = std::get_if<GaveWay>(&note);
    const Place place = off != nullptr    ? off->what.place
                        : wish != nullptr ? wish->what.place
                                          : Place{};
    out.push_back({Severity::note, wish != nullptr ? "layout-gave-way" : "layout-moved",
                   sentence_of(note, job, locale), place, job.file});
  }
  return out;
}

std::optional<Layout> laid_out(const Job& job) {
  const auto arrangement = arrange_with_defaults(job, {});
  if (!arrangement) return std::nullopt;
  Layout layout = read(job, *arrangement);
  if (!crowded(job, layout).empty()) return std::nullopt;
  return layout;
}

Result<Layout> OpenJob::lay_out(const Job& job, const Locale& locale) {
  const auto arrangement = arrange_with_defaults(job, look_at_);
  if (!arrangement) {
    const auto& [model, conflict] = arrangement.error();
    return tl::unexpected(describe_conflict(job, model, conflict, locale));
  }
  look_at_ = arrangement->solution.looked_at;
  Layout layout = read(job, *arrangement);
  const std::vector<Crowded> near = crowded(job, layout);
  if (!near.empty()) return tl::unexpected(told_crowding(near, job, layout, locale));
  return layout;
}

}  // namespace mullion
