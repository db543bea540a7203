#pragma once

// A template's page, measured: the board's edge and the cut lines, in inches.

#include <vector>

#include "tests/oracle/pdf.h"

namespace oracle {

struct MeasuredWindow {
  double left = 0, top = 0, right = 0, bottom = 0;  // cut lines, from the board's left and top edge
  double over_cut = 0;                              // least run of a line past its corner
};

struct MeasuredMat {
  double width = 0, height = 0;
  std::vector<MeasuredWindow> windows;  // by rising left, then top, as the page shows them
};

MeasuredMat measure_template(const PdfPage& page);

}  // namespace oracle
