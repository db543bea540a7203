#include "render/sheetplan/labels.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "render/sheetplan/scan_code.h"
#include "tests/oracle/pdf.h"
#include "tests/oracle/program.h"

using namespace mullion;

namespace {

std::vector<BlankLabel> labels(int count) {
  std::vector<BlankLabel> result;
  for (int i = 1; i <= count; ++i) {
    result.push_back({"W-0" + std::to_string(100 + i), "Under-mat", "Lagoon", 1, 3, inches(16),
                      inches(20), i, "W-0" + std::to_string(100 + i) + "/2/1"});
  }
  return result;
}

std::string write(const std::string& name, const std::string& bytes) {
  const std::string path = oracle::scratch_folder(name) + "/labels.pdf";
  oracle::write_file(path, bytes);
  return path;
}

// What a scanner reads that is held over the label at a place of the first page, counted from 0.
std::string scanned(const std::string& pdf, const LabelSheet& sheet, int place) {
  constexpr double dpi = 200;
  const auto pixels = [](Length length) {
    return std::to_string(std::lround(to_inches(length) * dpi));
  };
  const std::string image = pdf.substr(0, pdf.rfind('/')) + "/label";
  REQUIRE(oracle::run({"pdftoppm", "-r", "200", "-gray", "-png", "-singlefile", "-l", "1", "-x",
                       pixels(sheet.left + sheet.step_right * (place % sheet.columns)), "-y",
                       pixels(sheet.top + sheet.step_down * (place / sheet.columns)), "-W",
                       pixels(sheet.width), "-H", pixels(sheet.height), pdf, image})
              .status == 0);
  return oracle::run({"zbarimg", "--quiet", "--raw", image + ".png"}).out;
}

}  // namespace

TEST_CASE("a scanner reads the code of every label on every sheet of labels") {
  for (const LabelSheet& sheet : label_sheets()) {
    INFO(sheet.name);
    const auto wanted = labels(4);
    const std::string path = write("labels", render_labels(wanted, sheet, {}));
    for (std::size_t i = 0; i < wanted.size(); ++i) {
      CHECK(scanned(path, sheet, static_cast<int>(i)) == wanted[i].code + "\n");
    }
    CHECK(oracle::run({"qpdf", "--check", path}).status == 0);
  }
}

TEST_CASE("labels lie on their page and do not overlap") {
  for (const LabelSheet& sheet : label_sheets()) {
    INFO(sheet.name);
    CHECK(sheet.left + sheet.step_right * (sheet.columns - 1) + sheet.width <= sheet.page.width);
    CHECK(sheet.top + sheet.step_down * (sheet.rows - 1) + sheet.height <= sheet.page.height);
    CHECK(sheet.width <= sheet.step_right);
    CHECK(sheet.height <= sheet.step_down);
  }
}

TEST_CASE("every drawn mark of a label lies inside its own label") {
  const LabelSheet& sheet = *find_label_sheet("letter-30");
  const auto pages = oracle::read_pdf(write("label_marks", render_labels(labels(30), sheet, {})));
  REQUIRE(pages.size() == 1);
  REQUIRE(!pages[0].fills.empty());
  for (const oracle::PdfLine& box : pages[0].fills) {
    const double x = box.x1 - to_points(sheet.left), y = box.y1 - to_points(sheet.top);
    const double column = std::floor(x / to_points(sheet.step_right));
    const double row = std::floor(y / to_points(sheet.step_down));
    CHECK(box.x2 - to_points(sheet.left) <=
          column * to_points(sheet.step_right) + to_points(sheet.width) + 0.01);
    CHECK(box.y2 - to_points(sheet.top) <=
          row * to_points(sheet.step_down) + to_points(sheet.height) + 0.01);
  }
}

TEST_CASE("labels that are gone from the first sheet are passed over") {
  LabelOptions options;
  options.skip = 29;
  const std::string path =
      write("labels_skip", render_labels(labels(2), *find_label_sheet("letter-30"), options));
  CHECK(oracle::read_pdf(path).size() == 2);
  CHECK(scanned(path, *find_label_sheet("letter-30"), 0).empty());
  CHECK(scanned(path, *find_label_sheet("letter-30"), 29) == "W-0101/2/1\n");
}

TEST_CASE("order, size and layer stand on the label in plain words") {
  const std::string text = oracle::pdf_text(
      write("labels_text", render_labels(labels(1), *find_label_sheet("a4-21"), {})));
  for (const char* word : {"W-0101", "16 x 20 in", "Under-mat, Lagoon", "1 of 3, sheet 1"}) {
    INFO(text);
    CHECK(text.find(word) != std::string::npos);
  }
}

TEST_CASE("a code that is too long is refused") {
  CHECK_THROWS_AS(scan_code(std::string(8000, 'x')), std::runtime_error);
}

TEST_CASE("a label keeps the end of a long reference, on two lines where one is too short") {
  const std::vector<std::string> references = {
      "2026-03-HOTEL-AT-THE-BRIDGE-ROOM-214", "2026-03-HOTEL-AT-THE-BRIDGE-ROOM-215",
      "Bilder der Ausstellung im Rathaus, zweiter Stock, Reihe 12"};
  for (const LabelSheet& sheet : label_sheets()) {
    INFO(sheet.name);
    std::vector<BlankLabel> wanted;
    for (const std::string& reference : references) {
      wanted.push_back({reference, "Under-mat", "Lagoon", 1, 3, inches(16), inches(20), 1, "code"});
    }
    const std::string path = write("long_labels", render_labels(wanted, sheet, {}));
    const std::string text = oracle::run({"pdftotext", "-raw", path, "-"}).out;
    std::string joined;
    for (const char c : text) {
      if (c != '\n' && c != ' ') joined += c;
    }
    for (const std::string& reference : references) {
      std::string bare;
      for (const char c : reference) {
        if (c != ' ') bare += c;
      }
      INFO(text);
      CHECK(joined.find(bare) != std::string::npos);
    }
  }
  // One that no two lines hold loses its middle alone.
  const std::string endless = "START" + std::string(300, 'x') + "END-77";
  const std::string path =
      write("endless_labels",
            render_labels({{endless, "Top", "Oat", 1, 1, inches(16), inches(20), 1, "code"}},
                          *find_label_sheet("letter-30"), {}));
  const std::string text = oracle::run({"pdftotext", "-raw", path, "-"}).out;
  CHECK(text.find("START") != std::string::npos);
  CHECK(text.find("END-77") != std::string::npos);
}

TEST_CASE("a label for the rack says size, board and id, and its code is the id") {
  RackLabel label;
  label.piece.id = "offcut-17";
  label.piece.board = {"Lagoon", {0x2f, 0x64, 0x70}, sixty_fourths(4)};
  label.piece.width = inches(23) + sixty_fourths(40);
  label.piece.height = inches(19) + sixty_fourths(40);
  label.piece.on_hand = 2;
  label.piece.offcut = true;
  label.origin = "from sheet 3";
  for (const LabelSheet& sheet : label_sheets()) {
    INFO(sheet.name);
    LabelOptions options;
    options.scale.increment = sixty_fourths(1);
    const std::string path = write("rack_labels", render_rack_labels({label}, sheet, options));
    for (const int place : {0, 1}) CHECK(scanned(path, sheet, place) == "offcut-17\n");
    CHECK(scanned(path, sheet, 2).empty());
    const std::string text = oracle::pdf_text(path);
    for (const char* words : {"offcut-17", "23 5/8 x 19 5/8 in", "Lagoon", "from sheet 3"}) {
      CHECK(text.find(words) != std::string::npos);
    }
  }
}
