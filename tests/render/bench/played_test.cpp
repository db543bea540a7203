// The simulator of tests/engine/cuts plays the page as it is shown.

#include <catch2/catch.hpp>
#include <filesystem>
#include <nlohmann/json.hpp>

#include "as_shown.h"
#include "engine/cuts/sheet/json.h"
#include "engine/cuts/sheet/run_json.h"
#include "engine/job/read.h"
#include "mats.h"
#include "picture.h"
#include "render/bench/bench.h"
#include "tests/how_many.h"
#include "tests/oracle/program.h"

using namespace mullion;
using nlohmann::json;

namespace {

// Empty: the page, played on boards that lie anyhow, gives the mat, and its pictures are true.
std::string played(const Mat& mat, const CutterProfile& cutter, const std::string& html,
                   const std::string& plan_json, unsigned lie) {
  const json plan = json::parse(plan_json);
  bench_test::AsShown shown;
  try {
    shown = bench_test::as_shown(html, plan);
    if (!shown.faults.empty()) return shown.faults.front();
    const std::string wrong = mats::difference(mat, shown.plan.dump(), mats::ideal(cutter), lie);
    if (!wrong.empty()) return wrong;
  } catch (const std::exception& error) {
    return error.what();
  }
  const auto untrue = bench_test::untrue_pictures(html, plan);
  return untrue.empty() ? "" : untrue.front();
}

struct Planned {
  Mat mat;
  CutterProfile cutter;
  CuttingPlan plan;
  std::string html, plan_json;

  Planned(Mat of, CutterProfile on, const PlanOptions& options = {})
      : mat(std::move(of)), cutter(std::move(on)) {
    plan = plan_cutting(mat, cutter, options).value();
    html = render_bench_page(plan);
    plan_json = plan_to_json(plan);
  }
  std::string outcome(unsigned lie = 0) const { return played(mat, cutter, html, plan_json, lie); }
};

}  // namespace

TEST_CASE("the page of every gallery job, played as it is shown, gives the mat") {
  int played_jobs = 0;
  for (const auto& entry : std::filesystem::directory_iterator(oracle::gallery(""))) {
    if (entry.path().extension() != ".xml") continue;
    const Job job = read_job(entry.path().string()).value();
    const auto layout = lay_out(job);
    REQUIRE(layout);
    const Mat mat = build_mat(job, *layout).value();
    INFO(entry.path());
    ++played_jobs;
    const unsigned lie = static_cast<unsigned>(played_jobs) * 0x39U;
    CHECK(Planned(mat, generic_cutter_for(job.scale.unit)).outcome(lie) == "");
  }
  CHECK(played_jobs >= 25);
}

TEST_CASE("the pages of random mats on random cutters, played as they are shown, give the mats") {
  const int count = test::how_many(8, 2000);
  std::mt19937 random(17017);
  for (int i = 0; i < count; ++i) {
    const Mat mat = mats::random_mat(random);
    const CutterProfile cutter = mats::random_cutter(random);
    const PlanOptions options = mats::random_options(random, cutter);
    INFO("mat " << i);
    REQUIRE(Planned(mat, cutter, options).outcome(static_cast<unsigned>(random())) == "");
  }
}

TEST_CASE("the pages of random jobs with shared windows, layers for some openings and spacers") {
  const int count = test::how_many(12, 2000);
  std::mt19937 random(71);
  int played_jobs = 0;
  for (int i = 0; i < count; ++i) {
    const std::string xml = mats::random_job(random);
    const CutterProfile cutter = mats::random_cutter(random);
    PlanOptions options;
    options.way = mats::random_way(random, cutter);
    const auto lie = static_cast<unsigned>(random());
    INFO(xml);
    const Job job = parse_job(xml, "random.xml").value();
    const auto layout = lay_out(job);
    if (!layout) continue;
    const auto mat = build_mat(job, *layout);
    if (!mat || !plan_cutting(*mat, cutter, options)) continue;
    ++played_jobs;
    REQUIRE(Planned(*mat, cutter, options).outcome(lie) == "");
  }
  CHECK(played_jobs > count / 2);
}

