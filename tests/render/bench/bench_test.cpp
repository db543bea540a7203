#include "render/bench/bench.h"

#include <catch2/catch.hpp>
#include <filesystem>
#include <set>

#include "engine/cuts/sheet/cautions.h"
#include "engine/job/read.h"
#include "shown_page.h"
#include "tests/oracle/english.h"
#include "tests/oracle/program.h"

using namespace mullion;

namespace {

CuttingPlan bench_plan(const std::string& job_name, const PlanOptions& options = {}) {
  const Job job = read_job(oracle::gallery(job_name)).value();
  const Mat mat = build_mat(job, lay_out(job).value()).value();
  CuttingPlan plan = plan_cutting(mat, generic_cutter_for(job.scale.unit), options).value();
  plan.title = job.title;
  plan.reference = job.reference;
  return plan;
}

std::string words_of(const std::string& html) {
  std::string out;
  for (const bench_test::ShownStep& step : bench_test::shown_steps(html)) {
    out += step.heading + "\n";
    for (const std::string& where : step.where) out += where + "\n";
    for (const auto& dial : step.dials) out += dial.name + "\n" + dial.shows + "\n";
    for (const auto& text : step.texts) out += text.text + "\n";
  }
  const std::size_t buttons = html.find("<footer");
  return out + html.substr(buttons, html.find("<script>") - buttons);
}

std::size_t count(const std::string& text, const std::string& what) {
  std::size_t n = 0;
  for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + 1)) ++n;
  return n;
}

}  // namespace

