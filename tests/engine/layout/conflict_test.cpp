// What cannot be had together is told with its sum and with a change that makes it fit: in
// sentences for the kinds of conflict that a framer makes, and on random jobs whose advice is
// followed.

#include <catch2/catch.hpp>

#include "engine/layout/arrangement.h"
#include "tests/engine/layout/advice.h"
#include "tests/engine/layout/jobs.h"
#include "tests/engine/layout/wild_job.h"
#include "tests/oracle/linear_program.h"

using namespace mullion;

namespace {

// The conflicts of a job with two pictures, 9 x 6 and 9 x 8 in the job's unit, under one mat.
std::vector<std::string> told(const std::string& lines,
                              const std::string& attributes = R"(unit="in" increment="1/16")") {
  const auto layout = lay_out(test::job_of(R"(
    <pictures>
      <picture id="a" width="9" height="6" overlap="0"/>
      <picture id="b" width="9" height="8" overlap="0"/>
    </pictures>
    <layers><layer board="Oat"/></layers>)" + lines,
                                           attributes));
  std::vector<std::string> out;
  if (layout) return out;
  for (const auto& conflict : test::told_conflicts(layout.error())) out.push_back(conflict.message);
  return out;
}

using Told = std::vector<std::string>;

const std::string row =
    R"(<arrange><row gap="1"><opening picture="a"/><opening picture="b"/></row></arrange>)";
const std::string column =
    R"(<arrange><column gap="1"><opening picture="a"/><opening picture="b"/></column></arrange>)";
const std::string free_row =
    R"(<arrange><row><opening picture="a"/><gap id="g"/><opening picture="b"/></row></arrange>)";

}  // namespace

TEST_CASE("conflict: too little width for pictures, gap and borders") {
  CHECK(told(R"(<outer width="22"/><borders sides="3"/>)" + row) ==
        Told{"borders 3 + 3, two openings of 9 and a gap of 1 need 25 in; the outer width is 22 "
             "in: 3 in short; an outer width of 25 in or left and right borders of 1 1/2 in would "
             "fit"});
  CHECK(told(R"(<outer width="22"/><borders left="3" right="2"/>)" + row) ==
        Told{"borders 3 + 2, two openings of 9 and a gap of 1 need 24 in; the outer width is 22 "
             "in: 2 in short; an outer width of 24 in or a left border of 1 in would fit"});
}

TEST_CASE("conflict: borders on all sides of a given frame, told for width and height") {
  CHECK(told(R"(<frame rabbet-width="20 1/8" rabbet-height="16 1/8"/><borders all="3"/>)" + row) ==
        Told{"borders 3 + 3, two openings of 9 and a gap of 1 need 25 in; the outer width (the "
             "frame's rabbet of 20 1/8 in less 1/8 in) is 20 in: 5 in short; a rabbet width of 25 "
             "1/8 in or left and right borders of 1/2 in would fit",
             "borders 3 + 3 and an opening of 8 come to 14 in; the outer height (the frame's "
             "rabbet of 16 1/8 in less 1/8 in) is 16 in: 2 in too much; a rabbet height of 14 1/8 "
             "in or top and bottom borders of 4 in would fit"});
}

TEST_CASE("conflict: pictures alone are wider than the mat") {
  CHECK(told(R"(<outer width="12"/>)" + row) ==
        Told{"two openings of 9, a gap of 1 and two holding borders of at least 1/8 in need 19 1/4 "
             "in; the outer width is 12 in: 7 1/4 in short; an outer width of 19 1/4 in would "
             "fit"});
  CHECK(told(R"(<outer height="7"/><arrange><opening picture="b"/></arrange>)") ==
        Told{"an opening of 8 and two holding borders of at least 1/8 in need 8 1/4 in; the outer "
             "height is 7 in: 1 1/4 in short; an outer height of 8 1/4 in would fit"});
}

TEST_CASE("conflict: a gap against the width of its row") {
  CHECK(told(R"(<arrange><row id="r" gap="1"><opening picture="a"/><opening picture="b"/></row>
      </arrange><rules><fixed measure="r.width" length="20"/></rules>)") ==
        Told{"these cannot all hold: opening \"a\" 9 in wide, opening \"b\" 9 in wide, r.width at "
             "20 in and a gap of 1 in; they miss by 1 in; a gap of 2 in or r.width at 19 in would "
             "fit"});
}

TEST_CASE("conflict: a stated gap narrower than the least bar") {
  CHECK(told(R"(<arrange least-bar="1 1/2"><row gap="1"><opening picture="a"/>
      <opening picture="b"/></row></arrange>)") ==
        Told{"these cannot all hold: a bar of at least 1 1/2 in and a gap of 1 in; they miss by "
             "1/2 in; a gap of 1 1/2 in or bars of at least 1 in would fit"});
}

