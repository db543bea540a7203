// A proof by simulation is worth as much as what it catches.

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "engine/cuts/sheet/json.h"
#include "mats.h"

using namespace mullion;
using nlohmann::json;

namespace {

struct Bent {
  Mat mat = mats::double_mat();
  CutterProfile cutter = default_cutter();
  json plan;

  Bent() {
    PlanOptions options;
    options.way = Way::two_stops;
    plan = json::parse(plan_to_json(plan_cutting(mat, cutter, options).value()));
  }
  std::string outcome(unsigned lie = 0) const {
    return mats::difference(mat, plan.dump(), mats::ideal(cutter), lie);
  }
  json& stage(std::size_t i) { return plan["stages"][i]; }
  json& set_up(std::size_t i) { return stage(0)["set_ups"][i]; }
};

}  // namespace

TEST_CASE("the plan as it is gives the mat") {
  CHECK(Bent().outcome() == "");
}

TEST_CASE("a setting that is off by one division spoils the mat") {
  for (const char* scale : {"guide", "near_stop", "far_stop"}) {
    for (std::size_t stage = 0; stage < 2; ++stage) {
      Bent bent;
      json& setting = bent.stage(stage)["set_ups"][1][scale];
      if (setting.is_null()) continue;
      setting["rounded_by"] = "1.5875 mm";
      INFO(scale << " on stage " << stage);
      CHECK(bent.outcome() != "");
    }
  }
}

TEST_CASE("a setting that is off by one tick spoils the mat") {
  Bent bent;
  bent.set_up(0)["guide"]["rounded_by"] = "0.000625 mm";
  CHECK(bent.outcome() != "");
}

TEST_CASE("a wrong edge at the guide spoils the mat") {
  Bent bent;
  json& placement = bent.set_up(0)["placements"][0];
  placement["edge_at_guide"] = placement["edge_at_guide"] == "A" ? "C" : "A";
  CHECK(bent.outcome() == "the turns do not bring the stated edge to the guide");
}

TEST_CASE("a wrong turn spoils the mat") {
  Bent bent;
  json& turns = bent.set_up(1)["placements"][0]["quarter_turns_clockwise"];
  turns = (turns.get<int>() + 1) % 4;
  CHECK(bent.outcome() != "");
}

TEST_CASE("a board that is laid wrong at the start of a stage spoils the mat") {
  for (std::size_t stage = 0; stage < 2; ++stage) {
    Bent bent;
    json& first = bent.stage(stage)["set_ups"][0]["placements"][0];
    REQUIRE(first["laid_anew"] == true);
    const std::string away = first["edge_away"];
    first["edge_away"] = away == "A" ? "B" : "A";
    CHECK(bent.outcome() != "");
    // A first turn from nowhere: right for a board that happens to lie so, wrong for the others.
    first["edge_away"] = away;
    first["laid_anew"] = false;
    first["quarter_turns_clockwise"] = 0;
    int right = 0;
    for (unsigned lie = 0; lie < 16; ++lie) right += bent.outcome(lie) == "" ? 1 : 0;
    CHECK(right == 4);
  }
}

TEST_CASE("a board that lies anyhow at the start of each stage comes out right") {
  for (unsigned lie = 0; lie < 16; ++lie) CHECK(Bent().outcome(lie) == "");
}

TEST_CASE("a check measure that is wrong is noticed") {
  for (const auto& [kind, what] :
       {std::pair("line", "distance"), {"fallout", "width"}, {"opening", "height"}}) {
    Bent bent;
    for (json& check : bent.stage(0)["checks"]) {
      if (check["kind"] == kind) check[what] = "2 in";
    }
    INFO(kind);
    CHECK(bent.outcome() != "");
  }
}

// Way by way, with what is particular to it: spacers, strokes along the guide, the rail's edge.
TEST_CASE("a spacer, a stroke or a line by the rail that is wrong spoils the mat") {
  const auto bent = [](Way way) {
    Bent out;
    out.cutter.line_from_rail = sixty_fourths(12);
    PlanOptions options;
    options.way = way;
    out.plan = json::parse(plan_to_json(plan_cutting(out.mat, out.cutter, options).value()));
    return out;
  };
  for (const Way way : all_ways) CHECK(bent(way).outcome() == "");
  // The first of a stage's settings that is there.
  const auto spoil = [](Bent& out, const char* part, const char* key, const char* inner) {
    for (json& set_up : out.stage(0)[part]) {
      if (set_up[key].is_null()) continue;
      (inner == nullptr ? set_up[key] : set_up[key][inner]) = "1 1/64 in";
      return true;
    }
    return false;
  };
  Bent gauges = bent(Way::gauges);
  REQUIRE(spoil(gauges, "set_ups", "block", "width"));
  CHECK(gauges.outcome() != "");
  Bent blocks = bent(Way::stop_blocks);
  REQUIRE(spoil(blocks, "set_ups", "arm_block", nullptr));
  CHECK(blocks.outcome() != "");
  Bent strokes = bent(Way::guide_marked);
  REQUIRE(spoil(strokes, "marking", "guide", "shows"));
  CHECK(strokes.outcome() != "");
  Bent rail = bent(Way::pencilled);
  rail.plan["cutter"]["line_from_rail"] = "13/64 in";
  CHECK(rail.outcome() != "");
}

