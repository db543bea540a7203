#include <variant>

#include "engine/job/read.h"
#include "engine/job/write.h"
#include "engine/layout/layout.h"
#include "engine/mat/checks.h"
#include "engine/mat/mat.h"
#include "tests/fuzz/fuzz.h"

namespace {

using namespace mullion;

constexpr std::size_t openings_laid_out = 12;  // more would measure the solver's patience

struct Openings {
  std::size_t count = 0;
  bool in_files = false;  // an outline that another file holds
};

void count(const Node& node, Openings& openings) {
  if (const auto* group = std::get_if<Group>(&node.what)) {
    for (const Node& child : group->children) count(child, openings);
    return;
  }
  ++openings.count;
  openings.in_files |= std::get<Opening>(node.what).shape.kind == ShapeKind::outline;
}

bool is_small(const Job& job) {
  Openings openings;
  count(job.arrangement, openings);
  return openings.count <= openings_laid_out && !openings.in_files;
}

void lay_out_and_check(const Job& job) {
  const Result<Layout> layout = lay_out(job);
  if (!layout) return fuzz::must(!layout.error().empty());
  const Result<Mat> mat = build_mat(job, *layout);
  if (!mat) return fuzz::must(!mat.error().empty());
  check_mat(job, *layout, *mat);
}

}  // namespace

// A job that was read is written, and what is written is read as the same job; a small one is laid
// out, built and checked without a fault.
int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const Result<Job> job = parse_job(fuzz::text_of(data, size), "fuzz.xml", Need::pictures);
  if (!job) {
    fuzz::must(!job.error().empty());
    return 0;
  }
  const std::string written = write_job(*job);
  const Result<Job> again = parse_job(written, "fuzz.xml", Need::pictures);
  fuzz::must(again.has_value());
  fuzz::must(write_job(*again) == written);
  if (is_arranged(*job) && is_small(*job)) lay_out_and_check(*job);
  return 0;
}
