#include "render/cutsheet/cutsheet.h"

#include <catch2/catch.hpp>

#include "engine/job/read.h"
#include "tests/oracle/program.h"

using namespace mullion;

namespace {

CuttingPlan plan_for(const std::string& job_name, PlanOptions options = {}) {
  const Job job = read_job(oracle::gallery(job_name)).value();
  const Mat mat = build_mat(job, lay_out(job).value()).value();
  CuttingPlan plan = plan_cutting(mat, default_cutter(), options).value();
  plan.title = job.title;
  return plan;
}

std::string written(const std::string& name, const std::string& pdf) {
  const std::string path = oracle::scratch_folder(name) + "/cuts.pdf";
  oracle::write_file(path, pdf);
  return path;
}

std::string text_of(const std::string& path) {
  return oracle::run({"pdftotext", "-layout", path, "-"}).out;
}

int pages_of(const std::string& path) {
  const std::string out = oracle::run({"pdfinfo", path}).out;
  return std::stoi(out.substr(out.find("Pages:") + 6));
}

std::size_t count(const std::string& text, const std::string& what) {
  std::size_t n = 0;
  for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + 1)) ++n;
  return n;
}

}  // namespace

TEST_CASE("the sheet of a single mat is one page that poppler and qpdf accept") {
  for (const char* job : {"equal-borders.xml", "weighted-bottom.xml"}) {
    const std::string path = written("cutsheet-single", render_cutsheet(plan_for(job)));
    CHECK(pages_of(path) == 1);
    CHECK(oracle::run({"qpdf", "--check", path}).status == 0);
  }
}

TEST_CASE("every set-up and every way the board lies is on the sheet") {
  const CuttingPlan plan = plan_for("double-mat.xml");
  const std::string text = text_of(written("cutsheet-all", render_cutsheet(plan)));
  std::size_t placements = 0;
  for (const Stage& stage : plan.stages) {
    for (const SetUp& set_up : stage.set_ups) {
      placements += set_up.placements.size();
      CHECK(text.find("Set-up " + std::to_string(set_up.number)) != std::string::npos);
    }
  }
  CHECK(count(text, "at the guide") >= placements);
}

TEST_CASE("the one amount of an under-mat is said on the sheet") {
  const std::string text =
      text_of(written("cutsheet-amount", render_cutsheet(plan_for("double-mat.xml"))));
  CHECK(count(text, "every setting changed by one amount") == 1);
  CHECK(text.find("guide opened by 5/16 in") != std::string::npos);
}

TEST_CASE("a run has a tally, and the same plan gives the same bytes") {
  PlanOptions options;
  options.quantity = 40;
  const std::string pdf = render_cutsheet(plan_for("equal-borders.xml", options));
  CHECK(text_of(written("cutsheet-run", pdf)).find("tally of 40") != std::string::npos);
  CHECK(render_cutsheet(plan_for("equal-borders.xml", options)) == pdf);
}
