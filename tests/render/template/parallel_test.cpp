// Whether the drawn edges are true parallels of the opening, measured in the file that goes to the
// printer against each shape's own equation. What is drawn strays from the true parallel by at most
// 0.005 mm (engine/mat/shape.h, engine/mat/parallel.h); the file's numbers and the reader's chords
// (tests/oracle/drawn_page.h) may add 0.002 mm.

#include <catch2/catch.hpp>
#include <cmath>
#include <functional>
#include <numbers>

#include "tests/engine/mat/measure.h"
#include "tests/oracle/program.h"
#include "tests/render/template/lines_of_layer.h"
#include "tests/render/template/made.h"

using mullion::Vector;

namespace {

constexpr double bound = 0.007;  // mm
constexpr double border = 40, reveal = 5, thickness = 1.4, width = 120, height = 170;
constexpr double stack = reveal + thickness;  // from the top mat's line to that of the under-mat
constexpr double pi = std::numbers::pi;

struct Sample {
  Vector at, outward;  // mm from the upper left corner of what is seen; unit length
};
using Edge = std::function<Sample(double)>;  // over 0 <= t < 1, clockwise as seen

Edge oval(double w, double h) {
  return [=](double t) {
    const double a = w / 2, b = h / 2, c = std::cos(2 * pi * t), s = std::sin(2 * pi * t);
    const Vector normal{c / a, s / b};
    return Sample{{a + a * c, b + b * s}, normal * (1 / norm(normal))};
  };
}

Edge line(Vector from, Vector to) {
  const Vector along = to - from;
  const Vector outward = Vector{along.y, -along.x} * (1 / norm(along));
  return [=](double t) { return Sample{from + along * t, outward}; };
}

Edge arc(Vector centre, double radius, double from, double to) {
  return [=](double t) {
    const double angle = from + (to - from) * t;
    const Vector outward{std::cos(angle), std::sin(angle)};
    return Sample{centre + outward * radius, outward};
  };
}

Edge cubic(Vector a, Vector b, Vector c, Vector d) {
  return [=](double t) {
    const double s = 1 - t;
    const Vector along = (b - a) * (s * s) + (c - b) * (2 * s * t) + (d - c) * (t * t);
    return Sample{a * (s * s * s) + b * (3 * s * s * t) + c * (3 * s * t * t) + d * (t * t * t),
                  Vector{along.y, -along.x} * (1 / norm(along))};
  };
}

std::vector<Sample> samples(const std::vector<Edge>& edges, int count) {
  std::vector<Sample> out;
  for (const Edge& edge : edges) {
    for (int i = 0; i < count; ++i) out.push_back(edge((i + 0.5) / count));
  }
  return out;
}

// How far the lines of one kind on a page are at most from where the edge's points come to lie,
// moved outward.
double straying(const oracle::NearestInk& ink, const made::BoardBehind& board,
                const std::vector<Edge>& edges, double outward) {
  test::Polyline whole;
  for (const Sample& s : samples(edges, 400)) whole.push_back(s.at);
  double most = 0;
  for (const Sample& s : samples(edges, 100)) {
    const Vector p = s.at + s.outward * outward;
    if (test::distance_to(whole, p) < outward - 0.005) continue;  // cut off in a hollow
    const auto ticks = [](double mm) { return (border + stack + mm) * 1600; };
    most = std::max(most, ink.distance(board.place(ticks(p.x), ticks(p.y))));
  }
  return most / 72 * 25.4;
}

oracle::NearestInk lines(oracle::DrawnPage page, bool dashed) {
  std::erase_if(page.strokes, [&](const oracle::Stroke& s) {
    return s.dashed != dashed || (!dashed && s.width < 0.5);  // hatching and marks are thinner
  });
  return {page, dashed};
}

void check(const std::string& opening, const std::vector<Edge>& edges,
           const std::string& svg = "") {
  const std::string folder = oracle::scratch_folder("template-parallels");
  const std::string job = folder + "/job.xml";
  if (!svg.empty()) oracle::write_file(folder + "/form.svg", svg);
  oracle::write_file(job, R"(<job version="1" unit="mm" increment="0.5">
    <layers><layer board="Oat" thickness="1.4"/><layer board="Slate" thickness="1.4" reveal="5"/>
    </layers><borders all="40"/><arrange><opening )" +
                              opening + "/></arrange></job>");
  const mullion::Mat mat = made::mat_of(job);
  const mullion::Cuts cuts = mullion::cuts_of(mat);
  const std::string pdf = made::template_of(job, folder + "/back.pdf");
  for (const auto reader : {oracle::Reader::mupdf, oracle::Reader::poppler}) {
    const auto pages = oracle::drawn_pages(pdf, reader);
    REQUIRE(pages.size() == 2);
    for (std::size_t i = 0; i < 2; ++i) {
      const made::BoardBehind board(pages[i], cuts.layers[i]);
      const double back = i == 0 ? stack : 0;
      INFO(opening << ", layer " << i + 1);
      CHECK(straying(lines(pages[i], false), board, edges, back) < bound);
      CHECK(straying(lines(pages[i], true), board, edges, back + thickness) < bound);
    }
  }
}