TEST_CASE("the page of a run, played kind by kind, gives the mat of each kind") {
  std::vector<RunJob> jobs;
  for (const char* name : {"double-mat", "weighted-bottom", "two-tiles", "diplomas"}) {
    const Job job = read_job(oracle::gallery(std::string(name) + ".xml")).value();
    jobs.push_back({name, job.title, build_mat(job, lay_out(job).value()).value(),
                    static_cast<int>(jobs.size()) + 1});
  }
  const CuttingRun run = plan_run(jobs, default_cutter()).value();
  const std::string html = render_bench_page(run);
  REQUIRE(run.kinds.size() == jobs.size());
  for (const RunKind& kind : run.kinds) {
    INFO("kind " << kind.number);
    const json plan = json::parse(plan_to_json(kind.plan));
    const auto shown = bench_test::as_shown(html, plan, kind.number);
    CHECK(shown.faults == std::vector<std::string>());
    CHECK(bench_test::untrue_pictures(html, plan, kind.number) == std::vector<std::string>());
    const auto job = std::find_if(jobs.begin(), jobs.end(), [&](const RunJob& one) {
      return one.order == kind.shares.front().order;
    });
    CHECK(mats::difference(job->mat, shown.plan.dump(), mats::ideal(run.cutter), 0x1b) == "");
  }
  // Step by step what is set, and what is cut with it.
  const json told = json::parse(run_to_json(run));
  std::vector<std::string> wanted, found;
  for (const json& step : told.at("steps")) {
    for (const json& cut : step.at("cut")) {
      if (cut.at("set_up").is_null()) continue;
      wanted.push_back("Step " + std::to_string(step.at("step").get<int>()) + " kind " +
                       std::to_string(cut.at("kind").get<int>()) + " of " +
                       std::to_string(cut.at("copies").get<int>()) + " guide " +
                       (step.at("guide").is_null()
                            ? "freehand"
                            : step.at("guide").at("shows").get<std::string>()));
    }
  }
  for (const bench_test::ShownStep& step : bench_test::shown_steps(html)) {
    if (step.text("cut") == nullptr) continue;
    const std::string line = step.where.back() + " kind " + step.where.front().substr(5, 1) +
                             " of " + std::to_string(step.pieces) + " guide " +
                             step.dial("guide")->shows;
    if (found.empty() || found.back() != line) found.push_back(line);
  }
  CHECK(found == wanted);
}

namespace {

PlanOptions by(Way way) {
  PlanOptions options;
  options.way = way;
  return options;
}

// The page's section with that heading (the one of that number with it) and where it begins.
struct Section {
  std::size_t at = 0, size = 0;
};
Section section(const std::string& html, const std::string& heading, int which = 0) {
  std::size_t found = 0;
  for (int i = 0; i <= which; ++i) {
    found = html.find("<b>" + heading + "</b>", found + 1);
    REQUIRE(found != std::string::npos);
  }
  const std::size_t at = html.rfind("<section", found);
  return {at, html.find("</section>", at) + 11 - at};
}

// The page with something in one of its sections put otherwise.
Planned bent(Planned planned, const std::string& heading, const std::string& from,
             const std::string& to, int which = 0) {
  const Section part = section(planned.html, heading, which);
  const std::size_t at = planned.html.find(from, part.at);
  INFO(heading << ": " << from << " in " << planned.html.substr(part.at, part.size));
  REQUIRE(at < part.at + part.size);
  planned.html.replace(at, from.size(), to);
  return planned;
}

Planned without(Planned planned, const std::string& heading, int which = 0) {
  const Section part = section(planned.html, heading, which);
  planned.html.erase(part.at, part.size);
  return planned;
}

}  // namespace

