// A double mat for a picture of 10 x 8 in, from the job to its template and its cutting plan.

#include <cstdio>

#include "engine/cuts/plan/plan.h"
#include "engine/file/file.h"
#include "engine/layout/layout.h"
#include "engine/mat/mat.h"
#include "render/template/template.h"

using namespace mullion;

Job double_mat() {
  Picture dune;
  dune.id = "dune";
  dune.width = inches(10);
  dune.height = inches(8);

  Layer top, under;
  top.name = "Top mat";
  under.name = "Under-mat";
  under.reveal = {default_reveal, default_reveal, default_reveal, default_reveal};

  Opening window;
  window.id = "window";
  window.picture = "dune";

  Job job;
  job.reference = "W-0900";
  job.pictures = {dune};
  job.layers = {top, under};
  job.borders.left = job.borders.right = job.borders.top = job.borders.bottom_size = inches(3);
  job.arrangement.what = window;
  return job;
}

int fail(const Problems& problems) {
  for (const Problem& problem : problems) std::fprintf(stderr, "%s\n", to_string(problem).c_str());
  return 1;
}

int main() {
  const Job job = double_mat();
  const Result<Layout> layout = lay_out(job);
  if (!layout) return fail(layout.error());
  const Result<Mat> mat = build_mat(job, *layout);
  if (!mat) return fail(mat.error());
  std::printf("mat %s x %s\n", describe(layout->width, job.scale).c_str(),
              describe(layout->height, job.scale).c_str());

  const Result<CuttingPlan> plan = plan_cutting(*mat, default_cutter());
  if (!plan) return fail(plan.error());
  std::printf("%zu stages of cutting\n", plan->stages.size());

  const Result<std::string> pdf = render_template(job, cuts_of(*mat), {});
  if (!pdf) return fail(pdf.error());
  const auto written = replace_file("template.pdf", *pdf);
  if (!written) std::fprintf(stderr, "%s\n", written.error().c_str());
  return written ? 0 : 1;
}
