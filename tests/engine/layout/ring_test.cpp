// Rings, moved parts and places on the mat, against the circle as the library of sines has it and
// against every pair of openings looked at.

#include "engine/layout/ring.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>
#include <random>

#include "engine/mat/mat.h"
#include "engine/xml/problem.h"
#include "tests/engine/layout/jobs.h"
#include "tests/how_many.h"

using namespace mullion;
using test::conflict_of;
using test::laid_out;

namespace {

const std::string board = "<layers><layer board=\"Oat\"/></layers>";

std::string opening(const std::string& id, int quarters_wide, int quarters_high,
                    const std::string& more = {}) {
  return "<opening id=\"" + id + "\" width=\"" + std::to_string(quarters_wide) + "/4\" height=\"" +
         std::to_string(quarters_high) + "/4\" " + more + "/>";
}

std::string ring_of(const std::string& attributes, const std::string& parts) {
  return board + "<arrange><ring " + attributes + ">" + parts + "</ring></arrange>";
}

std::string alike(int count, int wide, int high) {
  std::string out;
  for (int i = 0; i < count; ++i) out += opening("p" + std::to_string(i), wide, high);
  return out;
}

double middle_across(const Rect& r) {
  return static_cast<double>((r.left + r.right).ticks()) / 2;
}
double middle_down(const Rect& r) {
  return static_cast<double>((r.top + r.bottom).ticks()) / 2;
}

Length apart(const Rect& a, const Rect& b) {
  return std::max(std::max(b.left - a.right, a.left - b.right),
                  std::max(b.top - a.bottom, a.top - b.bottom));
}

Length least_apart(const Layout& layout) {
  Length out = inches(1000);
  for (std::size_t i = 0; i < layout.openings.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      out = std::min(out, apart(layout.openings[i].rect, layout.openings[j].rect));
    }
  }
  return out;
}

constexpr Length held = sixty_fourths(12);  // three thicknesses of 1/16 in, as holding.h has it

}  // namespace

TEST_CASE("the places on a circle are those of sine and cosine, and exact at thirds of a quarter") {
  using layout::on_circle;
  using layout::whole_radius;
  for (int count = 1; count <= 200; ++count) {
    for (int i = 0; i < count; ++i) {
      const double angle = 2 * std::numbers::pi * i / count;
      const auto at = on_circle(i, count);
      CHECK(std::abs(static_cast<double>(at.right) / whole_radius - std::sin(angle)) < 1e-7);
      CHECK(std::abs(static_cast<double>(at.down) / whole_radius + std::cos(angle)) < 1e-7);
      const auto mirrored = on_circle(count - i, count);
      CHECK((mirrored.right == -at.right && mirrored.down == at.down));
    }
  }
  CHECK(on_circle(1, 12).right == whole_radius / 2);
  CHECK(on_circle(2, 12).down == -whole_radius / 2);
  CHECK(on_circle(3, 12).right == whole_radius);
  CHECK(on_circle(3, 12).down == 0);
}

TEST_CASE("openings of a ring lie within half a step of equal angles, and mirror each other") {
  std::mt19937 random(7);
  const auto number = [&](int below) {
    return static_cast<int>(random() % static_cast<unsigned>(below));
  };
  for (int turn = 0; turn < test::how_many(40, 1000); ++turn) {
    const int count = 3 + number(14), wide = 4 + number(12), high = 4 + number(12);
    const bool on_top = number(2) == 0;
    const int across = 4 * (12 + number(20)) + 8 * count, down = across + number(30);
    const std::string job =
        ring_of("across=\"" + std::to_string(across) + "/4\" down=\"" + std::to_string(down) +
                    "/4\" first=\"" + (on_top ? "top" : "beside") + "\"",
                alike(count, wide, high));
    INFO(job);
    if (!conflict_of(job).empty()) continue;
    const Layout layout = laid_out(job);
    const PlacedRing ring = layout.groups.front().ring.value();
    const double step = static_cast<double>(sixty_fourths(4).ticks());
    for (int i = 0; i < count; ++i) {
      const Rect& rect = layout.openings[static_cast<std::size_t>(i)].rect;
      const double angle = 2 * std::numbers::pi * (i + (on_top ? 0.0 : 0.5)) / count;
      const double x = static_cast<double>(ring.centre.ticks()) +
                       static_cast<double>(ring.across.ticks()) / 2 * std::sin(angle);
      const double y = static_cast<double>(ring.middle.ticks()) -
                       static_cast<double>(ring.down.ticks()) / 2 * std::cos(angle);
      CHECK(std::abs(middle_across(rect) - x) <= step / 2 + 2);
      CHECK(std::abs(middle_down(rect) - y) <= step / 2 + 2);
      CHECK(rect.left.ticks() % sixty_fourths(4).ticks() == 0);
      CHECK(rect.top.ticks() % sixty_fourths(4).ticks() == 0);
      const auto other = static_cast<std::size_t>(on_top ? (count - i) % count : count - 1 - i);
      const Rect& mirror = layout.openings[other].rect;
      CHECK(rect.top == mirror.top);
      CHECK(rect.left - layout.groups.front().rect.left ==
            layout.groups.front().rect.right - mirror.right);
    }
    CHECK(layout.borders.left == layout.borders.right);
  }
}