TEST_CASE("faults that are put into a page are found") {
  const Planned stops(mats::double_mat(), default_cutter(), by(Way::two_stops));
  REQUIRE(stops.outcome() == "");

  // A setting, by the least that a rule shows.
  for (const char* name : {"guide", "near stop", "far stop"}) {
    INFO(name);
    CHECK(bent(stops, "Cut 1 of 16", std::string("<dt>") + name + "</dt><dd>",
               std::string("<dt>") + name + "</dt><dd>1/64 in, not ")
              .outcome() != "");
    CHECK(bent(stops, "Cut 9 of 16", std::string("<dt>") + name, "<dt>other").outcome() != "");
  }
  CHECK(bent(stops, "Cut 1 of 16", "<dd>4 in", "<dd>4 1/64 in").outcome() != "");

  // How the board lies: the first turn of each layer, and a later one.
  for (const char* cut : {"Cut 1 of 16", "Cut 9 of 16"}) {
    INFO(cut);
    CHECK(bent(stops, cut, "lay edge", "lay the edge").outcome() != "");
    CHECK(bent(stops, cut, "away from you", "toward you").outcome() != "");
    for (const char* wrong :
         {"as it lies", "half turn", "quarter turn to the left", "quarter turn to the right"}) {
      const Section part = section(stops.html, cut);
      const std::size_t at = stops.html.find("lay edge", part.at);
      Planned turned = stops;
      turned.html.replace(at, std::string("lay edge A away from you").size(), wrong);
      // Right for a board that happens to lie so, wrong for the others.
      const unsigned stage = cut == std::string("Cut 1 of 16") ? 1 : 4;
      int right = 0;
      for (unsigned lie = 0; lie < 4; ++lie) right += turned.outcome(lie * stage) == "" ? 1 : 0;
      CHECK(right == 1);
    }
  }
  int turns = 0;
  for (int cut = 2; cut <= 16; ++cut) {
    const std::string heading = "Cut " + std::to_string(cut) + " of 16";
    const Section part = section(stops.html, heading);
    const std::string text = stops.html.substr(part.at, part.size);
    for (const char* turn : {">as it lies", ">half turn", ">quarter turn to the left"}) {
      if (text.find(turn) == std::string::npos) continue;
      INFO(heading << turn);
      CHECK(bent(stops, heading, turn, ">quarter turn to the right").outcome() != "");
      ++turns;
    }
  }
  CHECK(turns >= 10);
  CHECK(bent(stops, "Cut 3 of 16", ">Edge ", ">Edge B, not ").outcome() != "");
  for (const char* letter : {"A", "B", "C", "D"}) {
    Planned changed = stops;
    const std::string shown = std::string(">") + letter + "</text>";
    const std::size_t at = changed.html.find(shown);
    REQUIRE(at != std::string::npos);
    changed.html.replace(at, shown.size(), ">E</text>");
    CHECK(changed.outcome() != "");
  }
  // The letters of a board that lies otherwise.
  const auto used = [&](const char* heading) {
    const Section part = section(stops.html, heading);
    const std::size_t at = stops.html.rfind("<use ", part.at + part.size);
    return stops.html.substr(at, stops.html.find("/>", at) - at);
  };
  REQUIRE(used("Cut 1 of 16") != used("Cut 5 of 16"));
  CHECK(bent(stops, "Cut 5 of 16", used("Cut 5 of 16"), used("Cut 1 of 16")).outcome() != "");

  // The picture.
  for (const char* part : {"now", "start", "tip", "rail", "cut"}) {
    INFO(part);
    const std::string name = std::string("class=\"") + part + "\" d=\"M";
    CHECK(bent(stops, "Cut 6 of 16", name, name + "9 9M").outcome() != "");
    CHECK(bent(stops, "Cut 6 of 16", "class=\"" + std::string(part), "class=\"other").outcome() !=
          "");
  }
  CHECK(bent(stops, "Cut 6 of 16", "class=\"stop", "class=\"other").outcome() != "");
  CHECK(bent(stops, "Cut 6 of 16", "class=\"metal", "class=\"other").outcome() != "");

  // What is cut, and in which order.
  CHECK(without(stops, "Cut 4 of 16").outcome() != "");
  CHECK(bent(stops, "Cut 4 of 16", ">opening ", ">opening 7").outcome() != "");
  CHECK(bent(stops, "Cut 4 of 16", "Cut 4", "Cut 5").outcome() != "");
  for (int first = 1; first < 16; ++first) {
    const std::string one = "Cut " + std::to_string(first) + " of 16";
    const std::string two = "Cut " + std::to_string(first + 1) + " of 16";
    Planned changed = stops;
    const Section a = section(stops.html, one), b = section(stops.html, two);
    const std::string text = stops.html.substr(a.at, a.size);
    if (b.at != a.at + a.size) continue;  // a check between them
    changed.html.erase(a.at, a.size);
    changed.html.insert(b.at + b.size - a.size, text);
    INFO(one << " after the next");
    CHECK(changed.outcome() != "");
  }

  // Check measures, and the blanks.
  const auto checks = static_cast<int>(stops.plan.stages[0].checks.size());
  for (int i = 0; i < checks; ++i) {
    CHECK(bent(stops, "Check measure", " in", "/64 in", i).outcome() != "");
    CHECK(without(stops, "Check measure", i).outcome() != "");
  }
  for (int i = 1; i <= 4; ++i) {
    CHECK(bent(stops, "Blank cut " + std::to_string(i) + " of 4", " in</dd>", "/2 in</dd>")
              .outcome() != "");
  }
}