const std::string size = R"(width="120" height="170" )";

}  // namespace

TEST_CASE("the drawn edges of ovals and circles are their true parallels") {
  check(size + R"(shape="ellipse")", {oval(width, height)});
  check(R"(shape="circle" width="120")", {oval(width, width)});
}

TEST_CASE("the drawn edges of arches are true parallels of their arcs and sides") {
  for (const double rise : {60.0, 25.0}) {
    const double half = width / 2, radius = (half * half + rise * rise) / (2 * rise);
    const double angle = std::asin(half / radius);
    check(size + "shape=\"arch\" rise=\"" + std::to_string(static_cast<int>(rise)) + "\"",
          {arc({half, radius}, radius, -pi / 2 - angle, -pi / 2 + angle),
           line({width, rise}, {width, height}), line({width, height}, {0, height}),
           line({0, height}, {0, rise})});
  }
}

TEST_CASE("the drawn edges of rounded, cut and stepped corners are true parallels") {
  const double r = 20, w = width, h = height;
  check(size + R"(shape="rounded" corner="20")",
        {line({r, 0}, {w - r, 0}), arc({w - r, r}, r, -pi / 2, 0), line({w, r}, {w, h - r}),
         arc({w - r, h - r}, r, 0, pi / 2), line({w - r, h}, {r, h}),
         arc({r, h - r}, r, pi / 2, pi), line({0, h - r}, {0, r}), arc({r, r}, r, pi, 3 * pi / 2)});
  check(size + R"(shape="octagon" corner="20")",
        {line({r, 0}, {w - r, 0}), line({w - r, 0}, {w, r}), line({w, r}, {w, h - r}),
         line({w, h - r}, {w - r, h}), line({w - r, h}, {r, h}), line({r, h}, {0, h - r}),
         line({0, h - r}, {0, r}), line({0, r}, {r, 0})});
  check(
      size + R"(shape="stepped" corner="20")",
      {line({r, 0}, {w - r, 0}), line({w - r, 0}, {w - r, r}), line({w - r, r}, {w, r}),
       line({w, r}, {w, h - r}), line({w, h - r}, {w - r, h - r}), line({w - r, h - r}, {w - r, h}),
       line({w - r, h}, {r, h}), line({r, h}, {r, h - r}), line({r, h - r}, {0, h - r}),
       line({0, h - r}, {0, r}), line({0, r}, {r, r}), line({r, r}, {r, 0})});
}

// A pennant with a straight side, a bulge and a hollow; it touches its box at known places.
TEST_CASE("the drawn edges of a free outline of lines and Beziers are its true parallels") {
  check(size + R"(shape="outline" file="form.svg")",
        {line({0, 0}, {60, 0}), cubic({60, 0}, {60, 0}, {120, 30}, {120, 85}),
         cubic({120, 85}, {120, 140}, {60, 170}, {60, 170}),
         cubic({60, 170}, {30, 170}, {50, 110}, {30, 100}),
         cubic({30, 100}, {10, 90}, {0, 60}, {0, 40}), line({0, 40}, {0, 0})},
        R"(<svg xmlns="http://www.w3.org/2000/svg"><path
    d="M0 0 H60 C60 0 120 30 120 85 S60 170 60 170 C30 170 50 110 30 100 S0 60 0 40 Z"/></svg>)");
}