TEST_CASE("a ring of no stated width is the least one that leaves the gap") {
  for (const int count : {3, 5, 8, 12}) {
    INFO(count);
    const std::string parts = opening("m", 16, 20, "centre=\"yes\"") + alike(count, 9, 12);
    const Layout least = laid_out(ring_of("gap=\"1/2\"", parts));
    CHECK(least_apart(least) >= sixty_fourths(32));
    const Length across = least.groups.front().ring->across;
    const auto stated = [&](Length width) {
      return laid_out(ring_of("across=\"" + format_exact(width, Unit::inch) + "\"", parts));
    };
    CHECK(least_apart(stated(across)) == least_apart(least));
    CHECK(least_apart(stated(across - sixty_fourths(4))) < sixty_fourths(32));
  }
}

TEST_CASE(
    "openings of a ring that overlap or leave no bar are refused, and what is proposed fits") {
  const std::string parts = alike(6, 12, 12);
  const std::string overlap = conflict_of(ring_of("across=\"4\"", parts));
  CHECK(overlap.find("overlap by 1 1/4 in") != std::string::npos);
  const std::string near = conflict_of(ring_of("across=\"6 1/8\"", parts));
  CHECK(near.find("at least 3/16 in can be cut and holds") != std::string::npos);
  for (const std::string& refusal : {overlap, near}) {
    INFO(refusal);
    const std::size_t at = refusal.find("a ring ") + 7;
    const std::string across = refusal.substr(at, refusal.find(" in across", at) - at);
    CHECK(conflict_of(ring_of("across=\"" + across + "\"", parts)).empty());
  }
}

TEST_CASE("round openings may reach into each other's corners, and their outlines are checked") {
  std::string parts;
  for (int i = 0; i < 8; ++i) {
    parts += opening("p" + std::to_string(i), 16, 16, "shape=\"circle\"");
  }
  const std::string job = ring_of("across=\"11 1/2\"", parts);
  const Layout layout = laid_out(job);
  CHECK(least_apart(layout) < held);
  CHECK(build_mat(test::job_of(job), layout).has_value());
}

TEST_CASE("a moved part lies beside its place by so much, and the borders are measured to it") {
  const std::string borders = "<borders all=\"3\"/>";
  const auto row = [&](const std::string& moved) {
    return laid_out(board + borders + "<arrange><row gap=\"1\">" + opening("a", 16, 20) +
                    opening("b", 16, 20, moved) + opening("c", 16, 20) + "</row></arrange>");
  };
  const Layout still = row(""), moved = row("move-up=\"1/2\" move-right=\"1/4\"");
  CHECK(moved.height == still.height + sixty_fourths(32));
  CHECK(moved.width == still.width);
  CHECK(moved.openings[1].rect.top == inches(3));
  CHECK(moved.openings[0].rect.top == inches(3) + sixty_fourths(32));
  CHECK(moved.openings[1].rect.left == still.openings[1].rect.left + sixty_fourths(16));
  CHECK(moved.openings[2].rect.left == still.openings[2].rect.left);
  CHECK(moved.groups.front().rect.top == inches(3));
}

TEST_CASE("places on the mat are where they are stated, from either edge, and else in the middle") {
  const Layout layout = laid_out(board + "<outer width=\"20\" height=\"16\"/><arrange><places>" +
                                 opening("a", 16, 12, "left=\"2\" top=\"1 1/2\"") +
                                 opening("b", 16, 12, "right=\"2 1/4\" bottom=\"3\"") +
                                 opening("c", 4, 4) + "</places></arrange>");
  CHECK(layout.openings[0].rect.left == inches(2));
  CHECK(layout.openings[0].rect.top == sixty_fourths(96));
  CHECK(layout.width - layout.openings[1].rect.right == sixty_fourths(144));
  CHECK(layout.height - layout.openings[1].rect.bottom == inches(3));
  CHECK(layout.openings[2].rect ==
        Rect{sixty_fourths(608), sixty_fourths(480), sixty_fourths(672), sixty_fourths(544)});
  CHECK(layout.borders.left == inches(2));
  CHECK(layout.borders.top == sixty_fourths(96));
  CHECK(layout.borders.right == sixty_fourths(144));
}

