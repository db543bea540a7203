#include <catch2/catch.hpp>
#include <map>
#include <nlohmann/json.hpp>
#include <set>

#include "engine/cuts/plan/order.h"
#include "engine/cuts/sheet/json.h"
#include "engine/cuts/sheet/text.h"
#include "engine/layout/layout.h"
#include "mats.h"

using namespace mullion;

namespace {

CuttingPlan planned(const Mat& mat, PlanOptions options = {},
                    const CutterProfile& cutter = default_cutter()) {
  return plan_cutting(mat, cutter, options).value();
}

PlanOptions by(Way way, int quantity = 1) {
  PlanOptions options;
  options.way = way;
  options.quantity = quantity;
  return options;
}

std::vector<const BevelCut*> cuts_of(const Stage& stage) {
  std::vector<const BevelCut*> out;
  for (const SetUp& set_up : stage.set_ups) {
    for (const Placement& placement : set_up.placements) {
      for (const BevelCut& cut : placement.cuts) out.push_back(&cut);
    }
  }
  return out;
}

std::set<Length> guides_of(const CuttingPlan& plan) {
  std::set<Length> out;
  for (const Stage& stage : plan.stages) {
    for (const SetUp& set_up : stage.set_ups) {
      if (set_up.settings.guide) out.insert(*set_up.settings.guide);
    }
  }
  return out;
}

simulator::Outcome played(const CuttingPlan& plan) {
  return simulator::play(plan_to_json(plan), mats::ideal(plan.cutter));
}

Mat collage(int columns, int rows) {
  const Length width = inches(5 * columns + 3), height = inches(5 * rows + 3);
  std::vector<mats::Window> windows;
  for (int row = 0; row < rows; ++row) {
    for (int column = 0; column < columns; ++column) {
      const Length left = inches(2 + 5 * column), top = inches(2 + 5 * row);
      windows.push_back({left, top, width - left - inches(4), height - top - inches(4)});
    }
  }
  return mats::single(width, height, windows);
}

}  // namespace

// Common practice, no source.
TEST_CASE("a 3 in border on all sides is cut with the guide at 3 and the near stop at 3") {
  for (const Way way : {Way::pencilled, Way::one_stop, Way::two_stops}) {
    const CuttingPlan plan = planned(mats::even(inches(16), inches(20), inches(3)), by(way));
    CHECK(guides_of(plan) == std::set<Length>{inches(3)});
    for (const SetUp& set_up : plan.stages[0].set_ups) {
      if (way != Way::pencilled) CHECK(set_up.settings.near_stop == inches(3));
    }
    CHECK(cuts_of(plan.stages[0]).size() == 4);
  }
}

// Common practice, no source.
TEST_CASE("with one stop a single pencil line is enough, and the board turns to the right") {
  const CuttingPlan plan =
      planned(mats::even(inches(16), inches(20), inches(3)), by(Way::one_stop));
  const Stage& stage = plan.stages[0];
  CHECK(stage.pencil_lines.size() == 1);
  REQUIRE(stage.set_ups.size() == 1);
  REQUIRE(stage.set_ups[0].placements.size() == 4);
  for (std::size_t i = 1; i < 4; ++i) CHECK(stage.set_ups[0].placements[i].turns == 1);
  for (std::size_t i = 1; i < 4; ++i) CHECK(cuts_of(stage)[i]->start.by == EndBy::cut);
}

// Common practice, no source.
TEST_CASE("with two stops there is exactly one re-set for a whole run, whatever its length") {
  for (const int quantity : {1, 2, 40, 500}) {
    const CuttingPlan plan =
        planned(mats::even(inches(16), inches(20), inches(3)), by(Way::two_stops, quantity));
    const simulator::Outcome outcome = played(plan);
    CHECK(outcome.set_ups == 2);
    CHECK(outcome.guide_moves == 1);
    CHECK(outcome.stop_moves == 3);
    const auto& set_ups = plan.stages[0].set_ups;
    for (const SetUp& set_up : set_ups) {
      REQUIRE(set_up.placements.size() == 2);
      CHECK(set_up.placements[1].turns == 2);
    }
    // All short sides first.
    CHECK(*set_ups[0].settings.far_stop < *set_ups[1].settings.far_stop);
  }
}

