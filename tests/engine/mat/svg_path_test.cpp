#include "engine/mat/svg_path.h"

#include <cairo.h>

#include <catch2/catch.hpp>
#include <random>

#include "engine/mat/parallel.h"
#include "engine/mat/rect.h"
#include "tests/oracle/program.h"

using namespace mullion;

namespace {

std::string why_not(const std::string& data) {
  const auto path = parse_path(data);
  return path ? std::string() : path.error().message + " at " + std::to_string(path.error().offset);
}

// Coverage of each pixel of a black path as librsvg draws it.
std::vector<int> rendered(const std::string& data, const std::string& view_box,
                          const std::string& name) {
  const std::string folder = oracle::scratch_folder("svg-path-" + name);
  oracle::write_file(folder + "/path.svg",
                     "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"400\" height=\"400\" "
                     "preserveAspectRatio=\"none\" viewBox=\"" +
                         view_box + "\"><path d=\"" + data + "\"/></svg>");
  const oracle::Run run =
      oracle::run({"rsvg-convert", "-o", folder + "/path.png", folder + "/path.svg"});
  REQUIRE(run.status == 0);
  cairo_surface_t* image = cairo_image_surface_create_from_png((folder + "/path.png").c_str());
  REQUIRE(cairo_image_surface_get_width(image) == 400);
  const unsigned char* bytes = cairo_image_surface_get_data(image);
  const int stride = cairo_image_surface_get_stride(image);
  std::vector<int> out;
  for (int y = 0; y < 400; ++y) {
    for (int x = 0; x < 400; ++x) out.push_back(bytes[y * stride + 4 * x + 3]);
  }
  cairo_surface_destroy(image);
  return out;
}

std::string number(double value) {
  char text[40];
  std::snprintf(text, sizeof text, "%.9g ", value);
  return text;
}

// The outline as path data of absolute lines and curves.
std::string data_of(const Outline& outline) {
  const auto pair = [](Point p) {
    return std::to_string(p.x.ticks()) + " " + std::to_string(p.y.ticks()) + " ";
  };
  std::string out = "M" + pair(outline.start);
  for (const Segment& segment : outline.segments) {
    out += segment.curved ? "C" + pair(segment.control1) + pair(segment.control2) : "L";
    out += pair(segment.to);
  }
  return out + "Z";
}

struct Example {
  const char* name;
  const char* data;
};

const Example examples[] = {
    {"lines", "M 10,20 L 80 15 L 95 90 L 5 70 z"},
    {"relative", "m10 20 70-5 15 75-90-20z"},
    {"compact", "M10-20.5 90-30V60H12.5L.5.25z"},
    {"heart", "M50 90 C0 50 0 10 28 10 C40 10 48 18 50 28 C52 18 60 10 72 10 C100 10 100 50 50 90"},
    {"smooth", "M10 50 C10 10 50 0 70 20 S 100 20 110 50 s -30 40 -50 20 S 10 90 10 50 Z"},
    {"quadratic", "M0 50 Q 25 0 50 50 T 100 50 t 0 40 L 0 95 Z"},
    {"arcs", "M300,200 h-150 a150,150 0 1,0 150,-150 z"},
    {"flags", "M600,350 l 50,-25a25,25 -30 01 50,-25 l 50,-25a25,50 -30 0150,-25 V600 H600 z"},
    {"small-radii", "M0 0 A1 2 20 0 0 60 30 L 70 80 A 90 40 -15 1 1 0 0"},
    {"exponents", "M1e1 2E1 L8e+1 15 L9.5e1 900e-1 L50e-1 7e1Z"},
};

}  // namespace

