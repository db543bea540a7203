// The job files of a week: what is unwise about each, its proof, and the sheets that all of them
// take.
// usage: one_week JOB.xml ...

#include <cstdio>

#include "engine/file/file.h"
#include "engine/job/read.h"
#include "engine/layout/layout.h"
#include "engine/mat/checks.h"
#include "engine/sheets/batch/batch.h"
#include "render/proof/sheet.h"

using namespace mullion;

int fail(const Problems& problems) {
  for (const Problem& problem : problems) std::fprintf(stderr, "%s\n", to_string(problem).c_str());
  return 1;
}

Result<std::string> proof_of(const Job& job, const Mat& mat) {
  const auto photographs = proof::open_photographs(job);
  if (!photographs) return tl::unexpected(photographs.error());
  proof::Sheet sheet;
  sheet.choices.push_back({{&job, &mat, &*photographs}, "", {}, {}});
  return proof::render_sheet(sheet, paper::Format::pdf, 150);
}

int main(int argc, char** argv) {
  std::vector<BatchJob> week;
  for (int i = 1; i < argc; ++i) {
    const Result<Job> job = read_job(argv[i]);
    if (!job) return fail(job.error());
    const Result<Layout> layout = lay_out(*job);
    if (!layout) return fail(layout.error());
    const Result<Mat> mat = build_mat(*job, *layout);
    if (!mat) return fail(mat.error());
    fail(check_mat(*job, *layout, *mat));
    const Result<std::string> pdf = proof_of(*job, *mat);
    if (!pdf) return fail(pdf.error());
    if (!replace_file(job->reference + ".pdf", *pdf)) return 1;
    week.push_back({job->reference, job->title, job->quantity, job->scale, *mat});
  }
  if (week.empty()) return 2;

  const std::vector<BlankOrder> blanks = blanks_of(week, {});
  std::vector<Board> boards;
  for (const BlankOrder& blank : blanks) boards.push_back(blank.board);
  const Scale& scale = week.front().scale;
  const Result<SheetPlan> plan =
      plan_sheets(blanks, with_known_prices(common_stock(boards, scale.unit)),
                  sheet_cutter(default_cutter()), scale);
  if (!plan) return fail(plan.error());
  for (const BoardPlan& board : plan->boards) {
    std::printf("%s: %zu sheets\n", board.board.name.c_str(), board.sheets.size());
  }
  return 0;
}