// Common practice, no source.
TEST_CASE(
    "a weighted bottom needs two guide settings, and a run of them no more set-ups than one") {
  const Length b = inches(3);
  const Mat mat = mats::single(inches(16), inches(20), {{b, b, b, b + sixty_fourths(32)}});
  for (const Way way : {Way::pencilled, Way::one_stop, Way::two_stops}) {
    const CuttingPlan one = planned(mat, by(way));
    const CuttingPlan run = planned(mat, by(way, 40));
    CHECK(guides_of(one).size() == 2);
    CHECK(played(one).guide_moves == 2);
    CHECK(played(run).set_ups <= played(one).set_ups);
    CHECK(played(run).guide_moves == 2);
  }
}

// Common practice, no source.
TEST_CASE("straight cuts come first, without guide, stops and backing sheet; bevels over one") {
  const CuttingPlan plan = planned(mats::even(inches(16), inches(20), inches(3)));
  REQUIRE(plan.blanks.size() == 2);
  CHECK(plan.blanks[0].size == inches(20));
  CHECK(plan.blanks[1].size == inches(16));
  const auto json = nlohmann::json::parse(plan_to_json(plan));
  for (const auto& side : json["blanks"]) {
    CHECK(side["backing_sheet"] == false);
  }
  const std::string text = plan_to_text(plan);
  const std::size_t blanks = text.find("straight blade, no backing sheet, guide and stops off");
  CHECK(blanks < text.find("opening 1"));
  CHECK(text.find("Bevel cuts over a backing sheet, straight cuts without it.") !=
        std::string::npos);
}

TEST_CASE(
    "a double mat with several openings keeps edges and order, and every setting moves by one "
    "amount") {
  Mat mat = collage(3, 2);
  const Length reveal = sixty_fourths(16), run = sixty_fourths(4);
  mats::add_layer(mat, {reveal, reveal, reveal, reveal}, run);
  for (const bool stacked : {true, false}) {
    PlanOptions options = by(Way::two_stops);
    options.stacked = stacked;
    const CuttingPlan plan = planned(mat, options);
    const Stage& top = plan.stages[0];
    const Stage& under = plan.stages[1];
    CHECK(under.same_order);
    REQUIRE(under.shift);
    CHECK(under.shift->guide == reveal + run);
    CHECK(under.shift->stops == reveal + run);
    REQUIRE(top.set_ups.size() == under.set_ups.size());
    for (std::size_t i = 0; i < top.set_ups.size(); ++i) {
      const Settings& a = top.set_ups[i].settings;
      const Settings& b = under.set_ups[i].settings;
      if (a.guide) CHECK(*b.guide == *a.guide + reveal + run);
      if (a.near_stop) CHECK(*b.near_stop == *a.near_stop + reveal + run);
      if (a.far_stop) CHECK(*b.far_stop == *a.far_stop - reveal - run);
      for (std::size_t j = 0; j < top.set_ups[i].placements.size(); ++j) {
        CHECK(top.set_ups[i].placements[j].edge == under.set_ups[i].placements[j].edge);
      }
    }
    CHECK(under.taped == stacked);
    CHECK(under.blank.width() ==
          (stacked ? mat.outer.width() - sixty_fourths(16) : mat.outer.width()));
  }
}

TEST_CASE("every reveal of a stacked double mat comes out even from the printed settings") {
  Mat mat = collage(3, 2);
  const Length reveal = sixty_fourths(16);
  mats::add_layer(mat, {reveal, reveal, reveal, reveal}, sixty_fourths(4));
  const simulator::Outcome outcome = played(planned(mat));
  REQUIRE(outcome.layers.size() == 2);
  REQUIRE(outcome.layers[0].back.size() == 6);
  for (std::size_t i = 0; i < 6; ++i) {
    const simulator::Polygon& above = outcome.layers[0].back[i];
    const simulator::Polygon& below = outcome.layers[1].face[i];
    CHECK(below.front().x - above.front().x == reveal);
    CHECK(below.front().y - above.front().y == reveal);
    CHECK(above.back().x - below.back().x == reveal);
    CHECK(above.back().y - below.back().y == reveal);
  }
  CHECK(outcome.layers[0].longest_overrun == Length());
}

