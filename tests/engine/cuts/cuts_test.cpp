// What Cuts tells, against the plan that is made from it, the check that reads it and figures
// worked by hand.

#include "engine/cuts/cuts.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>

#include "engine/cuts/plan/plan.h"
#include "engine/cuts/refusal.h"
#include "engine/cuts/sheet/json.h"
#include "engine/job/read.h"
#include "engine/mat/rect.h"
#include "engine/sheets/batch/batch.h"
#include "mats.h"
#include "tests/oracle/program.h"

using namespace mullion;

namespace {

const std::vector<std::string>& gallery_jobs() {
  static const std::vector<std::string> jobs = [] {
    std::vector<std::string> out;
    for (const auto& entry : std::filesystem::directory_iterator(oracle::gallery(""))) {
      if (entry.path().extension() == ".xml") out.push_back(entry.path().string());
    }
    std::sort(out.begin(), out.end());
    return out;
  }();
  return jobs;
}

// A job that a mat made by hand may be checked as: findings name its openings and layers.
struct Checked {
  Job job;
  Layout layout;
};

Checked as_job(const Mat& mat) {
  Checked out;
  out.job.scale.unit = mat.unit;
  Group all;
  for (const Window& window : mat.layers.front().windows) {
    for (const int number : window.openings) {
      Opening opening;
      opening.id = "o" + std::to_string(number);
      Node node;
      node.what = opening;
      all.children.push_back(node);
      PlacedOpening placed;
      placed.number = number;
      placed.id = opening.id;
      out.layout.openings.push_back(placed);
    }
  }
  out.job.arrangement.what = all;
  return out;
}

// The codes of check and plan for one reason.
const std::pair<const char*, const char*> reasons[] = {
    {"check-cutter-wide", "cutter-board-too-wide"},
    {"check-cutter-long", "cutter-cut-too-long"},
    {"check-cutter-reach", "cutter-beyond-rail"},
    {"check-cutter-thick", "cutter-board-too-thick"},
    {"check-cutter-deep", "cutter-cut-too-deep"},
    {"check-cutter-trim", "cutter-trim"},
    {"check-cutter-groove", "cutter-groove"}};

std::vector<std::string> codes(const Problems& problems) {
  std::vector<std::string> out;
  for (const Problem& problem : problems) {
    std::string code = problem.code;
    for (const auto& [of_check, of_plan] : reasons) {
      if (code == of_check) code = of_plan;
    }
    out.push_back(code);
  }
  std::sort(out.begin(), out.end());
  return out;
}

// Whether check and plan say the same about the mat; counts what is refused.
void compare(const Mat& mat, const CutterProfile& cutter, const Job& job, const Layout& layout,
             int& refused) {
  const Cuts cuts = cuts_of(mat, cutter);
  const Problems found = check_on_cutter(job, layout, cuts);
  PlanOptions one_way;  // what is refused is refused in every way
  one_way.way = Way::pencilled;
  const auto plan = plan_cutting(mat, cutter, one_way);
  REQUIRE(plan.has_value() == found.empty());
  if (plan) return;
  ++refused;
  REQUIRE(codes(found) == codes(plan.error()));
  for (const Problem& problem : found) REQUIRE(problem.severity != Severity::note);
}

Length length_of(const BevelCut& cut) {
  const Length far = std::max(cut.start.line, cut.end.line);
  const Length near = std::min(cut.start.line, cut.end.line);
  return far - near + cut.start.over_cut + cut.end.over_cut;
}

}  // namespace

TEST_CASE("check finds fault with a mat on a cutter exactly where the plan refuses it") {
  std::mt19937 random(818);
  int refused = 0;
  for (int i = 0; i < 500; ++i) {
    INFO("mat " << i);
    Mat mat = mats::random_mat(random);
    CutterProfile cutter = mats::random_cutter(random);
    // Over-cuts that are not the run, and a rail that ends about where the longest cut does.
    cutter.over_cuts.front().distance = Length::from_ticks(static_cast<int>(random() % 9000));
    const Cuts cuts = cuts_of(mat, cutter);
    Length longest;
    for (const StraightLine& line : cuts.layers.front().lines.straight) {
      longest = std::max(longest, cut_length(line));
    }
    cutter.longest_cut = longest + Length::from_ticks(static_cast<int>(random() % 4000) - 2000);
    if (random() % 4 == 0) cutter.widest_board = mat.outer.height();
    if (random() % 4 == 0) cutter.reach = cuts.farthest - Length::from_ticks(random() % 2);
    if (random() % 8 == 0) cutter.thickest_board = Length::from_ticks(2000);
    if (random() % 8 == 0) cutter.deepest_in_two = Length::from_ticks(2000);
    if (random() % 4 == 0) mat.unit = Unit::millimetre;
    const Checked checked = as_job(mat);
    compare(mat, cutter, checked.job, checked.layout, refused);
  }
  CHECK(refused > 150);
  CHECK(refused < 450);
}

