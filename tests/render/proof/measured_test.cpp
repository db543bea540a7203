// The proof, measured on its page by MuPDF. The expected figures are worked out by hand from the
// gallery's jobs: a picture lies 1/8 in outside its opening on every side.

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "tests/oracle/pdf.h"
#include "tests/oracle/program.h"

using oracle::PdfLine;
using oracle::PdfPage;

namespace {

PdfPage proof_of(const std::string& job) {
  const std::string pdf = oracle::scratch_folder("proof-" + job) + "/proof.pdf";
  const oracle::Run run = oracle::mullion({"proof", oracle::gallery(job + ".xml"), "-o", pdf});
  INFO(run.err);
  REQUIRE(run.status == 0);
  const auto pages = oracle::read_pdf(pdf);
  REQUIRE(pages.size() == 1);
  return pages.front();
}

struct Drawn {
  double scale = 0;  // points of the page per inch of the piece
  PdfLine mat;
};

// The mat is the largest filled area of the mat's proportions around the first picture.
Drawn mat_on(const PdfPage& page, double width, double height) {
  Drawn out;
  for (const PdfLine& fill : page.fills) {
    const double w = fill.x2 - fill.x1, h = fill.y2 - fill.y1;
    const bool holds =
        !page.images.empty() && fill.x1 < page.images[0].x1 && fill.x2 > page.images[0].x2;
    if (holds && std::abs(w / h - width / height) < 1e-3 && w / width > out.scale) {
      out = {w / width, fill};
    }
  }
  REQUIRE(out.scale > 0);
  return out;
}

void check_picture(const Drawn& drawn, const PdfLine& image, double left, double top, double width,
                   double height) {
  const double one_pixel =
      72.0 / 150 / drawn.scale;  // of a screen at 150 dpi, in inches of the piece
  CHECK((image.x1 - drawn.mat.x1) / drawn.scale == Approx(left).margin(one_pixel));
  CHECK((image.y1 - drawn.mat.y1) / drawn.scale == Approx(top).margin(one_pixel));
  CHECK((image.x2 - image.x1) / drawn.scale == Approx(width).margin(one_pixel));
  CHECK((image.y2 - image.y1) / drawn.scale == Approx(height).margin(one_pixel));
}

}  // namespace

TEST_CASE(
    "a proof is one page of 8 1/2 x 11 in for a job in inches and A4 (ISO 216) for one in "
    "millimetres") {
  const PdfPage letter = proof_of("double-mat"), a4 = proof_of("triple-mat");
  CHECK(letter.width == Approx(8.5 * 72));
  CHECK(letter.height == Approx(11 * 72));
  CHECK(a4.width == Approx(210 / 25.4 * 72).margin(0.01));
  CHECK(a4.height == Approx(297 / 25.4 * 72).margin(0.01));
}

TEST_CASE("a picture in a double mat lies on the proof where the mat has it") {
  const PdfPage page = proof_of("double-mat");
  const Drawn drawn = mat_on(page, 16, 14);
  REQUIRE(page.images.size() == 1);
  check_picture(drawn, page.images[0], 3, 3, 10, 8);
}

TEST_CASE("a title and three pictures lie on the proof as the job arranges them, not mirrored") {
  const PdfPage page = proof_of("title-and-three");
  const Drawn drawn = mat_on(page, 26.75, 13);
  std::vector<PdfLine> images = page.images;
  REQUIRE(images.size() == 4);
  std::sort(images.begin(), images.end(), [](const PdfLine& a, const PdfLine& b) {
    return std::abs(a.y1 - b.y1) > 1 ? a.y1 < b.y1 : a.x1 < b.x1;
  });
  check_picture(drawn, images[0], 7.375, 2.375, 12, 2);
  check_picture(drawn, images[1], 2.375, 5.125, 7, 5);
  check_picture(drawn, images[2], 9.875, 5.125, 7, 5);
  check_picture(drawn, images[3], 17.375, 5.125, 7, 5);
}

TEST_CASE("a proof says whose it is, what it is made of and what is approved") {
  const std::string pdf = oracle::scratch_folder("proof-text") + "/proof.pdf";
  REQUIRE(oracle::mullion({"proof", oracle::gallery("double-mat.xml"), "-o", pdf}).status == 0);
  const std::string text = oracle::pdf_text(pdf);
  for (const char* words : {"Ines Halloway", "Boat, two sails", "W-0103", "2026-03-03", "Chalk",
                            "Slate", "I approve", "Signature"}) {
    INFO(words);
    CHECK(text.find(words) != std::string::npos);
  }
  CHECK(oracle::run({"qpdf", "--check", pdf}).status == 0);
}

TEST_CASE("the same job gives the same proof, byte for byte") {
  const std::string one = oracle::scratch_folder("proof-same-1"),
                    two = oracle::scratch_folder("proof-same-2");
  for (const std::string ending : {".pdf", ".svg", ".png"}) {
    for (const std::string& folder : {one, two}) {
      REQUIRE(oracle::mullion(
                  {"proof", oracle::gallery("weighted-bottom.xml"), "-o", folder + "/p" + ending})
                  .status == 0);
    }
    CHECK(oracle::read_file(one + "/p" + ending) == oracle::read_file(two + "/p" + ending));
  }
}