TEST_CASE(
    "a page holds at most 300 kB for twelve openings, and the same plan gives the same bytes") {
  const CuttingPlan plan = bench_plan("twelve-stamps.xml");
  const std::string page = render_bench_page(plan);
  CHECK(page.size() <= 300'000);
  CHECK(page == render_bench_page(bench_plan("twelve-stamps.xml")));
  for (const Way way : all_ways) {
    PlanOptions options;
    options.way = way;
    CHECK(render_bench_page(bench_plan("twelve-stamps.xml", options)).size() <= 300'000);
  }
}

TEST_CASE("every page is XML that xmllint reads, with cautions first and a step for every cut") {
  const std::string folder = oracle::scratch_folder("bench-pages");
  std::vector<std::string> words = {"xmllint", "--noout"};
  for (const auto& entry : std::filesystem::directory_iterator(oracle::gallery(""))) {
    if (entry.path().extension() != ".xml") continue;
    const CuttingPlan plan = bench_plan(entry.path().filename());
    const std::string page = render_bench_page(plan);
    words.push_back(folder + "/" + entry.path().stem().string() + ".html");
    oracle::write_file(words.back(), page);
    INFO(entry.path());
    const auto steps = bench_test::shown_steps(page);
    std::vector<std::string> told;
    for (const auto& step : steps) {
      if (step.text("caution") == nullptr) break;
      for (const auto& text : step.texts) told.push_back(text.text);
    }
    CHECK(told == cautions(ToldPlan{plan, {}}));
    std::size_t cuts = 0;
    for (const Stage& stage : plan.stages) cuts += cuts_of(stage).size() + stage.skew_cuts.size();
    CHECK(static_cast<std::size_t>(
              std::count_if(steps.begin(), steps.end(), [](const bench_test::ShownStep& step) {
                return step.heading.starts_with("Cut ");
              })) == cuts);
  }
  const oracle::Run run = oracle::run(words);
  CHECK(run.status == 0);
  CHECK(run.err == "");
}

TEST_CASE("a hostile title is text, and the page's policy runs no script but its own") {
  CuttingPlan plan = bench_plan("double-mat.xml");
  plan.title = "</title><script>alert(1)</script>\"><img src=x onerror=alert(2)> & ]]>";
  plan.stages[0].name = "<b onclick=alert(3)>Top</b>";
  plan.cutter.name = "<svg/onload=alert(4)>";
  const std::string page = render_bench_page(plan);
  CHECK(count(page, "<script") == 1);
  CHECK(count(page, "<img") == 0);
  CHECK(count(page, "<svg/") == 0);
  CHECK(count(page, "<b onclick") == 0);
  CHECK(page.find("default-src 'none'; script-src 'sha256-") != std::string::npos);
  CHECK(page.find("unsafe-inline") == std::string::npos);
  CHECK(page.find("http://") == std::string::npos);
  CHECK(page.find("https://") == std::string::npos);
  CHECK_NOTHROW(bench_test::shown_steps(page));
}

TEST_CASE("another plan keeps its ticks under another name, and another language under the same") {
  const auto name = [](const std::string& page) {
    const std::size_t at = page.find("data-plan=\"");
    return page.substr(at, 28);
  };
  CuttingPlan plan = bench_plan("double-mat.xml");
  const std::string own = name(render_bench_page(plan));
  CHECK(name(render_bench_page(plan, Locale::find("de").value())) == own);
  plan.title += ".";
  CHECK(name(render_bench_page(plan)) != own);
}

TEST_CASE("a page in another language has no English in it") {
  for (const char* language : {"de", "fr", "es"}) {
    const Locale locale = Locale::find(language).value();
    for (const char* job :
         {"twelve-stamps.xml", "two-tiles.xml", "family-tree.xml", "record.xml"}) {
      INFO(language << " " << job);
      CuttingPlan plan = bench_plan(job);
      plan.cutter.name = plan.title = "";
      CHECK(oracle::english_in(words_of(render_bench_page(plan, locale))) ==
            std::vector<std::string>());
    }
    for (const Way way : all_ways) {
      PlanOptions options;
      options.way = way;
      CuttingPlan other = bench_plan("double-mat.xml", options);
      other.cutter.name = other.title = "";
      CHECK(oracle::english_in(words_of(render_bench_page(other, locale))) ==
            std::vector<std::string>());
    }
    CHECK(render_bench_page(bench_plan("two-tiles.xml"), locale)
              .find("<html lang=\"" + std::string(language)) != std::string::npos);
  }
}

TEST_CASE("what changed since the set-up before stands out, and what stays does not") {
  PlanOptions options;
  options.way = Way::two_stops;
  Settings shown;
  const CuttingPlan plan = bench_plan("double-mat.xml", options);
  const auto steps = bench_test::shown_steps(render_bench_page(plan));
  std::size_t at = 0;
  const auto next = [&] {
    while (steps[at].text("cut") == nullptr) ++at;
    return steps[at++];
  };
  for (const Stage& stage : plan.stages) {
    for (const SetUp& set_up : stage.set_ups) {
      for (const Placement& placement : set_up.placements) {
        for (const BevelCut& cut : placement.cuts) {
          const bench_test::ShownStep step = next();
          INFO(step.heading);
          CHECK(step.dial("guide")->moves == (set_up.settings.guide != shown.guide));
          CHECK(step.dial("near stop")->moves == (set_up.settings.near_stop != shown.near_stop));
          CHECK(step.dial("far stop")->moves == (set_up.settings.far_stop != shown.far_stop));
          const bool moved = &cut == &placement.cuts.front() && (placement.laid || placement.turns);
          CHECK(step.text("turn")->strong == moved);
          shown = set_up.settings;
        }
      }
    }
  }
}

TEST_CASE("a batch goes through each set-up for every mat, and measures the first alone") {
  PlanOptions options;
  options.quantity = 12;
  const auto steps =
      bench_test::shown_steps(render_bench_page(bench_plan("diplomas.xml", options)));
  std::set<int> groups;
  for (const auto& step : steps) {
    if (step.heading == "Check measure") CHECK(step.once);
    if (step.text("cut") == nullptr) continue;
    CHECK(step.pieces == 12);
    // Every board is laid anew where a set-up begins.
    if (groups.insert(step.group).second) CHECK(step.text("turn")->text.starts_with("lay edge"));
  }
}