namespace {

std::string second_stroke(const std::string& html) {
  std::vector<std::string> all;
  for (const bench_test::ShownStep& step : bench_test::shown_steps(html)) {
    if (step.heading.starts_with("Pencil line ")) all.push_back(step.heading);
  }
  return all.at(1);
}

}  // namespace

TEST_CASE("faults of each way of working are found") {
  CutterProfile cutter = default_cutter();
  cutter.line_from_rail = sixty_fourths(12);
  const auto planned = [&](Way way) { return Planned(mats::double_mat(), cutter, by(way)); };

  const Planned pencilled = planned(Way::pencilled);
  REQUIRE(pencilled.outcome() == "");
  CHECK(without(pencilled, "Pencil lines").outcome() != "");
  CHECK(bent(pencilled, "Pencil lines", " in from", "/64 in from").outcome() != "");
  CHECK(bent(pencilled, "Cut 1 of 16", "class=\"tip\" d=\"M", "class=\"tip\" d=\"M500 90M")
            .outcome() != "");
  const std::string by_eye = "<p class=\"eye";
  CHECK(bent(pencilled, "Cut 2 of 16", by_eye, "<p class=\"nothing").outcome() != "");

  const Planned strokes = planned(Way::guide_marked);
  REQUIRE(strokes.outcome() == "");
  CHECK(bent(strokes, "Pencil line 1", " in</dd>", "/64 in</dd>").outcome() != "");
  CHECK(
      bent(strokes, "Pencil line 1", ">Pencil along the rail", ">Draw with the blade").outcome() !=
      "");
  CHECK(bent(strokes, "Pencil line 1", "class=\"turn", "class=\"other").outcome() != "");
  CHECK(without(strokes, second_stroke(strokes.html)).outcome() != "");

  const Planned gauges = planned(Way::gauges);
  REQUIRE(gauges.outcome() == "");
  CHECK(gauges.html.find("<dt>block at the guide</dt>") != std::string::npos);
  Planned other = gauges;
  const std::size_t block = other.html.find("<dt>block at the guide");
  other.html.replace(other.html.find("<dd>", block), 4, "<dd>1/64 in, not ");
  CHECK(other.outcome() != "");
  const Planned arm = planned(Way::stop_blocks);
  REQUIRE(arm.outcome() == "");
  other = arm;
  const std::size_t at_arm = other.html.find("<dt>block at the arm");
  REQUIRE(at_arm != std::string::npos);
  other.html.replace(at_arm, 20, "<dt>block elsewhere ");
  CHECK(other.outcome() != "");

  Mat oval = mats::even(inches(16), inches(20), inches(3));
  mats::give_shape(oval, 0, {ShapeKind::ellipse, {}, {}, {}, {}});
  const Planned curve(oval, default_cutter());
  REQUIRE(curve.outcome() == "");
  CHECK(bent(curve, "Curve 1 of 1", " in", "1/2 in").outcome() != "");
  CHECK(bent(curve, "Curve 1 of 1", "centre ", "centre 1").outcome() != "");

  Mat eight = mats::even(inches(16), inches(20), inches(3));
  mats::give_shape(eight, 0, {ShapeKind::octagon, inches(2), {}, {}, {}});
  const Planned slanting(eight, default_cutter());
  REQUIRE(slanting.outcome() == "");
  CHECK(bent(slanting, "Cut 5 of 8", " in from B", "/64 in from B").outcome() != "");
  CHECK(without(slanting, "Cut 6 of 8").outcome() != "");
  CHECK(bent(slanting, "Cut 5 of 8", "<p class=\"marks", "<p class=\"other").outcome() != "");
  CHECK(bent(slanting, "Cut 5 of 8", "<p class=\"rail", "<p class=\"other").outcome() != "");
}