// Reference: stacked triple mat, a framers' forum; the method is common practice. Lines 1/8 and 3/8
// in inside the top mat's, both under-mats 1/4 in smaller overall.
TEST_CASE("a triple mat's under-mats are both trimmed by the same amount") {
  Mat mat = mats::even(inches(12), inches(12), inches(2));
  const Length eighth = sixty_fourths(8), quarter = sixty_fourths(16), run = sixty_fourths(4);
  mats::add_layer(mat, {eighth - run, eighth - run, eighth - run, eighth - run}, run);
  mats::add_layer(mat, {quarter - run, quarter - run, quarter - run, quarter - run}, run);
  const CuttingPlan plan = planned(mat);
  CHECK(guides_of(plan) == std::set<Length>{inches(2), inches(2) + eighth, inches(2) + 3 * eighth});
  CHECK(plan.stages[1].blank.width() == inches(12) - quarter);
  CHECK(plan.stages[2].blank == plan.stages[1].blank);
  CHECK(plan.stages[1].shift->guide == eighth);
  CHECK(plan.stages[2].shift->guide == quarter);
}

TEST_CASE(
    "a line beyond the guide's reach is flagged and cut freehand, or with a block outside the "
    "bar") {
  const Length far = inches(14);
  const Mat mat = mats::single(
      inches(24), inches(12),
      {{inches(3), inches(3), far, inches(3)}, {far, inches(3), inches(3), inches(3)}});
  const CuttingPlan plan = planned(mat);
  int freehand = 0;
  for (const BevelCut* cut : cuts_of(plan.stages[0])) {
    if (cut->pencil == 0) continue;
    ++freehand;
    CHECK(cut->distance == far);
    REQUIRE(cut->instead);
    CHECK(cut->instead->guide == inches(7));
    CHECK(cut->instead->block->width == inches(7));
  }
  CHECK(freehand == 2);
  REQUIRE(plan.notes.size() == 1);
  CHECK(code_of(plan.notes[0]) == "cutting-beyond-guide");

  CutterProfile over_bar = default_cutter();
  over_bar.guide->board_over_bar = true;
  const CuttingPlan blocked = planned(mat, {}, over_bar);
  for (const BevelCut* cut : cuts_of(blocked.stages[0])) CHECK(cut->pencil == 0);
  CHECK(mats::difference(mat, plan_to_json(blocked), mats::ideal(over_bar)) == "");
}

TEST_CASE("a border narrower than the guide's least is cut with a block between guide and board") {
  const Mat mat = mats::even(inches(8), inches(10), sixty_fourths(48));
  const CuttingPlan plan = planned(mat);
  const Settings& settings = plan.stages[0].set_ups[0].settings;
  CHECK(settings.guide == inches(2));
  REQUIRE(settings.block);
  CHECK(settings.block->width == sixty_fourths(80));
  CHECK(mats::difference(mat, plan_to_json(plan), mats::ideal(plan.cutter)) == "");
}

TEST_CASE("with one edge at the guide the lines farther in are cut first") {
  std::mt19937 random(7);
  for (int i = 0; i < 200; ++i) {
    const CuttingPlan plan = planned(mats::random_mat(random));
    std::map<BoardEdge, Length> last;
    for (const SetUp& set_up : plan.stages[0].set_ups) {
      for (const Placement& placement : set_up.placements) {
        for (const BevelCut& cut : placement.cuts) {
          const auto [at, is_new] = last.emplace(placement.edge, cut.distance);
          CHECK((is_new || cut.distance <= at->second));
          at->second = cut.distance;
        }
      }
    }
  }
}

