// Every line of the layout is looked for in the file that goes to the printer, by readers that are
// not ours. 0.01 mm is 0.0283 pt; PDF user units are 1/72 in (ISO 32000-1, 8.3.2.3).

#include <catch2/catch.hpp>
#include <filesystem>

#include "tests/oracle/drawn_page.h"
#include "tests/oracle/program.h"
#include "tests/render/template/made.h"

using namespace mullion;
using oracle::DrawnPage;
using oracle::Spot;

namespace {

constexpr double hundredth_mm = 0.01 / 25.4 * 72;

// The board on a page, seen from behind: x counts from the board's right edge as the eye sees it
// from the front.
class BoardBehind {
 public:
  BoardBehind(const DrawnPage& page, const MatLayer& layer)
      : width_(to_points(layer.outer.width())), right_(to_points(layer.outer.right)) {
    const auto corner =
        oracle::find_rectangle(page, width_, to_points(layer.outer.height()), hundredth_mm);
    if (!corner) throw std::runtime_error("the page shows no board of the layer's size");
    corner_ = {corner->x, corner->y - to_points(layer.outer.top)};
  }

  Spot place(double x_ticks, double y_ticks) const {
    return {corner_.x + right_ - x_ticks * 72 / ticks_per_inch,
            corner_.y + y_ticks * 72 / ticks_per_inch};
  }
  Spot place(Length x, Length y) const {
    return place(static_cast<double>(x.ticks()), static_cast<double>(y.ticks()));
  }

 private:
  double width_, right_;
  Spot corner_;
};

bool shows_straight_cuts(const DrawnPage& page, const BoardBehind& board, const Rect& r,
                         Length over) {
  const auto shown = [&](Length x1, Length y1, Length x2, Length y2) {
    return oracle::shows_line(page, board.place(x1, y1), board.place(x2, y2), hundredth_mm);
  };
  return shown(r.left - over, r.top, r.right + over, r.top) &&
         shown(r.left - over, r.bottom, r.right + over, r.bottom) &&
         shown(r.left, r.top - over, r.left, r.bottom + over) &&
         shown(r.right, r.top - over, r.right, r.bottom + over);
}

// The greatest distance of a point of the outline from a stroke.
double straying(const DrawnPage& page, const BoardBehind& board, const Outline& outline,
                bool dashed) {
  double most = 0;
  for (const Vector& v : flatten(outline, Length::from_ticks(16))) {
    most = std::max(most, oracle::distance_to_ink(page, board.place(v.x, v.y), dashed));
  }
  return most;
}

void check_layer(const DrawnPage& page, const MatLayer& layer) {
  const BoardBehind board(page, layer);
  for (const Window& window : layer.windows) {
    if (window.shape.kind == ShapeKind::rectangle) {
      CHECK(shows_straight_cuts(page, board, window.back, layer.board.thickness));
    }
    CHECK(straying(page, board, window.back_edge, false) < hundredth_mm);
    CHECK(straying(page, board, window.face_edge, true) < hundredth_mm);
  }
}

std::string stem(const std::string& path) {
  return std::filesystem::path(path).stem().string();
}

}  // namespace

TEST_CASE("MuPDF and Poppler find every cut and face edge within 0.01 mm of the layout") {
  const std::string folder = oracle::scratch_folder("template-truth");
  for (const std::string& job : made::all_jobs()) {
    INFO(job);
    const Mat mat = made::mat_of(job);
    const std::string pdf = made::template_of(job, folder + "/" + stem(job) + ".pdf");
    for (const auto reader : {oracle::Reader::mupdf, oracle::Reader::poppler}) {
      const auto pages = oracle::drawn_pages(pdf, reader);
      REQUIRE(pages.size() == mat.layers.size());
      for (std::size_t i = 0; i < pages.size(); ++i) check_layer(pages[i], mat.layers[i]);
    }
  }
}

TEST_CASE("librsvg finds every cut of every layer in the SVG") {
  const std::string folder = oracle::scratch_folder("template-truth-svg");
  for (const std::string& job : made::all_jobs()) {
    INFO(job);
    const Mat mat = made::mat_of(job);
    for (const MatLayer& layer : mat.layers) {
      const std::string number = std::to_string(layer.number);
      const std::string svg =
          made::template_of(job, folder + "/" + stem(job) + number + ".svg", {"--layer", number});
      check_layer(oracle::drawn_svg(svg), layer);
    }
  }
}

TEST_CASE("a line 0.05 mm off its place, or the board seen from the front, would be noticed") {
  const std::string folder = oracle::scratch_folder("template-untruth");
  const std::string job = oracle::test_data("worked/asymmetric.xml");
  const Mat mat = made::mat_of(job);
  const auto page = oracle::drawn_pages(made::template_of(job, folder + "/template.pdf")).at(0);
  const MatLayer& layer = mat.layers.at(0);
  const BoardBehind board(page, layer);
  Rect rect = layer.windows.at(0).back;
  REQUIRE(shows_straight_cuts(page, board, rect, layer.board.thickness));
  CHECK_FALSE(shows_straight_cuts(page, board, rect, layer.board.thickness + millimetres(1)));
  rect.left += Length::from_ticks(80);
  CHECK_FALSE(shows_straight_cuts(page, board, rect, layer.board.thickness));
  const Outline front = mirrored(layer.windows[0].back_edge, mat.outer.width());
  CHECK(straying(page, board, front, false) > 10 * hundredth_mm);
}