TEST_CASE("at every bevel from 30 to 90 degrees check and plan refuse the same gallery mats") {
  int refused = 0;
  for (const std::string& path : gallery_jobs()) {
    const Job job = read_job(path).value();
    // The rail takes what is cut at 45 degrees: a flatter bevel cuts farther, a steeper one less.
    const Layout layout = lay_out(job).value();
    CutterProfile cutter = generic_cutter_for(job.scale.unit);
    const Mat usual = mats::mat_at(job, 45).value();
    const Cuts at_45 = cuts_of(usual, cutter);
    Length longest;
    for (const StraightLine& line : at_45.layers.front().lines.straight) {
      longest = std::max(longest, cut_length(line));
    }
    if (longest > Length()) cutter.longest_cut = longest;
    for (int degrees = 30; degrees <= 90; ++degrees) {
      const auto mat = mats::mat_at(job, degrees);
      if (!mat) continue;
      INFO(path << " at " << degrees);
      compare(*mat, cutter, job, layout, refused);
    }
  }
  CHECK(refused > 100);
}

TEST_CASE("the plan makes every line of Cuts once, as long as it says, and nothing else") {
  std::mt19937 random(4711);
  for (int i = 0; i < 200; ++i) {
    INFO("mat " << i);
    const Mat mat = mats::random_mat(random);
    const CutterProfile cutter = mats::random_cutter(random);
    const Cuts cuts = cuts_of(mat, cutter);
    const auto plan = plan_cutting(mat, cutter);
    if (!plan) continue;
    REQUIRE(plan->stages.size() == cuts.layers.size());
    for (std::size_t k = 0; k < plan->stages.size(); ++k) {
      const Stage& stage = plan->stages[k];
      const CutLines& lines = cuts.layers[k].lines;
      CHECK(stage.blank == cuts.layers[k].blank);
      CHECK(stage.taped == cuts.layers[k].taped);
      if (stage.kind == StageKind::spacer) continue;
      CHECK(stage.skew_cuts.size() == lines.skew.size());
      CHECK(stage.curves.size() == lines.curves.size());
      std::vector<std::pair<BoardEdge, Length>> planned, told;
      for (const SetUp& set_up : stage.set_ups) {
        for (const Placement& placement : set_up.placements) {
          for (const BevelCut& cut : placement.cuts) planned.emplace_back(cut.kept, length_of(cut));
        }
      }
      for (const StraightLine& line : lines.straight) {
        told.emplace_back(line.kept, cut_length(line));
      }
      std::sort(planned.begin(), planned.end());
      std::sort(told.begin(), told.end());
      CHECK(planned == told);
    }
  }
}

// The run of board 1/16 in thick is 1/16 in times the cotangent of the angle: 2.75 mm at 30
// degrees, 1.59 mm at 45, 0.92 mm at 60, none at 90.
TEST_CASE("over-cuts follow the bevel's run at every angle") {
  const Job job = read_job(oracle::gallery("equal-borders.xml")).value();
  for (const auto& [degrees, millimetres] :
       {std::pair(30, 2.75), {45, 1.5875}, {60, 0.9166}, {90, 0.0}}) {
    const Mat mat = mats::mat_at(job, degrees).value();
    const Cuts cuts = cuts_of(mat);
    for (const StraightLine& line : cuts.layers.front().lines.straight) {
      for (const LineEnd& end : line.ends) {
        CHECK(to_millimetres(end.over_cut) == Approx(millimetres).margin(0.003));
      }
    }
  }
}