TEST_CASE("conflict: least bars and borders in a small mat") {
  CHECK(told(R"(<outer width="20"/><borders all="1"/><arrange least-bar="1 1/4"><row>
      <opening picture="a"/><opening picture="b"/></row></arrange>)") ==
        Told{"borders 1 + 1, two openings of 9 and a bar of at least 1 1/4 in need 21 1/4 in; the "
             "outer width is 20 in: 1 1/4 in short; an outer width of 21 1/4 in or left and right "
             "borders of 3/8 in would fit"});
}

TEST_CASE("conflict: a weighted bottom with the top and the height given") {
  CHECK(told(R"(<outer height="14"/><borders top="3" bottom-extra="1/2"/>)" + row) ==
        Told{"borders 3 + 3, an opening of 8 and the bottom border 1/2 in wider than the top one "
             "need 14 1/2 in; the outer height is 14 in: 1/2 in short; an outer height of 14 1/2 "
             "in or a top border of 2 3/4 in would fit"});
  CHECK(told(R"(<outer height="11"/><borders least="2" bottom-ratio="5/4"/>)" + row) ==
        Told{"an opening of 8 and two borders of at least 2 in need 12 in; the outer height is 11 "
             "in: 1 in short; an outer height of 12 1/2 in or borders of at least 1 5/16 in would "
             "fit"});
}

TEST_CASE("conflict: two rules that make unequal what a third makes equal") {
  CHECK(told(free_row + R"(<rules><equal of="border.left border.right"/>
      <fixed measure="border.left" length="2"/><fixed measure="border.right" length="3"/></rules>)") ==
        Told{"these cannot all hold: equal border.left and border.right, border.left at 2 in and "
             "border.right at 3 in; they miss by 1 in; border.left at 3 in or border.right at 2 in "
             "would fit"});
}

TEST_CASE("conflict: rules that no number mends, of which one has to go") {
  CHECK(told(row + R"(<rules><same-size of="a b"/></rules>)") ==
        Told{"these cannot all hold: opening \"a\" 6 in high, opening \"b\" 8 in high and the same "
             "size of a and b; they miss by 2 in; leaving out \"the same size of a and b\" would "
             "fit"});
  CHECK(
      told(row + R"(<rules><align of="a b" edge="top"/><align of="a b" edge="bottom"/></rules>)") ==
      Told{"these cannot all hold: opening \"a\" 6 in high, opening \"b\" 8 in high, the top of "
           "a and b in one line and the bottom of a and b in one line; they miss by 2 in; leaving "
           "out \"the top of a and b in one line\" or leaving out \"the bottom of a and b in one "
           "line\" would fit"});
}

TEST_CASE("conflict: limits on one measure, and on named measures") {
  CHECK(told(free_row + R"(<rules><at-least measure="g" length="3"/>
      <at-most measure="g" length="2"/></rules>)") ==
        Told{"these cannot all hold: g at least 3 in and g at most 2 in; they miss by 1 in; g at "
             "least 2 in or g at most 3 in would fit"});
  CHECK(told(free_row + R"(<rules><fixed measure="a.left" length="2"/>
      <at-least measure="b.right" length="23"/><at-most measure="g" length="2"/></rules>)") ==
        Told{"these cannot all hold: opening \"a\" 9 in wide, opening \"b\" 9 in wide, a.left at 2 "
             "in, b.right at least 23 in and g at most 2 in; they miss by 1 in; a.left at 3 in, "
             "b.right at least 22 in or g at most 3 in would fit"});
}

TEST_CASE("conflict: a centred picture and a border that puts it elsewhere") {
  CHECK(told(R"(<outer width="30"/>)" + free_row + R"(<rules>
      <centred what="a" on="mat" direction="across"/><fixed measure="border.left" length="6"/>
      </rules>)") ==
        Told{"these cannot all hold: opening \"a\" 9 in wide, the outer width of 30 in, a centred "
             "on mat and border.left at 6 in; they miss by 9 in; border.left at 10 1/2 in would "
             "fit"});
}

TEST_CASE("conflict: more room than everything stated takes") {
  CHECK(told(R"(<outer width="24" height="20"/><borders all="3"/>)" + column) ==
        Told{"borders 3 + 3 and an opening of 9 come to 15 in; the outer width is 24 in: 9 in too "
             "much; an outer width of 15 in or left and right borders of 7 1/2 in would fit",
             "borders 3 + 3, an opening of 8, an opening of 6 and a gap of 1 need 21 in; the outer "
             "height is 20 in: 1 in short; an outer height of 21 in or top and bottom borders of 2 "
             "1/2 in would fit"});
}

