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

// Lines that are broken for the terminal made one.
std::string flat(const CuttingPlan& plan) {
  std::string out;
  for (const char c : plan_to_text(plan)) {
    const bool blank = c == ' ' || c == '\n';
    if (!blank || out.empty() || out.back() != ' ') out += blank ? ' ' : c;
  }
  return out;
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
  CHECK(plan.blanks[0].strip);
  CHECK(plan.blanks[0].size == inches(16));
  CHECK_FALSE(plan.blanks[1].strip);
  CHECK(plan.blanks[1].size == inches(20));
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
  // The generic cutter does not say where its blade cuts beside the rail's edge.
  REQUIRE(plan.notes.size() == 2);
  CHECK(code_of(plan.notes[0]) == "cutting-beyond-guide");
  CHECK(code_of(plan.notes[1]) == "cutting-rail-unknown");
  CHECK(flat(plan).find("14 in from edge D, under the blade's point at both of its ends") !=
        std::string::npos);
  CutterProfile known = default_cutter();
  known.line_from_rail = sixty_fourths(16);
  CHECK(flat(planned(mat, {}, known))
            .find("14 in from edge D, 1/4 in from the rail's edge, away from the guide's side") !=
        std::string::npos);

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

TEST_CASE(
    "the way that costs least is chosen, the user's wish goes before it, and a command first") {
  const Mat mat = mats::even(inches(16), inches(20), inches(3));
  const CuttingPlan plan = planned(mat);
  for (const WayTime& way : plan.ways) CHECK(plan.ways.front().cost <= way.cost);
  CHECK(plan.ways.front().way == plan.way);
  CutterProfile cutter = default_cutter();
  cutter.prefers = Way::guide_marked;
  CHECK(planned(mat, {}, cutter).way == Way::guide_marked);
  CHECK(planned(mat, by(Way::pencilled), cutter).way == Way::pencilled);
  CutterProfile plain = *generic_cutter("plain-bench");
  CHECK(planned(mat, {}, plain).way < Way::one_stop);
  plain.prefers = Way::gauges;  // which needs a guide and stops
  CHECK(planned(mat, {}, plain).way < Way::one_stop);
  for (const Way way : {Way::one_stop, Way::two_stops, Way::gauges}) {
    const auto refused = plan_cutting(mat, plain, by(way));
    REQUIRE_FALSE(refused);
    CHECK(refused.error()[0].code == "cutter-way");
  }
}

TEST_CASE(
    "precision has a price: where it is dear stops are used, where it is free they need not be") {
  const Mat mat = collage(2, 2);
  CutterProfile cutter = default_cutter();
  cutter.error_price = 1000;
  const CuttingPlan exact = planned(mat, {}, cutter);
  cutter.error_price = 0;
  const CuttingPlan quick = planned(mat, {}, cutter);
  CHECK(exact.ways.front().error <= quick.ways.front().error);
  CHECK(exact.way >= Way::two_stops);
  for (const WayTime& way : quick.ways) CHECK(quick.seconds <= way.seconds);
}

// 2 x 2 openings: two distances from each edge for the lines farther in and nearer, on each of two
// sides of an opening: 16 strokes, whatever number of openings share one.
TEST_CASE("pencil strokes that lie in one line are drawn and counted once") {
  for (const Way way : {Way::pencilled, Way::guide_marked}) {
    const CuttingPlan plan = planned(collage(2, 2), by(way));
    CHECK(plan.stages[0].pencil_lines.size() == 8);
    CHECK(cuts_of(plan.stages[0]).size() == 16);
  }
}

TEST_CASE("lines drawn along the guide are set once for each distance") {
  CutterProfile cutter = default_cutter();
  cutter.line_from_rail = sixty_fourths(16);
  const CuttingPlan plan = planned(collage(2, 2), by(Way::guide_marked), cutter);
  const Stage& stage = plan.stages[0];
  REQUIRE_FALSE(stage.marking.empty());
  std::set<Length> settings;
  std::size_t drawn = 0;
  for (const MarkSetUp& set_up : stage.marking) {
    CHECK(settings.insert(set_up.setting.guide).second);
    for (const MarkPlacement& placement : set_up.placements) {
      const PencilLine& line = stage.pencil_lines[static_cast<std::size_t>(placement.line) - 1];
      CHECK(line.by_guide);
      CHECK(set_up.setting.guide == line.distance + sixty_fourths(16));
      ++drawn;
    }
  }
  for (const PencilLine& line : stage.pencil_lines) {
    if (!line.by_guide) CHECK(line.distance + sixty_fourths(16) > cutter.guide->most);
  }
  CHECK(drawn > 0);
}

TEST_CASE("gauge pieces and blocks at the arm make do with one setting for each size of opening") {
  CutterProfile cutter = default_cutter();
  cutter.guide->most = inches(20);
  const Mat mat = collage(2, 2);
  const auto moves = [&](Way way) {
    const CuttingPlan plan = planned(mat, by(way), cutter);
    const simulator::Outcome outcome = played(plan);
    CHECK(outcome.faults.empty());
    return std::pair(outcome.guide_moves, outcome.stop_moves);
  };
  const auto [guide, stop] = moves(Way::two_stops);
  const auto [guide_by_blocks, stop_by_blocks] = moves(Way::stop_blocks);
  const auto [guide_by_gauges, stop_by_gauges] = moves(Way::gauges);
  CHECK(guide_by_gauges == 1);
  CHECK(stop_by_gauges == 2);
  CHECK(stop_by_blocks == 2);
  CHECK(guide_by_gauges < guide);
  CHECK(stop_by_gauges < stop);
  const CuttingPlan plan = planned(mat, by(Way::gauges), cutter);
  CHECK(plan.gauges.size() >= 1);
  CHECK(plan.gauges.size() <= 4);
}

namespace {

// A double mat of 2 x 2 openings, the bottom border wider by 1/2 in.
Mat weighted_double_mat() {
  std::vector<mats::Window> windows;
  for (const Length top : {inches(3), inches(10)}) {
    for (const Length left : {inches(3), inches(12)}) {
      windows.push_back({left, top, inches(22) - left - inches(7),
                         inches(18) + sixty_fourths(32) - top - inches(5)});
    }
  }
  Mat mat = mats::single(inches(22), inches(18) + sixty_fourths(32), windows);
  const Length reveal = sixty_fourths(16);
  mats::add_layer(mat, {reveal, reveal, reveal, reveal}, sixty_fourths(4));
  return mat;
}

struct Work {
  int set_ups = 0, guide_moves = 0, stop_moves = 0, freehand = 0;
  std::size_t strokes = 0;
};

Work work_of(const CuttingPlan& plan) {
  const simulator::Outcome outcome = played(plan);
  Work out{outcome.set_ups, outcome.guide_moves, outcome.stop_moves, 0, 0};
  for (const Stage& stage : plan.stages) {
    out.strokes += stage.pencil_lines.size();
    for (const BevelCut* cut : cuts_of(stage)) out.freehand += cut->pencil > 0 ? 1 : 0;
  }
  return out;
}

}  // namespace

// The figures of the complaint that brought the other ways: two stops took 44 stop moves in 28
// set-ups and 16 freehand cuts for both layers, where a good framer pencils 16 strokes.
TEST_CASE("the hardest double mat takes few stop moves, and each way is told with its figures") {
  const Mat mat = weighted_double_mat();
  const Work by_stops = work_of(planned(mat, by(Way::two_stops)));
  CHECK(by_stops.stop_moves == 44);
  CHECK(by_stops.set_ups == 28);
  CHECK(by_stops.freehand == 16);
  CHECK(work_of(planned(mat, by(Way::pencilled))).strokes == 16);
  CHECK(work_of(planned(mat, by(Way::guide_marked))).strokes == 16);
  const Work by_blocks = work_of(planned(mat, by(Way::stop_blocks)));
  CHECK(by_blocks.stop_moves == 12);
  const Work by_gauges = work_of(planned(mat, by(Way::gauges)));
  CHECK(by_gauges.stop_moves == 12);
  CHECK(by_gauges.guide_moves == 2);
  const CuttingPlan plan = planned(mat);
  CHECK(plan.way == Way::gauges);
  CHECK(plan.ways.size() == std::size(all_ways));
  REQUIRE(plan.ways[1].way == Way::stop_blocks);
  CHECK(plan.seconds < planned(mat, by(Way::two_stops)).seconds);
  CHECK(flat(plan).find("Cut with two stops and gauge pieces, ") != std::string::npos);
  CHECK(flat(plan).find("Next best: two stops and blocks at the arm, ") != std::string::npos);
  CHECK(flat(plan).find("more exact, but slower") != std::string::npos);
  REQUIRE(plan.stages[1].shift);  // one number for all of the under-mat
  CHECK(mats::difference(mat, plan_to_json(plan), mats::ideal(plan.cutter)) == "");
}

TEST_CASE(
    "farther lines come first unless the cutter's user says otherwise, which takes no longer") {
  std::mt19937 random(71);
  CutterProfile cutter = default_cutter();
  int quicker = 0;
  for (int i = 0; i < 40; ++i) {
    const Mat mat = mats::random_mat(random);
    cutter.farther_first = true;
    const auto kept = plan_cutting(mat, cutter, by(Way::two_stops)).value();
    cutter.farther_first = false;
    const auto free = plan_cutting(mat, cutter, by(Way::two_stops)).value();
    CHECK(free.stages[0].seconds <= kept.stages[0].seconds);
    quicker += free.stages[0].seconds < kept.stages[0].seconds ? 1 : 0;
  }
  CHECK(quicker > 0);
}

// A window of 1/4 in, where the mark leads by 1/4 in: at the lines the marks would stand 1/8 in the
// wrong way round, over-cuts of 1/16 in taken off.
TEST_CASE("stops that would cross are not set, and a scale never shows less than nothing") {
  Mat mat = mats::single(inches(12), inches(12),
                         {{inches(6), inches(4), inches(6) - sixty_fourths(16), inches(4)}});
  CutterProfile cutter = default_cutter();
  cutter.mark_lead = sixty_fourths(16);
  const CuttingPlan plan = planned(mat, by(Way::two_stops), cutter);
  int by_eye = 0;
  for (const BevelCut* cut : cuts_of(plan.stages[0]))
    by_eye += cut->start.by != EndBy::stop ? 1 : 0;
  CHECK(by_eye == 2);
  CHECK(mats::difference(mat, plan_to_json(plan), mats::ideal(cutter)) == "");

  CutterProfile shifted = default_cutter();
  shifted.guide->zero = -inches(4);
  shifted.near_stop->zero = -inches(4);
  const Mat even = mats::even(inches(16), inches(20), inches(3));
  const CuttingPlan below = planned(even, by(Way::two_stops), shifted);
  CHECK(plan_to_text(below).find("guide -") == std::string::npos);
  CHECK(plan_to_text(below).find("stop -") == std::string::npos);
  CHECK(mats::difference(even, plan_to_json(below), mats::ideal(shifted)) == "");
}

TEST_CASE("a cutter without a guide never has an edge at the guide") {
  const CuttingPlan plan =
      planned(mats::even(inches(16), inches(20), inches(3)), {}, *generic_cutter("plain-bench"));
  const std::string text = plan_to_text(plan);
  CHECK(text.find("at the guide") == std::string::npos);
  CHECK(text.find(" on the left, ") != std::string::npos);
}

// 141.7 mm is 5 37.1/64 in. A division of 1/16 in is read to a quarter.
TEST_CASE("a setting is one length in the cutter's unit, and what is rounded is said once") {
  Mat mat = mats::even(millimetres(400), millimetres(500), Length::from_ticks(1417 * 160));
  mat.unit = Unit::millimetre;
  mats::set_thickness(mat.layers.front(), Length::from_ticks(2400));
  const CuttingPlan plan = planned(mat, by(Way::two_stops));
  const std::string text = flat(plan);
  CHECK(text.find("guide 5 37/64 in") != std::string::npos);
  CHECK(text.find(" mm |") == std::string::npos);
  CHECK(text.find("The job is measured in other units: settings are converted to the cutter's and "
                  "rounded") != std::string::npos);
  const CuttingPlan metric = planned(mat, by(Way::two_stops), *generic_cutter("metric-bench"));
  CHECK(plan_to_text(metric).find("guide 141.7 mm") != std::string::npos);
  CHECK(plan_to_text(metric).find("rounded") == std::string::npos);
}

TEST_CASE(
    "what is measured on an under-mat that is taped on is measured from the top mat's edges") {
  Mat mat = collage(2, 1);
  const Length reveal = sixty_fourths(16);
  mats::add_layer(mat, {reveal, reveal, reveal, reveal}, sixty_fourths(4));
  const std::string text = plan_to_text(planned(mat, by(Way::pencilled)));
  CHECK(text.find("draw 2 5/16 in from edge A of the top mat") != std::string::npos);
  CHECK(text.find("letter its back anew") != std::string::npos);
  PlanOptions separate = by(Way::pencilled);
  separate.stacked = false;
  CHECK(plan_to_text(planned(mat, separate)).find("of the top mat") == std::string::npos);
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
  REQUIRE(plan.error().size() == 3);
  CHECK(plan.error()[2].code == "cutter-beyond-rail");
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