TEST_CASE("an outline fills its opening as librsvg would draw the path there") {
  for (const Example& example : examples) {
    CAPTURE(example.name);
    const auto path = parse_path(example.data);
    REQUIRE(path);
    double left = 1e9, top = 1e9, right = -1e9, bottom = -1e9;
    for (const PathCurve& part : *path) {
      for (int i = 0; i <= 2'000; ++i) {
        const Vector v = place(part.curve, i / 2'000.0);
        left = std::min(left, v.x), right = std::max(right, v.x);
        top = std::min(top, v.y), bottom = std::max(bottom, v.y);
      }
    }
    const auto expected = rendered(
        example.data, number(left) + number(top) + number(right - left) + number(bottom - top),
        std::string(example.name) + "-given");
    const Outline outline = fill(*path, {{}, {}, inches(8), inches(10)}).value();
    const auto found = rendered(data_of(outline), "0 0 " + number(8 * 40640) + number(10 * 40640),
                                std::string(example.name) + "-filled");
    double expected_area = 0, found_area = 0;
    int differing = 0;
    for (std::size_t i = 0; i < expected.size(); ++i) {
      expected_area += expected[i] / 255.0;
      found_area += found[i] / 255.0;
      differing += std::abs(expected[i] - found[i]) > 32 ? 1 : 0;
    }
    CHECK(differing <= 4);
    CHECK(found_area == Approx(expected_area).epsilon(5e-4));
    const double pixel = 8.0 * 10 * 40640 * 40640 / (400 * 400);
    CHECK(area(outline) == Approx(expected_area * pixel).epsilon(1e-3));
    CHECK(signed_area(outline) > 0);
    const Rect box = bounding_box(outline);
    const Length tick = Length::from_ticks(1);
    CHECK(contains(outset(box, tick), {{}, {}, inches(8), inches(10)}));
    CHECK(contains({-tick, -tick, inches(8) + tick, inches(10) + tick}, box));
  }
}

TEST_CASE("path data that is no single closed outline is refused at its place") {
  CHECK(why_not("") == "found no outline; expected path data such as M 0 0 H 4 V 3 Z at 0");
  CHECK(why_not("L 1 1") == "a path begins with M at 0");
  CHECK(why_not("M 0 0 L 1 0 L 1 1") ==
        "the path ends away from its start; expected a closed one (Z at its end) at 17");
  CHECK(why_not("M 0 0 H 1 V 1 Z M 2 2 H 3 V 3 Z") == "found a second outline; expected one at 16");
  CHECK(why_not("M 0 0 H 1 V 1 Z L 2 2") ==
        "found more after the outline was closed; expected one at 16");
  CHECK(why_not("M 0 0 H x") == "found \"x\"; expected a number at 8");
  CHECK(why_not("M 0 0 B 1 1 Z") ==
        "found \"B\"; expected a path command (M L H V C S Q T A or Z) at 6");
  CHECK(why_not("M 0 0 L 1") == "found the end of the path; expected a number at 9");
  CHECK(why_not("M 0 0 A 1 1 0 2 0 3 3 Z") == "found \"2\"; expected a flag of 0 or 1 at 14");
  CHECK(why_not("M 0 0 L 1e400 1 Z") == "found a number that is too large or too small at 8");
  CHECK(why_not("M 0 0 L inf 1 Z") == "found \"i\"; expected a number at 8");
  CHECK(why_not("M 0 0 L -nan 1 Z").find("number") != std::string::npos);
  CHECK(why_not("M,0 0 L 1 1 Z") == "found \",\"; expected a number at 1");
  CHECK(why_not("M 0 0 L 1 1, Z") == "found \"Z\"; expected a number at 13");
}

TEST_CASE("a path without area cannot fill an opening") {
  const Rect box{{}, {}, inches(1), inches(1)};
  CHECK_FALSE(fill(parse_path("M 0 0 H 5 Z").value(), box));
  CHECK_FALSE(fill({}, box));
}

TEST_CASE("a path of too many parts is refused") {
  std::string data = "M 0 0";
  for (int i = 0; i < 10'000; ++i) data += " L " + std::to_string(i) + " 1";
  CHECK(why_not(data + "Z").find("that is the limit") != std::string::npos);
}

TEST_CASE("damaged path data is refused or cut, and never more") {
  std::mt19937 random(7);
  const std::string letters = "MmLlHhVvCcSsQqTtAaZz0123456789.-+eE, \n\t#\"\x80";
  int cut = 0;
  for (int round = 0; round < 3'000; ++round) {
    std::string data = examples[random() % std::size(examples)].data;
    for (unsigned change = 0; change < 1 + random() % 4; ++change) {
      const std::size_t at = random() % data.size();
      const char letter = letters[random() % letters.size()];
      switch (random() % 3) {
        case 0:
          data[at] = letter;
          break;
        case 1:
          data.insert(at, 1, letter);
          break;
        default:
          data.erase(at, 1 + random() % 5);
          break;
      }
      if (data.empty()) data = " ";
    }
    const auto path = parse_path(data);
    if (!path) {
      CHECK(path.error().offset <= data.size());
      continue;
    }
    const auto outline = fill(*path, {{}, {}, inches(2), inches(2)});
    if (!outline || !flaw_of(*outline).empty()) continue;
    const auto grown = parallel(*outline, sixty_fourths(4));
    if (grown) {
      ++cut;
      CHECK(area(*grown) > area(*outline));
    }
  }
  CHECK(cut > 100);
}