TEST_CASE("conflict: millimetres, and numbers between the steps of the rule") {
  CHECK(
      told(R"(<outer width="50 mm"/><borders all="76"/>)" + row, R"(unit="mm" increment="1")") ==
      Told{"borders 76 + 76, two openings of 9 and a gap of 1 need 171 mm; the outer width is 50 "
           "mm: 121 mm short; an outer width of 171 mm or left and right borders of 15.5 mm would "
           "settle this, but other numbers do not fit either; with borders and gaps left free "
           "and without the rules an outer size of 143 mm x 108 mm passes"});
  CHECK(told(R"(<outer width="22.3"/><borders sides="3"/>)" + row) ==
        Told{"borders 3 + 3, two openings of 9 and a gap of 1 need 25 in; the outer width is 22.3 "
             "in: 2.7 in short; an outer width of 25 in or left and right borders of 1.65 in would "
             "fit"});
}

TEST_CASE("conflict: where one change does not suffice that is said, and the other conflict told") {
  CHECK(told(free_row + R"(<rules>
      <fixed measure="g" length="2"/><fixed measure="g" length="3"/>
      <fixed measure="border.left" length="1"/><fixed measure="border.left" length="4"/></rules>)") ==
        Told{"these cannot all hold: border.left at 1 in and border.left at 4 in; they miss by 3 "
             "in; border.left at 4 in or border.left at 1 in would settle this, but other numbers "
             "do not fit either; without the rules an outer size of 25 in x 14 in passes",
             "these cannot all hold: g at 2 in and g at 3 in; they miss by 1 in; g at 3 in or g at "
             "2 in would settle this, but other numbers do not fit either; without the rules an "
             "outer size of 25 in x 14 in passes"});
}

TEST_CASE(
    "sums of random jobs that do not fit add up as printed, and advice that is followed makes the "
    "jobs fit") {
  std::mt19937 random(211);
  int advised = 0, without_advice = 0, unfit = 0, followed = 0, sums = 0;
  for (int i = 0; i < 750; ++i) {
    const test::WildJob wild = test::wild_job(random, 6);
    const Job job = wild.job();
    const auto layout = lay_out(job);
    if (layout) continue;
    const auto conflicts = test::told_conflicts(layout.error());
    INFO(wild.attributes << wild.lines);
    std::string messages;
    for (const auto& conflict : conflicts) messages += conflict.message + "\n";
    INFO(messages);
    for (const auto& conflict : conflicts) {
      const auto sum = test::check_sum(conflict.message, job.scale.unit);
      CHECK(sum.fault == "");
      if (sum.is_sum) ++sums;
    }
    const bool is_advised = std::none_of(conflicts.begin(), conflicts.end(),
                                         [](const auto& told) { return ways_in(told).empty(); });
    ++(is_advised ? advised : without_advice);
    for (std::size_t turn = 0; is_advised && turn < 4; ++turn) {
      std::vector<Job> changed{job};
      for (const auto& conflict : conflicts) {
        const auto ways = ways_in(conflict);
        const std::string& way = ways[std::min(turn, ways.size() - 1)];
        INFO(way);
        std::vector<Job> next;
        for (const Job& one : changed) {
          const auto after = test::followed(one, conflict, way);
          next.insert(next.end(), after.begin(), after.end());
        }
        // A rule for both directions may have been left out already.
        if (next.empty() && way.starts_with("leaving out")) continue;
        REQUIRE(!next.empty());
        changed = std::move(next);
      }
      ++followed;
      const bool fits = std::any_of(changed.begin(), changed.end(),
                                    [](const Job& one) { return lay_out(one).has_value(); });
      if (!fits) ++unfit;
    }
  }
  CHECK(sums > 100);
  CHECK(advised > 200);
  CHECK(without_advice < advised / 4);
  // A group has to be filled by its largest part, which only a layout can tell: so once the height
  // fits, another conflict may come to light in the width.
  CHECK(unfit * 50 < followed);
}

TEST_CASE("GLPK too finds the rules of a job's conflict infeasible, and feasible without any one") {
  std::mt19937 random(227);
  int conflicts = 0;
  for (int i = 0; i < 600; ++i) {
    const test::WildJob wild = test::wild_job(random, 6);
    INFO(wild.attributes << wild.lines);
    const auto model = layout::build_model(wild.job(), {inches(2), inches(1), solver::Rational(1)});
    const auto solution = solver::solve(model.system);
    if (solution) continue;
    ++conflicts;
    const auto& parts = solution.error().parts;
    for (std::size_t left_out = 0; left_out <= parts.size(); ++left_out) {
      solver::System some;
      for (int v = 0; v < model.system.variable_count(); ++v) some.add_variable();
      for (std::size_t p = 0; p < parts.size(); ++p) {
        const auto number = static_cast<std::size_t>(parts[p].constraint);
        if (p != left_out) some.add(model.system.constraints()[number]);
      }
      CHECK(oracle::is_feasible(some, oracle::Code::glpk) == (left_out < parts.size()));
    }
  }
  CHECK(conflicts > 150);
}
