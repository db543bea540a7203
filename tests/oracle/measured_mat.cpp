#include "tests/oracle/measured_mat.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace oracle {
namespace {

constexpr double board_line = 0.8, cut_line = 0.6;  // widths that the template documents, in points
constexpr double shortest_cut = 15;                 // points; centre marks are shorter

bool near(double a, double b) {
  return std::abs(a - b) < 1e-3;
}

PdfLine board_of(const PdfPage& page) {
  for (const PdfStroke& stroke : page.strokes) {
    if (!near(stroke.width, board_line) || !stroke.closed) continue;
    PdfLine box{1e9, 1e9, -1e9, -1e9};
    for (const PdfLine& line : stroke.lines) {
      box.x1 = std::min(box.x1, line.x1);
      box.y1 = std::min(box.y1, line.y1);
      box.x2 = std::max(box.x2, line.x1);
      box.y2 = std::max(box.y2, line.y1);
    }
    return box;
  }
  throw std::runtime_error("the page shows no board");
}

}  // namespace

MeasuredMat measure_template(const PdfPage& page) {
  const PdfLine board = board_of(page);
  std::vector<PdfLine> across, down;
  for (const PdfStroke& stroke : page.strokes) {
    if (!near(stroke.width, cut_line) || stroke.grey > 0.01) continue;
    for (const PdfLine& line : stroke.lines) {
      const bool inside =
          std::min(line.x1, line.x2) > board.x1 && std::max(line.x1, line.x2) < board.x2 &&
          std::min(line.y1, line.y2) > board.y1 && std::max(line.y1, line.y2) < board.y2;
      if (!inside || line.length() < shortest_cut) continue;
      if (line.is_horizontal()) across.push_back(line);
      if (line.is_vertical()) down.push_back(line);
    }
  }
  if (across.size() % 2 != 0 || across.size() != down.size()) {
    throw std::runtime_error("the cut lines do not pair");
  }
  // The template draws each window's two lines across one after the other, then the two down.
  MeasuredMat out{(board.x2 - board.x1) / 72, (board.y2 - board.y1) / 72, {}};
  for (std::size_t i = 0; i + 1 < across.size(); i += 2) {
    const PdfLine &top = across[i], &bottom = across[i + 1], &left = down[i], &right = down[i + 1];
    MeasuredWindow window{(left.x1 - board.x1) / 72, (top.y1 - board.y1) / 72,
                          (right.x1 - board.x1) / 72, (bottom.y1 - board.y1) / 72, 0};
    window.over_cut =
        std::min({left.x1 - std::min(top.x1, top.x2), std::max(bottom.x1, bottom.x2) - right.x1,
                  top.y1 - std::min(left.y1, left.y2), std::max(right.y1, right.y2) - bottom.y1}) /
        72;
    out.windows.push_back(window);
  }
  std::sort(out.windows.begin(), out.windows.end(), [](const auto& a, const auto& b) {
    return a.left != b.left ? a.left < b.left : a.top < b.top;
  });
  return out;
}

}  // namespace oracle
