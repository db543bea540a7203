#include <catch2/catch.hpp>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <random>

#include "engine/cuts/sheet/json.h"
#include "engine/cuts/sheet/text.h"
#include "engine/job/read.h"
#include "engine/mat/rect.h"
#include "engine/mat/shape.h"
#include "likeness.h"
#include "mats.h"
#include "tests/oracle/program.h"

using namespace mullion;
using nlohmann::json;

namespace {

// One window of the shape, 3 in from each edge of a board 16 x 20 in.
Mat shaped(ShapeSpec shape) {
  Mat mat = mats::even(inches(16), inches(20), inches(3));
  mats::give_shape(mat, 0, shape);
  return mat;
}

json plan_of(const Mat& mat) {
  return json::parse(plan_to_json(plan_cutting(mat, default_cutter()).value()));
}

}  // namespace

TEST_CASE("stepped corners come off the ideal cutter exactly, for a guide on either side") {
  for (const GuideSide side : {GuideSide::left, GuideSide::right}) {
    CutterProfile cutter = default_cutter();
    cutter.side = side;
    const Mat mat = shaped({ShapeKind::stepped, inches(1), {}, {}, {}});
    const auto plan = plan_cutting(mat, cutter);
    const auto outcome = simulator::play(plan_to_json(plan.value()), mats::ideal(cutter));
    CHECK(outcome.faults.empty());
    CHECK(outcome.layers[0].back == mats::backs(mat.layers[0]));
    CHECK(outcome.layers[0].face == mats::faces(mat.layers[0]));
  }
}

TEST_CASE("a window that steps behind bars comes off the ideal cutter, its inner corners clean") {
  const Job job = read_job(oracle::test_data("jobs/stepped_window.xml")).value();
  const Mat mat = build_mat(job, lay_out(job).value()).value();
  for (const CutterProfile& generic : generic_cutters()) {
    for (const BladeLean lean : {BladeLean::to_guide, BladeLean::from_guide}) {
      CutterProfile cutter = generic;
      cutter.lean = lean;
      INFO(cutter.id);
      const std::string plan = plan_to_json(plan_cutting(mat, cutter).value());
      CHECK(mats::difference(mat, plan, mats::ideal(cutter)) == "");
      const auto cut = simulator::play(plan, mats::ideal(cutter)).layers.at(1);
      CHECK(cut.back.at(0).size() == mat.layers[1].windows[0].back_edge.segments.size());
    }
  }
}

TEST_CASE("an oval opening is an instruction for an oval cutter, with half-axes and centre") {
  const json plan = plan_of(shaped({ShapeKind::ellipse, {}, {}, {}, {}}));
  CHECK(plan["stages"][0]["set_ups"].empty());
  const json& curve = plan["stages"][0]["curves"][0];
  CHECK(curve["kind"] == "oval cutter");
  CHECK(curve["centre"]["from_A"] == "10 in");
  CHECK(curve["centre"]["from_B"] == "8 in");
  CHECK(curve["back"]["half_width"] == "5 in");
  CHECK(curve["back"]["half_height"] == "7 in");
  CHECK(curve["face"]["half_width"] == "5 1/16 in");
}

TEST_CASE("an arch has three straight cuts, and its curve is cut along the template") {
  const json plan = plan_of(shaped({ShapeKind::arch, {}, {}, {}, {}}));
  int cuts = 0;
  for (const json& set_up : plan["stages"][0]["set_ups"]) {
    for (const json& placement : set_up["placements"]) cuts += int(placement["cuts"].size());
  }
  CHECK(cuts == 3);
  CHECK(plan["stages"][0]["curves"][0]["kind"] == "template");
}

TEST_CASE("an octagon comes off the ideal cutter, its slanting lines freehand along the rail") {
  const Mat mat = shaped({ShapeKind::octagon, inches(2), {}, {}, {}});
  for (const GuideSide side : {GuideSide::left, GuideSide::right}) {
    for (const BladeLean lean : {BladeLean::to_guide, BladeLean::from_guide}) {
      CutterProfile cutter = default_cutter();
      cutter.side = side;
      cutter.lean = lean;
      json plan = json::parse(plan_to_json(plan_cutting(mat, cutter).value()));
      CHECK(plan["stages"][0]["freehand"].size() == 4);
      CHECK(mats::difference(mat, plan.dump(), mats::ideal(cutter)) == "");

      json& slant = plan["stages"][0]["freehand"][0];
      std::swap(slant["from"], slant["to"]);
      CHECK(mats::difference(mat, plan.dump(), mats::ideal(cutter)) ==
            "the face edge of a shape in layer 1");
    }
  }
}

TEST_CASE("an octagon cut on a line that is off by a division is noticed") {
  const Mat mat = shaped({ShapeKind::octagon, inches(2), {}, {}, {}});
  json plan = plan_of(mat);
  plan["stages"][0]["freehand"][1]["from"]["from_A"] = "4 in";
  CHECK(mats::difference(mat, plan.dump(), mats::ideal(default_cutter())) != "");
}

TEST_CASE("the half-axes and the centre of any oval are those of its window, to a tick") {
  std::mt19937 random(41);
  const auto length = [](const json& text) {
    return parse_length(text.get<std::string>(), Unit::inch).value();
  };
  for (int i = 0; i < 200; ++i) {
    const auto border = [&] { return sixty_fourths(128 + static_cast<int>(random() % 200)); };
    Mat mat = mats::single(inches(20), inches(24), {{border(), border(), border(), border()}});
    Window& window = mat.layers[0].windows[0];
    window.shape.kind = ShapeKind::ellipse;
    const json curve = plan_of(mat)["stages"][0]["curves"][0];
    for (const auto& [edge, box] :
         {std::pair("back", window.back), std::pair("face", window.face)}) {
      const Length twice = length(curve[edge]["half_width"]) * 2 - box.width();
      CHECK((twice <= Length() && twice >= -Length::from_ticks(1)));
      CHECK(length(curve[edge]["height"]) == box.height());
    }
    const Length middle = length(curve["centre"]["from_B"]);
    const Length left = middle - window.back.left, right = window.back.right - middle;
    CHECK((right - left >= Length() && right - left <= Length::from_ticks(1)));
  }
}

