#include "engine/layout/faults.h"
#include "engine/mat/checks.h"

namespace mullion {

std::optional<std::set<Fault>> faults_of(const Job& job) {
  const std::optional<Layout> layout = laid_out(job);
  if (!layout) return std::nullopt;
  const Result<Mat> mat = build_mat(job, *layout);
  if (!mat) return std::nullopt;
  std::set<Fault> out;
  for (const Problem& one : check_mat(job, *layout, *mat)) {
    if (one.severity != Severity::error) continue;
    out.emplace(one.code, one.place.line, one.place.column);
  }
  return out;
}

}  // namespace mullion
