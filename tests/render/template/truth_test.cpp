// Every line of the layout is looked for in the file that goes to the printer, by readers that are
// not ours. 0.01 mm is 0.0283 pt; PDF user units are 1/72 in (ISO 32000-1, 8.3.2.3).

#include <catch2/catch.hpp>
#include <filesystem>

#include "tests/oracle/program.h"
#include "tests/render/template/lines_of_layer.h"
#include "tests/render/template/made.h"

using namespace mullion;
using namespace made;

namespace {

std::string stem(const std::string& path) {
  return std::filesystem::path(path).stem().string();
}

void check_pages(const std::vector<std::string>& jobs, oracle::Reader reader) {
  const std::string folder = oracle::scratch_folder("template-truth");
  for (const std::string& job : jobs) {
    INFO(job);
    const Mat mat = mat_of(job);
    const Cuts cuts = cuts_of(mat);
    const std::string pdf = template_of(job, folder + "/" + stem(job) + ".pdf");
    const auto pages = oracle::drawn_pages(pdf, reader);
    REQUIRE(pages.size() == cuts.layers.size());
    for (std::size_t i = 0; i < pages.size(); ++i) {
      CHECK(missing_lines(pages[i], cuts.layers[i]) == "");
    }
  }
}

}  // namespace

TEST_CASE("MuPDF finds every cut and face edge of every job within 0.01 mm of the layout") {
  check_pages(all_jobs(), oracle::Reader::mupdf);
}

TEST_CASE("Poppler finds every cut and face edge within 0.01 mm of the layout") {
  check_pages(some_jobs(), oracle::Reader::poppler);
}

TEST_CASE("librsvg finds every cut of every layer in the SVG") {
  const std::string folder = oracle::scratch_folder("template-truth-svg");
  for (const std::string& job : some_jobs()) {
    INFO(job);
    const Mat mat = mat_of(job);
    const Cuts cuts = cuts_of(mat);
    for (const BoardCuts& layer : cuts.layers) {
      const std::string number = std::to_string(layer.layer->number);
      const std::string svg =
          template_of(job, folder + "/" + stem(job) + number + ".svg", {"--layer", number});
      CHECK(missing_lines(oracle::drawn_svg(svg), layer) == "");
    }
  }
}

TEST_CASE("a line 0.05 mm off its place, or the board seen from the front, would be noticed") {
  const std::string folder = oracle::scratch_folder("template-untruth");
  const std::string job = oracle::test_data("worked/asymmetric.xml");
  const Mat mat = mat_of(job);
  const Cuts cuts = cuts_of(mat);
  const auto page = oracle::drawn_pages(template_of(job, folder + "/template.pdf")).at(0);
  const BoardCuts& layer = cuts.layers.at(0);
  const BoardBehind board(page, layer);
  Rect rect = layer.windows().at(0).back;
  REQUIRE(shows_straight_cuts(page, board, rect, layer.over_cut));
  CHECK_FALSE(shows_straight_cuts(page, board, rect, layer.over_cut + millimetres(1)));
  rect.left += Length::from_ticks(80);
  CHECK_FALSE(shows_straight_cuts(page, board, rect, layer.over_cut));
  const Outline front = mirrored(layer.windows()[0].back_edge, mat.outer.width());
  CHECK(straying(oracle::NearestInk(page, false), board, front) > 10 * hundredth_mm);
}