TEST_CASE("a V-groove is cut out as a panel before the openings, shaved and taped back") {
  Mat mat = mats::even(inches(16), inches(20), inches(4));
  MatGroove groove;
  groove.openings = {1};
  groove.width = sixty_fourths(8);
  const Rect middle = outset(mat.layers[0].windows[0].back, inches(1));
  groove.line = shape_outline({}, middle, Length()).value();
  mat.grooves.push_back(groove);
  const auto plan = plan_cutting(mat, default_cutter());
  const std::string text = plan_to_json(plan.value());
  const json printed = json::parse(text);
  CHECK(printed["stages"][0]["kind"] == "groove");
  CHECK(printed["stages"][0]["trims"][0]["shave"] == "1/8 in");
  CHECK(printed["stages"][0]["trims"][0]["block"]["place"] == "inside the guide");
  const auto outcome = simulator::play(text, mats::ideal(default_cutter()));
  REQUIRE(outcome.layers.size() == 2);
  // The panel's edge on the face is the outer edge of the V, half its width from the middle.
  const Rect edge = outset(middle, sixty_fourths(4));
  CHECK(outcome.layers[0].face[0].front() == simulator::Point{edge.left, edge.top});
  CHECK(outcome.layers[0].face[0].back() == simulator::Point{edge.right, edge.bottom});
  CHECK(mats::difference(mat, text, mats::ideal(default_cutter())) == "");
}

TEST_CASE("the panel of a V-groove around an arch is cut along its own outline") {
  Mat mat = mats::even(inches(16), inches(20), inches(4));
  const ShapeSpec arch{ShapeKind::arch, {}, inches(2), {}, {}};
  mats::give_shape(mat, 0, arch);
  const Rect sight = mat.layers[0].windows[0].back;
  MatGroove groove;
  groove.openings = {1};
  groove.width = sixty_fourths(8);
  groove.line = shape_outline(arch, sight, inches(1)).value();
  groove.shape = ShapeKind::arch;
  mat.grooves.push_back(groove);
  const auto plan = plan_cutting(mat, default_cutter());
  const auto outcome = simulator::play(plan_to_json(plan.value()), mats::ideal(default_cutter()));
  CHECK(outcome.faults.empty());
  // On the face the blade comes out at the outer edge of the V, half its width from the middle.
  Window panel;
  panel.face_edge = shape_outline(arch, sight, inches(1) + sixty_fourths(4)).value();
  panel.back_edge = shape_outline(arch, sight, inches(1)).value();
  CHECK(mats::unlike(panel, outcome.layers[0].tracks.at({1}), mats::whole_ticks) == "");
}

TEST_CASE("the panel of a V-groove around an octagon is cut along the rail, as the octagon is") {
  Mat mat = mats::even(inches(16), inches(20), inches(4));
  const ShapeSpec octagon{ShapeKind::octagon, inches(2), {}, {}, {}};
  mats::give_shape(mat, 0, octagon);
  const Rect sight = mat.layers[0].windows[0].back;
  mat.grooves.push_back({{1},
                         shape_outline(octagon, sight, inches(1)).value(),
                         sixty_fourths(8),
                         {},
                         ShapeKind::octagon});
  const std::string text = plan_to_json(plan_cutting(mat, default_cutter()).value());
  const json stage = json::parse(text)["stages"][0];
  CHECK(stage["kind"] == "groove");
  CHECK(stage["freehand"].size() == 4);
  CHECK(stage["curves"].empty());
  const auto outcome = simulator::play(text, mats::ideal(default_cutter()));
  CHECK(outcome.faults.empty());
  Window panel;
  panel.face_edge = shape_outline(octagon, sight, inches(1) + sixty_fourths(4)).value();
  panel.back_edge = shape_outline(octagon, sight, inches(1)).value();
  CHECK(mats::unlike(panel, outcome.layers[0].tracks.at({1}), mats::whole_ticks) == "");
}

TEST_CASE("every job of the gallery comes off the ideal cutter as its mat") {
  std::size_t jobs = 0;
  for (const auto& entry : std::filesystem::directory_iterator(oracle::gallery(""))) {
    if (entry.path().extension() != ".xml") continue;
    const std::string name = entry.path().stem().string();
    const Job job = read_job(entry.path().string()).value();
    const Mat mat = build_mat(job, lay_out(job).value()).value();
    for (const CutterProfile& generic : generic_cutters()) {
      for (const GuideSide side : {GuideSide::left, GuideSide::right}) {
        for (const bool stacked : {true, false}) {
          CutterProfile cutter = generic;
          cutter.side = side;
          PlanOptions options;
          options.stacked = stacked;
          const auto plan = plan_cutting(mat, cutter, options);
          INFO(name << " on " << cutter.id);
          REQUIRE(plan);
          CHECK(mats::difference(mat, plan_to_json(*plan), mats::ideal(cutter)) == "");
          CHECK(plan_to_text(*plan).find("Keep the hand") != std::string::npos);
        }
      }
    }
    ++jobs;
  }
  CHECK(jobs >= 30);
}
