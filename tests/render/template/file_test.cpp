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

TEST_CASE("a viewer is asked to print one-sided and not to scale (ISO 32000-1, table 150)") {
  const std::string folder = oracle::scratch_folder("template-scaling");
  const std::string pdf = made("equal-borders", ".pdf", folder);
  const std::string plain = folder + "/plain.pdf";
  REQUIRE(oracle::run({"qpdf", "--qdf", "--object-streams=disable", pdf, plain}).status == 0);
  CHECK(oracle::read_file(plain).find("/PrintScaling /None") != std::string::npos);
  CHECK(oracle::read_file(plain).find("/Duplex /Simplex") != std::string::npos);
}

TEST_CASE("the same job gives the same bytes") {
  const std::string one = oracle::scratch_folder("template-same-1");
  const std::string two = oracle::scratch_folder("template-same-2");
  for (const char* ending : {".pdf", ".svg", ".png"}) {
    CHECK(oracle::read_file(made("equal-borders", ending, one)) ==
          oracle::read_file(made("equal-borders", ending, two)));
  }
}

TEST_CASE("a PNG is written for each layer and named; an SVG holds all layers as groups") {
  const std::string folder = oracle::scratch_folder("template-layers");
  const auto run = [&](const std::vector<std::string>& words) {
    std::vector<std::string> all{"template", oracle::gallery("double-mat.xml"), "-o"};
    all.insert(all.end(), words.begin(), words.end());
    return oracle::mullion(all).out;
  };
  CHECK(run({folder + "/mat.png"}) == "wrote " + folder + "/mat-1.png, " + folder + "/mat-2.png\n");
  CHECK_FALSE(std::filesystem::exists(folder + "/mat.png"));
  CHECK(run({folder + "/second.png", "--layer", "2"}) == "wrote " + folder + "/second.png\n");
  CHECK(oracle::read_file(folder + "/second.png") == oracle::read_file(folder + "/mat-2.png"));
  CHECK(oracle::read_file(folder + "/mat-1.png") != oracle::read_file(folder + "/mat-2.png"));
  run({folder + "/mat.svg"});
  const std::string svg = oracle::read_file(folder + "/mat.svg");
  CHECK(svg.find("id=\"layer-1\"") != std::string::npos);
  CHECK(svg.find("id=\"layer-2\"") != std::string::npos);
}

// Names of media: PWG 5101.1. CUPS reads the command as it stands.
TEST_CASE("after the run stands how the pages are printed, each on its own paper") {
  const std::string folder = oracle::scratch_folder("template-print");
  const auto told = [&](const std::string& paper) {
    return oracle::mullion({"template", oracle::gallery("equal-borders.xml"), "-o",
                            folder + "/it is.pdf", "--paper", paper})
        .out;
  };
  const std::string file = "'" + folder + "/it is.pdf'\n";
  CHECK(told("letter") == "wrote " + folder +
                              "/it is.pdf\nprint: lp -o media=na_letter_8.5x11in -o "
                              "sides=one-sided -o print-scaling=none " +
                              file);
  const std::string large = told("arch-c");
  CHECK(large.find("media=na_letter_8.5x11in -o sides=one-sided -o print-scaling=none -P 1 '") !=
        std::string::npos);
  CHECK(large.find("media=na_arch-c_18x24in -o sides=one-sided -o print-scaling=none -P 2 '") !=
        std::string::npos);
  CHECK(told("8 x 13 in").find("media=custom_8x13in_8x13in ") != std::string::npos);
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
       {"BACK OF BOARD", "print one-sided at 100 %, no scaling", "Layer 1 of 2: Top mat",
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
