// From the words of a job to its template and its cutting plan.

#include <cstdio>

#include "engine/cuts/plan/plan.h"
#include "engine/file/file.h"
#include "engine/job/read.h"
#include "engine/layout/layout.h"
#include "engine/mat/mat.h"
#include "render/template/template.h"

using namespace mullion;

constexpr const char* double_mat = R"(
  <job version="1" reference="W-0900" unit="in">
    <pictures><picture id="dune" width="10" height="8"/></pictures>
    <layers>
      <layer name="Top mat" board="Chalk"/>
      <layer name="Under-mat" board="Slate" reveal="1/4"/>
    </layers>
    <borders all="3"/>
    <arrange><opening picture="dune"/></arrange>
  </job>)";

int fail(const Problems& problems) {
  for (const Problem& problem : problems) std::fprintf(stderr, "%s\n", to_string(problem).c_str());
  return 1;
}

int main() {
  const Result<Job> job = parse_job(double_mat, "double-mat.xml");
  if (!job) return fail(job.error());
  const Result<Layout> layout = lay_out(*job);
  if (!layout) return fail(layout.error());
  const Result<Mat> mat = build_mat(*job, *layout);
  if (!mat) return fail(mat.error());
  std::printf("mat %s x %s\n", describe(layout->width, job->scale).c_str(),
              describe(layout->height, job->scale).c_str());

  const Result<CuttingPlan> plan = plan_cutting(*mat, default_cutter());
  if (!plan) return fail(plan.error());
  std::printf("%zu stages of cutting\n", plan->stages.size());

  const Result<std::string> pdf = render_template(*job, cuts_of(*mat), {});
  if (!pdf) return fail(pdf.error());
  const auto written = replace_file("template.pdf", *pdf);
  if (!written) std::fprintf(stderr, "%s\n", written.error().c_str());
  return written ? 0 : 1;
}
