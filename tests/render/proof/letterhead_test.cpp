// The shop's name and logo at the head of a proof, as MuPDF and poppler find them in the file.

#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>

#include "tests/oracle/pdf.h"
#include "tests/oracle/program.h"
#include "tests/render/picture/files.h"

namespace {

const std::string job = R"(<job version="1" unit="in">
  <pictures><picture id="p" width="10" height="8"/></pictures>
  <layers><layer board="Oat"/></layers><borders all="3"/>
  <arrange><opening picture="p"/></arrange>
</job>)";

struct Shop {
  std::string folder = oracle::scratch_folder("letterhead");

  explicit Shop(const std::string& logo_bytes) {
    std::filesystem::create_directory(folder + "/marks");
    oracle::write_file(folder + "/job.xml", job);
    oracle::write_file(folder + "/shop.xml",
                       "<shop version=\"1\" name=\"Łąka &amp; Ørn\"\n"
                       "      logo=\"marks/logo.png\"/>");
    if (!logo_bytes.empty()) oracle::write_file(folder + "/marks/logo.png", logo_bytes);
  }
  oracle::Run proof(const std::string& name) const {
    return oracle::mullion(
        {"proof", folder + "/job.xml", "--shop", folder + "/shop.xml", "-o", folder + "/" + name});
  }
};

TEST_CASE("the head of a proof shows the shop's name and its whole logo in proportion") {
  for (const auto& [width, height] : {std::pair{120, 60}, {60, 120}, {1200, 60}}) {
    INFO(width << " x " << height);
    const Shop shop(files::grey_png(width, height, 90));
    const auto run = shop.proof("p.pdf");
    INFO(run.err);
    REQUIRE(run.status == 0);
    CHECK(oracle::pdf_text(shop.folder + "/p.pdf").find("Łąka & Ørn") != std::string::npos);
    const auto page = oracle::read_pdf(shop.folder + "/p.pdf").at(0);
    REQUIRE(page.images.size() == 1);
    const oracle::PdfLine logo = page.images.front();
    const double w = logo.x2 - logo.x1, h = logo.y2 - logo.y1;
    CHECK(w / h == Approx(double(width) / height).epsilon(0.02));
    CHECK(std::max(w / 160, h / 20) == Approx(1).epsilon(0.01));
    CHECK(logo.y2 < 72);
  }
}

TEST_CASE("a logo that cannot be shown is refused at its place in the shop file") {
  const std::string whole = files::grey_png(300, 200, 90);
  for (const std::string& bytes :
       {std::string(), std::string("no picture"), whole.substr(0, whole.size() / 2)}) {
    const Shop shop(bytes);
    oracle::write_file(shop.folder + "/p.pdf", "kept");
    const auto run = shop.proof("p.pdf");
    INFO(run.err);
    CHECK(run.status == 1);
    CHECK(run.err.find("shop.xml:1:1") != std::string::npos);
    CHECK(run.err.find("[picture-unreadable]") != std::string::npos);
    CHECK(oracle::read_file(shop.folder + "/p.pdf") == "kept");
  }
}

TEST_CASE("a shop without a logo has its name at the head") {
  const Shop shop("");
  oracle::write_file(shop.folder + "/shop.xml", "<shop version=\"1\" name=\"Plain and Square\"/>");
  REQUIRE(shop.proof("p.pdf").status == 0);
  CHECK(oracle::pdf_text(shop.folder + "/p.pdf").find("Plain and Square") != std::string::npos);
  CHECK(oracle::read_pdf(shop.folder + "/p.pdf").at(0).images.empty());
}

}  // namespace
