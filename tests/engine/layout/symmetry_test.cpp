// A job three times as large, seen in a mirror, or with its rules in another order has the layout
// that one expects: on thousands of random jobs.

#include <algorithm>
#include <catch2/catch.hpp>
#include <set>

#include "engine/layout/arrangement.h"
#include "engine/layout/layout.h"
#include "tests/engine/layout/advice.h"
#include "tests/engine/layout/changed_job.h"
#include "tests/engine/layout/jobs.h"
#include "tests/engine/layout/wild_job.h"
#include "tests/how_many.h"

using namespace mullion;
using layout::across;
using layout::down;

namespace {

layout::Model model_of(const Job& job) {
  return layout::build_model(job, {inches(2), inches(1), solver::Rational(1)});
}

// Where the opening's edges are, before sizes come to the increment.
struct Edges {
  solver::Rational start, end, outer;
};

Edges edges_of(const layout::Arrangement& arrangement, const std::string& id, layout::Axis axis) {
  const layout::Span& span = layout::find_box(arrangement.model, id)->box.span[axis];
  const auto value = [&](const solver::Linear& form) { return arrangement.solution.value(form); };
  return {value(span.start), value(span.end), value(arrangement.model.outer[axis])};
}

void check_mirrored(const layout::Arrangement& plain, const layout::Arrangement& mirrored,
                    const std::string& id, layout::Axis mirror_axis) {
  for (const layout::Axis axis : {across, down}) {
    const Edges one = edges_of(plain, id, axis), other = edges_of(mirrored, id, axis);
    CHECK(one.outer == other.outer);
    CHECK(other.start == (axis == mirror_axis ? one.outer - one.end : one.start));
    CHECK(other.end == (axis == mirror_axis ? one.outer - one.start : one.end));
  }
}

const Rect& rect_of(const Layout& layout, const std::string& id) {
  return std::find_if(layout.openings.begin(), layout.openings.end(),
                      [&](const PlacedOpening& opening) { return opening.id == id; })
      ->rect;
}

// The bottom border has words of its own ("wider than the top one"), which no mirror reverses, and
// "p0.left" is measured from the left edge in the mirror too.
bool has_mirror_image(const Job& job, layout::Axis axis) {
  const auto is_side_of_part = [](const std::string& name) {
    return name[0] == 'p' && (name.ends_with(".left") || name.ends_with(".bottom"));
  };
  for (const Rule& rule : job.rules) {
    if (std::any_of(rule.of.begin(), rule.of.end(), is_side_of_part)) return false;
  }
  // The side borders are to be like the top one, not like the bottom one.
  return axis == across || (job.borders.bottom == Borders::Bottom::equal && job.rules.empty()) ||
         (job.borders.bottom == Borders::Bottom::given && job.borders.top);
}

// Required halves and thirds, which no tick may meet.
bool asks_for_fractions(const Job& job) {
  return job.borders.bottom == Borders::Bottom::ratio ||
         std::any_of(job.rules.begin(), job.rules.end(), [](const Rule& rule) {
           return rule.strength == Strength::required &&
                  (rule.kind == Rule::Kind::multiple || rule.kind == Rule::Kind::centred);
         });
}

}  // namespace

TEST_CASE("a job seen in a mirror has the arrangement seen in the mirror") {
  const int jobs = test::how_many(800, 3200);
  std::mt19937 random(71);
  int compared = 0, openings = 0, mirrored_to_the_tick = 0;
  for (int i = 0; i < jobs; ++i) {
    const test::WildJob wild = test::wild_job(random, 5);
    const layout::Axis axis = i % 2 == 0 ? across : down;
    INFO(wild.attributes << wild.lines);
    Job job = wild.job();
    if (!has_mirror_image(job, axis)) continue;
    Job image = job;
    test::mirror(image, axis);
    const auto plain = layout::arrange(model_of(job));
    const auto mirrored = layout::arrange(model_of(image));
    REQUIRE(plain.has_value() == mirrored.has_value());
    if (!plain) continue;
    ++compared;
    const Layout laid = lay_out(job).value(), laid_image = lay_out(image).value();
    for (const Opening* opening : test::openings_of(job.arrangement)) {
      check_mirrored(*plain, *mirrored, opening->id, axis);
      const Rect a = rect_of(laid, opening->id), b = rect_of(laid_image, opening->id);
      const Length off =
          axis == across ? laid.width - a.right - b.left : laid.height - a.bottom - b.top;
      // Halves of a step go to the right and the bottom, in the mirror too: so every equal gap
      // before the opening may be a step wider in the one.
      const auto gaps = static_cast<std::int64_t>(laid.openings.size()) - 1;
      CHECK(std::abs(off.ticks()) <= (gaps + 2) * job.scale.increment.ticks());
      if (off == Length()) ++mirrored_to_the_tick;
      ++openings;
    }
  }
  CHECK(compared > jobs / 4);
  CHECK(mirrored_to_the_tick > openings * 6 / 10);
}

TEST_CASE("a job of which every length is three times as large has a layout as much larger") {
  const int jobs = test::how_many(500, 2000);
  std::mt19937 random(73);
  int laid = 0;
  for (int i = 0; i < jobs; ++i) {
    const test::WildJob wild = test::wild_job(random, 5);
    INFO(wild.attributes << wild.lines);
    Job job = wild.job();
    if (asks_for_fractions(job)) continue;
    test::state_all(job);
    Job large = job;
    test::scale(large, 3);
    const auto layout = lay_out(job), large_layout = lay_out(large);
    REQUIRE(layout.has_value() == large_layout.has_value());
    if (!layout) continue;
    ++laid;
    CHECK(large_layout->width == layout->width * 3);
    CHECK(large_layout->height == layout->height * 3);
    for (std::size_t k = 0; k < layout->openings.size(); ++k) {
      const Rect& rect = layout->openings[k].rect;
      CHECK(large_layout->openings[k].rect ==
            Rect{rect.left * 3, rect.top * 3, rect.right * 3, rect.bottom * 3});
    }
  }
  CHECK(laid > jobs * 2 / 5);
}

namespace {

// The statements of all conflicts, whatever their order.
std::multiset<std::string> parts_of(const Problems& problems) {
  std::multiset<std::string> out;
  for (const auto& conflict : test::told_conflicts(problems)) {
    for (const auto& part : conflict.parts) out.insert(part.text);
  }
  return out;
}

}  // namespace

TEST_CASE(
    "the order of a job's rules changes neither the layout of random jobs nor their conflict") {
  const int jobs = test::how_many(500, 2000);
  std::mt19937 random(79);
  int laid = 0, refused = 0;
  while (laid + refused < jobs) {
    const test::WildJob wild = test::wild_job(random, 4);
    Job job = wild.job();
    if (job.rules.size() < 2) continue;
    INFO(wild.attributes << wild.lines);
    const auto first = lay_out(job);
    std::shuffle(job.rules.begin(), job.rules.end(), random);
    const auto second = lay_out(job);
    REQUIRE(first.has_value() == second.has_value());
    ++(first ? laid : refused);
    if (!first) {
      CHECK(parts_of(first.error()) == parts_of(second.error()));
      continue;
    }
    CHECK(first->borders == second->borders);
    for (std::size_t k = 0; k < first->openings.size(); ++k) {
      CHECK(first->openings[k].rect == second->openings[k].rect);
    }
  }
  CHECK(laid > jobs * 3 / 10);
  CHECK(refused > jobs / 5);
}
