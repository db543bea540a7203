#include <catch2/catch.hpp>
#include <vector>

#include "tests/oracle/program.h"
#include "tests/render/proof/chromium.h"
#include "tests/render/proof/measured_piece.h"

namespace {

using measured::Piece;

// Mat 16 x 20 in, borders left 3 and top 4 in; the opening of an 8 x 10 in picture is 7 3/4 x
// 9 3/4 in at the back. Board 1/8 in thick, bevel 45 degrees: the face edge lies 1/8 in outside it.
const char* job = R"(<job version="1" unit="in" reference="T-1">
  <wall colour="#00ff00"/>
  <pictures><picture id="p" width="8" height="10"/></pictures>
  <layers><layer board="Blue" colour="#2040d0" core="#ff2020" thickness="1/8"/></layers>
  <outer width="16" height="20"/>
  <borders left="3" top="4"/>
  <arrange><opening picture="p"/></arrange>
</job>)";

std::string proof(const std::string& folder, const std::string& file,
                  std::vector<std::string> more = {}) {
  oracle::write_file(folder + "/job.xml", job);
  std::vector<std::string> words{"proof", folder + "/job.xml", "-o", folder + "/" + file};
  words.insert(words.end(), more.begin(), more.end());
  const auto run = oracle::mullion(words);
  INFO(run.err);
  REQUIRE(run.status == 0);
  return folder + "/" + file;
}

struct Edge {
  const char* name;
  double inches, pixels;
};

double mean(const std::vector<Edge>& edges, double Edge::*what) {
  double sum = 0;
  for (const Edge& edge : edges) sum += edge.*what;
  return sum / static_cast<double>(edges.size());
}

// The scale of least squares, common to both directions: every edge is seen to half a pixel, so
// no two of them alone say it.
double fitted_scale(const std::vector<std::vector<Edge>>& directions) {
  double products = 0, squares = 0;
  for (const auto& edges : directions) {
    const double inches = mean(edges, &Edge::inches), pixels = mean(edges, &Edge::pixels);
    for (const Edge& edge : edges) {
      products += (edge.inches - inches) * (edge.pixels - pixels);
      squares += (edge.inches - inches) * (edge.inches - inches);
    }
  }
  return products / squares;
}

// Every edge lies within a device pixel of its place.
void check_positions(const Piece& piece) {
  const std::vector<std::vector<Edge>> directions = {
      {{"left", 0, piece.left},
       {"face left", 3 - 0.125, piece.face_left},
       {"back left", 3, piece.back_left},
       {"back right", 3 + 7.75, piece.back_right},
       {"face right", 3 + 7.75 + 0.125, piece.face_right},
       {"right", 16, piece.right}},
      {{"top", 0, piece.top},
       {"face top", 4 - 0.125, piece.face_top},
       {"back top", 4, piece.back_top},
       {"back bottom", 4 + 9.75, piece.back_bottom},
       {"face bottom", 4 + 9.75 + 0.125, piece.face_bottom},
       {"bottom", 20, piece.bottom}}};
  const double scale = fitted_scale(directions);
  CHECK(scale > 25);  // pixels to the inch: else a pixel says too little
  for (const auto& edges : directions) {
    const double inches = mean(edges, &Edge::inches), pixels = mean(edges, &Edge::pixels);
    for (const Edge& edge : edges) {
      INFO(edge.name);
      CHECK(edge.pixels == Approx(pixels + (edge.inches - inches) * scale).margin(1.0));
    }
  }
}

TEST_CASE("openings lie where the mat has them in the PDF, by poppler") {
  const std::string folder = oracle::scratch_folder("proof-pdf");
  const std::string pdf = proof(folder, "p.pdf");
  REQUIRE(
      oracle::run({"pdftoppm", "-r", "200", "-png", "-singlefile", pdf, folder + "/p"}).status ==
      0);
  check_positions(measured::measure_png(folder + "/p.png"));
}

TEST_CASE("openings lie where the mat has them in the SVG, by librsvg") {
  const std::string folder = oracle::scratch_folder("proof-svg");
  const std::string svg = proof(folder, "p.svg");
  REQUIRE(oracle::run({"rsvg-convert", "--zoom", "2", "-o", folder + "/p.png", svg}).status == 0);
  check_positions(measured::measure_png(folder + "/p.png"));
}

TEST_CASE("openings lie where the mat has them in the PNG") {
  const std::string folder = oracle::scratch_folder("proof-png");
  check_positions(measured::measure_png(proof(folder, "p.png", {"--dpi", "200"})));
}

TEST_CASE("openings lie where the mat has them in the page, by Chromium") {
  const std::string folder = oracle::scratch_folder("proof-html");
  const std::string page = proof(folder, "p.html");
  browser::screenshot(page, 1100, 1900, folder + "/p.png");
  check_positions(measured::measure_png(folder + "/p.png"));
}

}  // namespace
