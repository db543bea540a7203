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
  // One set of sheets for all layers, or one for each.
  REQUIRE((boards.size() == 1 || boards.size() == cuts.layers.size()));
  for (std::size_t i = 0; i < cuts.layers.size(); ++i) {
    const JoinedSheets& board = boards[boards.size() == 1 ? 0 : i];
    CHECK(board.worst_mark < hundredth_mm);
    CHECK(missing_lines(board.whole, cuts.layers[i]) == "");
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

TEST_CASE("a double mat is one set of sheets where its lines are legible together") {
  const std::string folder = oracle::scratch_folder("tiled-together");
  std::string xml = oracle::read_file(oracle::gallery("double-mat.xml"));
  const auto boards = [&](const std::vector<std::string>& words) {
    std::vector<std::string> all{"--paper", "letter"};
    all.insert(all.end(), words.begin(), words.end());
    return oracle::join_sheets(
        oracle::drawn_pages(template_of(folder + "/job.xml", folder + "/mat.pdf", all)));
  };
  oracle::write_file(folder + "/job.xml", xml);
  CHECK(boards({}).size() == 1);
  CHECK(boards({"--by-layer"}).size() == 2);
  // A reveal of 1/32 in, and the board's 1/16 in: the lines lie 3/32 in apart.
  const std::size_t at = xml.find("reveal=\"1/4\"");
  REQUIRE(at != std::string::npos);
  oracle::write_file(folder + "/job.xml", xml.replace(at, 12, "reveal=\"1/32\""));
  CHECK(boards({}).size() == 2);
}

TEST_CASE("sheets without a line are left out, said so, and the rest still lie true") {
  const std::string folder = oracle::scratch_folder("tiled-sparse");
  oracle::write_file(
      folder + "/small.xml",
      "<job version=\"1\" unit=\"in\" reference=\"S\"><layers><layer board=\"Chalk\"/>"
      "</layers><outer width=\"40\" height=\"60\"/><arrange><opening width=\"3/8\" "
      "height=\"3/8\"/></arrange></job>");
  const std::string pdf =
      template_of(folder + "/small.xml", folder + "/small.pdf", {"--paper", "letter"});
  check_joined(folder + "/small.xml", pdf);
  const auto pages = oracle::drawn_pages(pdf);
  const auto boards = oracle::join_sheets(pages);
  const std::size_t grid =
      static_cast<std::size_t>(boards.at(0).rows) * static_cast<std::size_t>(boards[0].columns);
  // The frame of the board, the opening, and a way to it: little more than half of the grid.
  CHECK(pages.size() - 1 < grid * 7 / 10);
  CHECK(oracle::text_of(pages[0]).find(std::to_string(grid - pages.size() + 1) +
                                       " sheets without a line are left out") != std::string::npos);
}

TEST_CASE("as few sheets as will do are given where they are asked for, and spoken of elsewhere") {
  const std::string folder = oracle::scratch_folder("tiled-fewest");
  int spoken = 0;
  for (const std::string& job : all_jobs()) {
    const auto pages = [&](const std::vector<std::string>& words) {
      std::vector<std::string> all{"--paper", "letter", "--layer", "1"};
      all.insert(all.end(), words.begin(), words.end());
      return oracle::drawn_pages(template_of(job, folder + "/mat.pdf", all));
    };
    const auto usual = pages({}), fewest = pages({"--fewest"});
    INFO(job);
    CHECK(fewest.size() <= usual.size());
    std::string text = oracle::text_of(usual[0]);
    std::replace(text.begin(), text.end(), '\n', ' ');
    const bool said = text.find("With --fewest") != std::string::npos;
    spoken += said ? 1 : 0;
    if (fewest.size() < usual.size()) CHECK(said);
  }
  CHECK(spoken > 0);
}