TEST_CASE("no cut starts on a line that is already cut through") {
  // The right window's top line would start, over-cut included, on the left window's right line.
  const Length over = sixty_fourths(4);
  const Mat mat = mats::single(inches(12), inches(12),
                               {{inches(2), inches(2), inches(6), inches(2)},
                                {inches(6) + over, inches(3), inches(2), inches(3)}});
  for (const GuideSide side : {GuideSide::left, GuideSide::right}) {
    CutterProfile cutter = default_cutter();
    cutter.side = side;
    const CuttingPlan plan = planned(mat, {}, cutter);
    std::map<std::pair<int, BoardEdge>, int> number;
    for (const BevelCut* cut : cuts_of(plan.stages[0])) {
      number[{cut->openings[0], cut->kept}] = cut->number;
    }
    const BoardEdge starts_there = side == GuideSide::left ? BoardEdge::top : BoardEdge::bottom;
    const BoardEdge crossed = BoardEdge::right;
    CHECK(number.at({2, starts_there}) < number.at({1, crossed}));
  }
}

TEST_CASE("the quickest way is chosen, and the choice can be forced") {
  const Mat mat = mats::even(inches(16), inches(20), inches(3));
  const CuttingPlan plan = planned(mat);
  for (const WayTime& way : plan.ways) CHECK(plan.seconds <= way.seconds);
  CHECK(planned(mat, by(Way::pencilled)).way == Way::pencilled);
  CHECK(planned(mat, {}, *generic_cutter("plain-bench")).way == Way::pencilled);
  PlanOptions forced = by(Way::two_stops);
  const auto refused = plan_cutting(mat, *generic_cutter("plain-bench"), forced);
  REQUIRE_FALSE(refused);
  CHECK(refused.error()[0].code == "cutter-way");
}

TEST_CASE("a window without a bevel is cut to its corners and no further") {
  Mat mat = mats::even(inches(16), inches(20), inches(3));
  MatLayer& layer = mat.layers.front();
  layer.run = Length();
  layer.windows.front().face = layer.windows.front().back;
  layer.windows.front().face_edge = layer.windows.front().back_edge;
  const CuttingPlan plan = plan_cutting(mat, default_cutter()).value();
  CHECK(mats::difference(mat, plan_to_json(plan), mats::ideal(default_cutter())) == "");
  CHECK(plan_to_text(plan).find("Set the blade to 90 degrees") != std::string::npos);
}

TEST_CASE("a mat that is too large for the cutter is refused with both figures") {
  const auto plan = plan_cutting(mats::even(inches(70), inches(58), inches(3)), default_cutter());
  REQUIRE_FALSE(plan);
  REQUIRE(plan.error().size() == 2);
  CHECK(plan.error()[0].message ==
        "the mat is 70 in across the rail; the cutter \"bench\" takes 60 in");
  CHECK(plan.error()[1].message ==
        "layer 1 needs a cut of 64 1/8 in, over-cuts included; the cutter \"bench\" cuts at most "
        "48 in");
}

TEST_CASE("a run takes longer than one mat, and less than as many single ones") {
  const Mat mat = mats::even(inches(16), inches(20), inches(3));
  const std::int64_t one = minutes(planned(mat));
  const std::int64_t forty = minutes(planned(mat, by(Way::two_stops, 40)));
  CHECK(one >= 3);
  CHECK(forty > 40);
  CHECK(forty < 40 * one);
}

TEST_CASE("the bound on a plan for twelve openings on two layers is not above its time") {
  Mat regular = collage(4, 3);
  const Length reveal = sixty_fourths(16);
  Mat odd = regular;
  for (std::size_t i = 0; i < odd.layers[0].windows.size(); ++i) {
    Window& window = odd.layers[0].windows[i];
    const Length by = sixty_fourths(static_cast<int>(i) + 1);
    window.back = {window.back.left + by, window.back.top + by, window.back.right + by,
                   window.back.bottom + by};
  }
  mats::set_thickness(odd.layers[0], sixty_fourths(4));
  for (Mat* mat : {&regular, &odd}) {
    mats::add_layer(*mat, {reveal, reveal, reveal, reveal}, sixty_fourths(4));
    const CuttingPlan plan = planned(*mat);
    CHECK(plan.bound <= plan.seconds);
  }
}
