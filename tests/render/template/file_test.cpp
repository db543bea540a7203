#include <catch2/catch.hpp>
#include <filesystem>

#include "tests/oracle/measured_mat.h"
#include "tests/oracle/program.h"

namespace {

const std::vector<std::string> gallery_jobs{"equal-borders",   "weighted-bottom",
                                            "double-mat",      "triple-mat",
                                            "title-and-three", "seven-picture-collage"};

std::string made(const std::string& job, const std::string& ending, const std::string& folder) {
  const std::string path = folder + "/" + job + ending;
  const oracle::Run run = oracle::mullion({"template", oracle::gallery(job + ".xml"), "-o", path});
  INFO(run.err);
  REQUIRE(run.status == 0);
  return path;
}

}  // namespace

TEST_CASE("qpdf finds nothing wrong with the templates, and their fonts are embedded") {
  const std::string folder = oracle::scratch_folder("template-check");
  for (const std::string& job : gallery_jobs) {
    INFO(job);
    const std::string pdf = made(job, ".pdf", folder);
    CHECK(oracle::run({"qpdf", "--check", pdf}).status == 0);
    const std::string fonts = oracle::run({"pdffonts", pdf}).out;
    CHECK(fonts.find("DejaVuSans") != std::string::npos);
    CHECK(fonts.find(" no ") == std::string::npos);
  }
}

TEST_CASE("a viewer is asked not to scale the print (ISO 32000-1, table 150)") {
  const std::string folder = oracle::scratch_folder("template-scaling");
  const std::string pdf = made("equal-borders", ".pdf", folder);
  const std::string plain = folder + "/plain.pdf";
  REQUIRE(oracle::run({"qpdf", "--qdf", "--object-streams=disable", pdf, plain}).status == 0);
  CHECK(oracle::read_file(plain).find("/PrintScaling /None") != std::string::npos);
}

TEST_CASE("the same job gives the same bytes") {
  const std::string one = oracle::scratch_folder("template-same-1");
  const std::string two = oracle::scratch_folder("template-same-2");
  for (const char* ending : {".pdf", ".svg", ".png"}) {
    CHECK(oracle::read_file(made("double-mat", ending, one)) ==
          oracle::read_file(made("double-mat", ending, two)));
  }
}

TEST_CASE("an SVG has its true size: 1 in of it is 96 px (CSS Values and Units) to librsvg") {
  const std::string folder = oracle::scratch_folder("template-svg");
  const std::string pdf = made("weighted-bottom", ".pdf", folder);
  const std::string svg = made("weighted-bottom", ".svg", folder);
  const std::string png = folder + "/svg.png";
  REQUIRE(oracle::run({"rsvg-convert", svg, "-o", png}).status == 0);
  const std::string bytes = oracle::read_file(png);
  const auto big_endian = [&](std::size_t at) {
    int value = 0;
    for (std::size_t i = 0; i < 4; ++i)
      value = value * 256 + static_cast<unsigned char>(bytes[at + i]);
    return value;
  };
  const oracle::PdfPage page = oracle::read_pdf(pdf).at(0);
  CHECK(big_endian(16) == Approx(page.width / 72 * 96).margin(1));
  CHECK(big_endian(20) == Approx(page.height / 72 * 96).margin(1));
}

TEST_CASE("every window of every gallery job is found on its template") {
  const std::string folder = oracle::scratch_folder("template-windows");
  const std::vector<std::size_t> windows{1, 1, 1, 1, 4, 7};
  for (std::size_t i = 0; i < gallery_jobs.size(); ++i) {
    INFO(gallery_jobs[i]);
    for (const auto& page : oracle::read_pdf(made(gallery_jobs[i], ".pdf", folder))) {
      CHECK(oracle::measure_template(page).windows.size() == windows[i]);
    }
  }
}

TEST_CASE("the page says what it is and how to print it") {
  const std::string folder = oracle::scratch_folder("template-text");
  const std::string text = oracle::pdf_text(made("double-mat", ".pdf", folder));
  for (const char* words :
       {"BACK OF BOARD", "print at 100 %, no scaling", "Layer 1 of 2: Top mat",
        "Layer 2 of 2: Under-mat", "Slate", "4 in", "100 mm", "diagonal 1.414 in"}) {
    INFO(words);
    CHECK(text.find(words) != std::string::npos);
  }
}

TEST_CASE("a run that fails leaves the file that was there") {
  const std::string folder = oracle::scratch_folder("template-kept");
  const std::string path = folder + "/kept.pdf";
  oracle::write_file(path, "older");
  oracle::write_file(folder + "/bad.xml", "<job version=\"1\">");
  CHECK(oracle::mullion({"template", folder + "/bad.xml", "-o", path}).status == 1);
  CHECK(oracle::read_file(path) == "older");
  CHECK(oracle::mullion({"template", folder + "/none.xml", "-o", path}).status == 3);
  CHECK(oracle::mullion({"template", oracle::gallery("double-mat.xml"), "-o", folder + "/a.doc"})
            .status == 2);
  CHECK(oracle::mullion({"template", oracle::gallery("double-mat.xml"), "-o", folder + "/no/a.pdf"})
            .status == 3);
}
