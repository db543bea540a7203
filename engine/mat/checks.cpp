#include "engine/mat/checks.h"

#include "engine/mat/findings.h"

namespace mullion {

Problems check_mat(const Job& job, const Layout& layout, const Mat& mat, const Locale& locale) {
  Findings findings(job, layout, mat, locale);
  check_windows(findings);
  check_bars(findings);
  check_pictures(findings);
  check_board(findings);
  check_grooves(findings);
  return findings.take();
}

}  // namespace mullion