TEST_CASE("a head that is pushed, but told to be pulled, spoils the mat") {
  // By the lines: stops would make the same cut from the other end.
  Bent bent;
  PlanOptions by_lines;
  by_lines.way = Way::pencilled;
  bent.plan = json::parse(plan_to_json(plan_cutting(bent.mat, bent.cutter, by_lines).value()));
  bent.cutter.stroke = Stroke::push;
  CHECK(bent.outcome() == "a cut starts below its end");
  const auto plan = plan_cutting(bent.mat, bent.cutter);
  CHECK(mats::difference(bent.mat, plan_to_json(plan.value()), mats::ideal(bent.cutter)) == "");
}

TEST_CASE("a cut left out, or a blade of the other lean, spoils the mat") {
  Bent short_one;
  short_one.set_up(0)["placements"][0]["cuts"].erase(0);
  CHECK(short_one.outcome() != "");

  Bent bent;
  simulator::Cutter other = mats::ideal(bent.cutter);
  other.tip_to_guide = false;
  CHECK(mats::difference(bent.mat, bent.plan.dump(), other) != "");
  simulator::Cutter mirrored = mats::ideal(bent.cutter);
  mirrored.guide_on_left = false;
  CHECK(mats::difference(bent.mat, bent.plan.dump(), mirrored) != "");
}

namespace {

// One window 10 x 14 in of the shape, and its plan, to be bent.
struct BentCurve {
  Mat mat = mats::even(inches(16), inches(20), inches(3));
  json plan;

  explicit BentCurve(ShapeSpec shape) {
    mats::give_shape(mat, 0, shape);
    plan = json::parse(plan_to_json(plan_cutting(mat, default_cutter()).value()));
  }
  json& curve() { return plan["stages"][0]["curves"][0]; }
  std::string outcome() const {
    return mats::difference(mat, plan.dump(), mats::ideal(default_cutter()));
  }
};

}  // namespace

TEST_CASE("an oval that is set wrong by a division spoils the mat") {
  for (const auto& [what, part, wrong] :
       {std::tuple("centre", "from_A", "10 1/64 in"), std::tuple("centre", "from_B", "7 63/64 in"),
        std::tuple("back", "half_width", "5 1/64 in"),
        std::tuple("back", "half_height", "6 63/64 in")}) {
    BentCurve bent({ShapeKind::ellipse, {}, {}, {}, {}});
    CHECK(bent.outcome() == "");
    bent.curve()[what][part] = wrong;
    INFO(what << " " << part);
    CHECK(bent.outcome() != "");
  }
}

TEST_CASE("a template that is drawn wrong, or cut to the wrong side, spoils the mat") {
  const ShapeSpec arch{ShapeKind::arch, {}, inches(3), {}, {}};
  CHECK(BentCurve(arch).outcome() == "");

  BentCurve moved(arch);
  moved.curve()["lines"][0]["parts"][3]["to"]["from_A"] = "3 in";
  CHECK(moved.outcome() != "");

  BentCurve turned(arch);
  turned.curve()["direction"] = "anticlockwise as seen from the front";
  CHECK(turned.outcome() == "the face edge of a shape in layer 1");

  BentCurve left_out(arch);
  left_out.curve()["lines"].clear();
  CHECK(left_out.outcome() == "the back edge of a shape in layer 1");
}

TEST_CASE("an arch lower than a half round needs over-cuts where it meets its sides") {
  BentCurve bent({ShapeKind::arch, {}, inches(3), {}, {}});
  bent.curve()["lines"][0]["over_cut"] = "0 in";
  CHECK(bent.outcome() == "the face edge of a shape in layer 1");
}

TEST_CASE("an over-cut shorter than the bevel's run leaves the corners hanging") {
  Bent bent;
  bent.cutter.over_cuts = {{sixty_fourths(4), sixty_fourths(3)}};
  const auto plan = plan_cutting(bent.mat, bent.cutter);
  CHECK(mats::difference(bent.mat, plan_to_json(plan.value()), mats::ideal(bent.cutter)) != "");
}

TEST_CASE("an under-mat cut to another size than its straight cuts is noticed") {
  Bent bent;
  bent.plan["blanks"][3]["arm_stop"]["shows"] = "20 in";
  CHECK(bent.outcome() == "the straight cuts do not give the blank");
}