// Two pictures of 10 x 10 in on a mat 60 in wide with borders of 3 in: each line of the right or
// the left one ends 57 in from the edge at the arm, and 1/16 in of over-cut past that.
TEST_CASE("a cut that lies beyond the rail's end is refused, short as it may be") {
  const Length b = inches(3), far = inches(47);
  const Mat mat = mats::single(inches(60), inches(16), {{b, b, far, b}, {far, b, b, b}});
  const Cuts cuts = cuts_of(mat);
  REQUIRE(cuts.refusals.size() == 1);
  CHECK(cuts.refusals[0].why == Refusal::Why::beyond_rail);
  CHECK(cuts.refusals[0].found == inches(57) + sixty_fourths(4));
  CHECK(plan_cutting(mat, default_cutter()).error().at(0).message ==
        "layer 1 needs a cut that lies 57 1/16 in from the squaring arm, over-cut included; the "
        "cutter \"bench\" reaches 48 in");
  CutterProfile longer = default_cutter();
  longer.reach = inches(57) + sixty_fourths(4);
  CHECK(plan_cutting(mat, longer));
  longer.reach.reset();
  const auto unknown = plan_cutting(mat, longer);
  REQUIRE(unknown);
  CHECK(std::any_of(unknown->notes.begin(), unknown->notes.end(),
                    [](const PlanNote& note) { return code_of(note) == "cutting-reach-unknown"; }));
}

TEST_CASE("thick board is cut in two passes or refused, and a spacer of any thickness is strips") {
  Mat mat = mats::even(inches(16), inches(20), inches(3));
  mats::set_thickness(mat.layers.front(), sixty_fourths(10));
  const CuttingPlan twice = plan_cutting(mat, default_cutter()).value();
  CHECK(twice.stages[0].passes == 2);
  mats::set_thickness(mat.layers.front(), sixty_fourths(20));
  CHECK(plan_cutting(mat, default_cutter()).error().at(0).code == "cutter-cut-too-deep");
  mats::set_thickness(mat.layers.front(), sixty_fourths(32));
  CHECK(plan_cutting(mat, default_cutter()).error().at(0).code == "cutter-board-too-thick");

  Mat spaced = mats::even(inches(16), inches(20), inches(3));
  mats::add_layer(spaced, {}, sixty_fourths(64));
  spaced.layers.back().board.spacer = true;
  const CuttingPlan plan = plan_cutting(spaced, default_cutter()).value();
  CHECK(plan.stages[1].kind == StageKind::spacer);
  CHECK(plan.stages[1].strips.size() == 4);
  CHECK(plan.stages[1].set_ups.empty());
  CHECK(mats::difference(spaced, plan_to_json(plan), mats::ideal(default_cutter())) == "");
}

TEST_CASE("every outlet tells the same blank for every layer of every gallery job") {
  for (const std::string& path : gallery_jobs()) {
    INFO(path);
    const Job job = read_job(path).value();
    const Mat mat = build_mat(job, lay_out(job).value()).value();
    for (const bool stacked : {true, false}) {
      for (const auto trim : {std::optional<Length>(), std::optional(sixty_fourths(5))}) {
        const CutOptions options{stacked, trim};
        PlanOptions planning;
        planning.stacked = stacked;
        planning.trim = trim;
        const Cuts cuts = cuts_of(mat, options);
        const auto blanks = blanks_of({{"A", "", 1, job.scale, mat}}, options);
        const auto plan = plan_cutting(mat, generic_cutter_for(mat.unit), planning);
        REQUIRE(plan);
        REQUIRE(blanks.size() == cuts.layers.size());
        std::size_t stage = plan->stages.size() - cuts.layers.size();
        for (std::size_t i = 0; i < blanks.size(); ++i, ++stage) {
          // Worked here: 1/8 in or 3 mm less on each side of what is taped.
          Length by =
              trim.value_or(job.scale.unit == Unit::inch ? sixty_fourths(8) : millimetres(3));
          if (!stacked || i == 0) by = Length();
          CHECK(cuts.layers[i].blank == inset(mat.outer, {by, by, by, by}));
          CHECK(blanks[i].width == cuts.layers[i].blank.width());
          CHECK(blanks[i].height == cuts.layers[i].blank.height());
          CHECK(plan->stages[stage].blank == cuts.layers[i].blank);
        }
      }
    }
  }
}

