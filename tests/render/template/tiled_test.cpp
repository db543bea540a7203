// Boards that are put together from sheets by the marks on their joins, and then measured.

#include <catch2/catch.hpp>
#include <filesystem>

#include "tests/bench/grid_job.h"
#include "tests/oracle/joined_sheets.h"
#include "tests/oracle/program.h"
#include "tests/render/template/lines_of_layer.h"
#include "tests/render/template/made.h"

using namespace mullion;
using namespace made;
using oracle::JoinedSheets;

namespace {

// Checks every layer of the job on sheets of that paper.
void check_joined(const std::string& job, const std::string& pdf,
                  oracle::Reader reader = oracle::Reader::mupdf) {
  const Mat mat = mat_of(job);
  const Cuts cuts = cuts_of(mat);
  const std::vector<JoinedSheets> boards = oracle::join_sheets(oracle::drawn_pages(pdf, reader));
  REQUIRE(boards.size() == cuts.layers.size());
  for (std::size_t i = 0; i < boards.size(); ++i) {
    CHECK(boards[i].worst_mark < hundredth_mm);
    CHECK(missing_lines(boards[i].whole, cuts.layers[i]) == "");
  }
}

// Laid over one another, and cut and butted.
void check_both_modes(const std::string& job, const std::string& folder, const char* paper) {
  check_joined(job, template_of(job, folder + "/over.pdf", {"--paper", paper}));
  check_joined(job, template_of(job, folder + "/butt.pdf", {"--paper", paper, "--butt"}));
}

// A 40 x 60 in collage of 24 openings in two layers.
std::string large_job(const std::string& folder) {
  std::string job = bench::grid_job(24);
  job.insert(job.find("<arrange>"), "<outer width=\"60\" height=\"40\"/>");
  oracle::write_file(folder + "/large.xml", job);
  return folder + "/large.xml";
}

}  // namespace

TEST_CASE("every job, joined from sheets by their marks, is true to 0.01 mm") {
  const std::string folder = oracle::scratch_folder("tiled-jobs");
  for (const std::string& job : all_jobs()) {
    for (const char* paper : {"letter", "a3"}) {
      INFO(job << " on " << paper);
      check_both_modes(job, folder, paper);
    }
  }
}

TEST_CASE("a board joined from sheets of any paper is true to 0.01 mm") {
  const std::string folder = oracle::scratch_folder("tiled-papers");
  for (const std::string& job : {large_job(folder), oracle::test_data("worked/shapes.xml")}) {
    for (const char* paper :
         {"letter", "legal", "tabloid", "ansi-c", "ansi-d", "ansi-e", "a4", "a3", "a2", "a1", "a0",
          "roll-17", "roll-24", "roll-36", "roll-44", "13 x 19 in"}) {
      INFO(job << " on " << paper);
      check_both_modes(job, folder, paper);
    }
  }
}

TEST_CASE("Poppler sees joined sheets as MuPDF does") {
  const std::string folder = oracle::scratch_folder("tiled-poppler");
  const std::string job = large_job(folder);
  check_joined(job, template_of(job, folder + "/a4.pdf", {"--paper", "a4"}),
               oracle::Reader::poppler);
}

TEST_CASE("a sheet laid wrongly by 0.1 mm would be noticed") {
  const std::string folder = oracle::scratch_folder("tiled-wrong");
  const std::string job = oracle::gallery("equal-borders.xml");
  const std::string pdf = template_of(job, folder + "/t.pdf", {"--paper", "letter"});
  std::vector<oracle::DrawnPage> pages = oracle::drawn_pages(pdf);
  REQUIRE(oracle::join_sheets(pages).size() == 1);
  REQUIRE(oracle::join_sheets(pages)[0].worst_mark < hundredth_mm);
  // The last sheet as a printer gives it that stretches it by 0.1 %.
  for (oracle::Stroke& stroke : pages.back().strokes) {
    stroke.from.y *= 1.001;
    stroke.to.y *= 1.001;
  }
  CHECK(oracle::join_sheets(pages)[0].worst_mark > hundredth_mm);
}

TEST_CASE("a 40 x 60 in collage of 24 openings in two layers on Letter takes less than 400 kB") {
  const std::string folder = oracle::scratch_folder("tiled-size");
  const std::string job = large_job(folder);
  const std::string pdf = template_of(job, folder + "/letter.pdf", {"--paper", "letter"});
  CHECK(std::filesystem::file_size(pdf) < 400'000);
  CHECK(oracle::run({"qpdf", "--check", pdf}).status == 0);
  CHECK(oracle::run({"pdffonts", pdf}).out.find(" no ") == std::string::npos);
  check_joined(job, pdf);
}
