// The worked examples, from the job file to the measured template. The jobs in tests/data/worked
// name their sources. Measured on a page of PDF user units of 1/72 in (ISO 32000-1, 8.3.2.3) by
// MuPDF; 0.01 mm is 0.0004 in.

#include <catch2/catch.hpp>

#include "tests/oracle/measured_mat.h"
#include "tests/oracle/program.h"

using oracle::MeasuredMat;
using oracle::MeasuredWindow;

namespace {

// Under-mats as large as the top mat, as the examples have them, unless they are taped.
std::vector<MeasuredMat> measured(const std::string& job,
                                  const std::string& option = "--separate") {
  const std::string folder = oracle::scratch_folder("worked-" + job);
  const std::string pdf = folder + "/template.pdf";
  const oracle::Run run =
      oracle::mullion({"template", oracle::test_data("worked/" + job + ".xml"), "-o", pdf, option});
  INFO(run.err);
  REQUIRE(run.status == 0);
  std::vector<MeasuredMat> layers;
  for (const oracle::PdfPage& page : oracle::read_pdf(pdf)) {
    layers.push_back(oracle::measure_template(page));
  }
  return layers;
}

Approx inches(double value) {
  return Approx(value).margin(0.0004).epsilon(0);
}
Approx mm(double value) {
  return inches(value / 25.4);
}

}  // namespace

TEST_CASE("worked example 1: a frame for 14 x 11 in glass gets borders of 2 1/8 and 1 5/8 in") {
  const MeasuredMat mat = measured("ready_made_frame").at(0);
  CHECK(mat.width == inches(14));
  CHECK(mat.height == inches(11));
  const MeasuredWindow& w = mat.windows.at(0);
  CHECK(w.left == inches(2.125));
  CHECK(mat.width - w.right == inches(2.125));
  CHECK(w.top == inches(1.625));
  CHECK(mat.height - w.bottom == inches(1.625));
}

TEST_CASE("worked example 2: the back mat's window for 216 x 279 mm is 212 x 275 mm") {
  const auto layers = measured("metric_opening");
  REQUIRE(layers.size() == 2);
  const MeasuredMat& back = layers[1];
  CHECK(back.width == mm(476));
  CHECK(back.height == mm(413));
  CHECK(back.windows.at(0).right - back.windows[0].left == mm(212));
  CHECK(back.windows[0].bottom - back.windows[0].top == mm(275));
}

TEST_CASE(
    "an under-mat that is taped is drawn on its own blank, 1/8 in or 3 mm smaller all round") {
  const auto metric = measured("metric_opening"), taped = measured("metric_opening", "--trim=3 mm");
  CHECK(taped[1].width == Approx(metric[1].width - 6 / 25.4).margin(0.0004));
  CHECK(taped[1].height == Approx(metric[1].height - 6 / 25.4).margin(0.0004));
  CHECK(taped[1].windows.at(0).left ==
        Approx(metric[1].windows.at(0).left - 3 / 25.4).margin(0.0004));
  CHECK(taped[0].width == metric[0].width);
  const auto inch = measured("triple_mat_lines"),
             usual = measured("triple_mat_lines", "--trim=1/8");
  for (std::size_t i : {1u, 2u}) {
    CHECK(usual[i].width == inches(inch[i].width - 0.25));
    CHECK(usual[i].windows.at(0).top == inches(inch[i].windows.at(0).top - 0.125));
  }
}

TEST_CASE("worked example 3: the bottom border is 1/2 in wider than the top, the sides are equal") {
  const MeasuredMat mat = measured("wider_bottom").at(0);
  const MeasuredWindow& w = mat.windows.at(0);
  CHECK((mat.height - w.bottom) - w.top == inches(0.5));
  CHECK(w.left == inches(mat.width - w.right));
}

TEST_CASE(
    "worked example 4: the optical centre of 8 x 10 in 16 x 20 in leaves 4, 3 3/4, 6 1/4 in") {
  const MeasuredMat mat = measured("optical_centre").at(0);
  const MeasuredWindow& w = mat.windows.at(0);
  CHECK(w.left == inches(4));
  CHECK(mat.width - w.right == inches(4));
  CHECK(w.top == inches(3.75));
  CHECK(mat.height - w.bottom == inches(6.25));
}

TEST_CASE(
    "worked example 5: a triple mat's lines lie 1/8 and 3/8 in inside the first, line to line") {
  const auto layers = measured("triple_mat_lines");
  REQUIRE(layers.size() == 3);
  CHECK(layers[0].windows.at(0).left == inches(2));
  CHECK(layers[1].windows.at(0).left == inches(2 + 0.125));
  CHECK(layers[2].windows.at(0).left == inches(2 + 0.375));
  CHECK(layers[2].windows[0].top == inches(2 + 0.375));
}

TEST_CASE("worked example 5: as the eye sees it each lower line lies a thickness further in") {
  const auto layers = measured("triple_mat_seen");
  REQUIRE(layers.size() == 3);
  CHECK(layers[0].windows.at(0).left == inches(2));
  CHECK(layers[1].windows.at(0).left == inches(2 + 0.125 + 0.0625));
  CHECK(layers[2].windows.at(0).left == inches(2 + 0.375 + 0.125));
}

TEST_CASE("the template shows the board from behind: left and right change places") {
  const MeasuredMat mat = measured("asymmetric").at(0);
  const MeasuredWindow& w = mat.windows.at(0);
  CHECK(w.left == inches(5));
  CHECK(mat.width - w.right == inches(2));
  CHECK(w.top == inches(1.5));
  CHECK(mat.height - w.bottom == inches(3));
}

TEST_CASE("cut lines run past the corners by the board's thickness") {
  const MeasuredMat mat = measured("ready_made_frame").at(0);
  CHECK(mat.windows.at(0).over_cut == inches(0.0625));
}