TEST_CASE("a trim is refused where a window of the under-mat would lie on or beyond its edge") {
  // 2 in of border; the under-mat's window lies 1/4 in + 1/16 in further in, its face edge 1/16 in
  // less: 2 1/4 in from the edge.
  Mat mat = mats::even(inches(16), inches(20), inches(2));
  const Length reveal = sixty_fourths(16);
  mats::add_layer(mat, {reveal, reveal, reveal, reveal}, sixty_fourths(4));
  const Length most = sixty_fourths(144);
  PlanOptions options;
  options.trim = most - Length::from_ticks(1);
  CHECK(plan_cutting(mat, default_cutter(), options));
  options.trim = most;
  const auto refused = plan_cutting(mat, default_cutter(), options);
  REQUIRE_FALSE(refused);
  CHECK(refused.error().at(0).message ==
        "a trim of 2 1/4 in on each side cuts into the window of opening 1 in layer 2; expected "
        "less than 2 1/4 in");
  options.stacked = false;
  CHECK(plan_cutting(mat, default_cutter(), options));
  options.stacked = true;
  options.trim = inches(8);
  CHECK(plan_cutting(mat, default_cutter(), options).error().at(0).message ==
        "the trim of the under-mats leaves no blank");
}

TEST_CASE("a panel of a V-groove that is longer than the rail is found, as its windows are") {
  Mat mat = mats::even(inches(47), inches(30), inches(3));
  const Rect middle = outset(mat.layers[0].windows[0].back, inches(2));
  mat.grooves.push_back({{1}, rectangle(middle), sixty_fourths(8), {}, ShapeKind::rectangle});
  CHECK(cuts_of(mat).refusals.empty());
  CutterProfile cutter = default_cutter();
  cutter.longest_cut = inches(44);
  const Cuts cuts = cuts_of(mat, cutter);
  REQUIRE(cuts.refusals.size() == 1);
  CHECK(cuts.refusals[0].why == Refusal::Why::cut_too_long);
  CHECK(cuts.refusals[0].is_of_the_cutter());
  // 41 + 2 x 2 in of panel, half the groove's 1/8 in wider and the run of 1/16 in less on each
  // side, over-cuts of 1/16 in.
  CHECK(cuts.refusals[0].found == inches(45) + sixty_fourths(8));
}

TEST_CASE(
    "the panel of a V-groove enters the back half its width less the run outside its middle") {
  Mat mat = mats::even(inches(16), inches(20), inches(4));
  const Rect middle = outset(mat.layers[0].windows[0].back, inches(1));
  for (const int width : {4, 8, 12}) {
    mat.grooves = {{{1}, rectangle(middle), sixty_fourths(width), {}, ShapeKind::rectangle}};
    const Cuts cuts = cuts_of(mat);
    REQUIRE(cuts.grooves);
    const Window& panel = cuts.grooves->panels.at(0);
    CHECK(panel.face ==
          outset(middle, sixty_fourths(width) - half_rounded_down(sixty_fourths(width))));
    CHECK(panel.back == outset(panel.face, -sixty_fourths(4)));
    CHECK(cuts.grooves->lines.straight.size() == 4);
  }
}

TEST_CASE("a blade's path has its over-cuts at both ends, and runs on from a curve's corners") {
  Mat mat = mats::even(inches(16), inches(20), inches(3));
  mats::give_shape(mat, 0, {ShapeKind::arch, {}, inches(3), {}, {}});
  const Cuts cuts = cuts_of(mat);
  const CutLines& lines = cuts.layers[0].lines;
  REQUIRE(lines.straight.size() == 3);
  REQUIRE(lines.curves.size() == 1);
  const std::vector<BladePath> paths = blade_paths(lines);
  // Three sides, the arc, and what runs on at each end of the arc.
  REQUIRE(paths.size() == 6);
  for (std::size_t i = 0; i < 3; ++i) {
    CHECK(paths[i].line.segments.size() == 1);
    const Rect box = bounding_box(paths[i].line);
    CHECK(box.width() + box.height() == cut_length(lines.straight[i]));
  }
  const CurveLine& arc = lines.curves[0].lines.at(0);
  for (const auto& [path, over_cut] :
       {std::pair(paths[4], arc.over_cuts.back()), {paths[5], arc.over_cuts.front()}}) {
    const Vector by = vector_of(path.line.segments[0].to) - vector_of(path.line.start);
    CHECK(norm(by) == Approx(static_cast<double>(over_cut.ticks())).margin(1));
    CHECK(by.y > 0);  // the arc falls to both sides
  }
}