TEST_CASE("a measure on the mat that does not go with the outer size is told") {
  const std::string told =
      conflict_of(board + "<outer width=\"20\" height=\"16\"/><arrange><places>" +
                  opening("a", 16, 12, "left=\"2\" right=\"2\"") + "</places></arrange>");
  CHECK(told.find("opening \"a\" 2 in from the mat's left edge") != std::string::npos);
}

TEST_CASE("places at random are laid out where no two are too near, and refused where some are") {
  std::mt19937 random(11);
  const auto number = [&](int below) {
    return static_cast<int>(random() % static_cast<unsigned>(below));
  };
  int refused = 0, good = 0;
  for (int turn = 0; turn < test::how_many(60, 3000); ++turn) {
    std::string parts;
    std::vector<Rect> expected;
    const int count = 2 + number(4);
    for (int i = 0; i < count; ++i) {
      const int wide = 4 + number(12), high = 4 + number(12);
      const int left = 4 + number(76 - wide), top = 4 + number(60 - high);
      parts +=
          opening("p" + std::to_string(i), wide, high,
                  "left=\"" + std::to_string(left) + "/4\" top=\"" + std::to_string(top) + "/4\"");
      const auto quarters = [](int n) { return sixty_fourths(16 * n); };
      expected.push_back(
          {quarters(left), quarters(top), quarters(left + wide), quarters(top + high)});
    }
    Length least = inches(1000);
    for (std::size_t i = 0; i < expected.size(); ++i) {
      for (std::size_t j = 0; j < i; ++j) least = std::min(least, apart(expected[i], expected[j]));
    }
    const std::string job = board + "<outer width=\"20\" height=\"16\"/><arrange><places>" + parts +
                            "</places></arrange>";
    INFO(job);
    const std::string told = conflict_of(job);
    CHECK(told.empty() == (least >= held));
    CHECK((told.find("overlap by") != std::string::npos) == (least < Length()));
    ++(told.empty() ? good : refused);
    if (!told.empty()) continue;
    const Layout layout = laid_out(job);
    for (std::size_t i = 0; i < expected.size(); ++i) {
      CHECK(layout.openings[i].rect == expected[i]);
    }
  }
  CHECK(refused > 5);
  CHECK(good > 5);
}

TEST_CASE("rings and moved parts within rows at random leave no two openings too near") {
  std::mt19937 random(13);
  const auto number = [&](int below) {
    return static_cast<int>(random() % static_cast<unsigned>(below));
  };
  int laid = 0;
  for (int turn = 0; turn < test::how_many(40, 1500); ++turn) {
    const auto moved = [&] {
      static const char* const ways[] = {"", "move-up=\"1/2\"", "move-down=\"3/4\"",
                                         "move-left=\"1/4\"",
                                         "move-right=\"3/8\" move-up=\"1/16\""};
      return std::string(ways[number(5)]);
    };
    std::string ring;
    const int count = 3 + number(6);
    for (int i = 0; i < count; ++i) {
      ring += opening("r" + std::to_string(i), 4 + number(8), 4 + number(8), moved());
    }
    const std::string job = board + "<borders all=\"2\"/><arrange><row gap=\"1/2\">" +
                            opening("a", 12, 16, moved()) + "<ring " + moved() + " across=\"" +
                            std::to_string(20 + number(60)) + "/4\">" + ring +
                            "</ring><column gap=\"3/8\">" + opening("b", 8, 8, moved()) +
                            opening("c", 8, 8, moved()) + "</column></row></arrange>";
    INFO(job);
    const std::string told = conflict_of(job);
    if (!told.empty()) {
      const bool is_crowded = told.find("overlap by") != std::string::npos ||
                              told.find("can be cut and holds") != std::string::npos;
      CHECK(is_crowded);
      continue;
    }
    ++laid;
    const Layout layout = laid_out(job);
    CHECK(least_apart(layout) >= held);
    for (const PlacedOpening& one : layout.openings) {
      CHECK(one.rect.left >= inches(2));
      CHECK(one.rect.top >= inches(2));
      CHECK(layout.width - one.rect.right >= inches(2));
      CHECK(layout.height - one.rect.bottom >= inches(2));
    }
  }
  CHECK(laid > 5);
}
