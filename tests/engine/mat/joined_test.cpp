#include <catch2/catch.hpp>
#include <random>

#include "engine/mat/rect.h"
#include "tests/engine/mat/mats.h"
#include "tests/engine/mat/measure.h"

using namespace mullion;
using namespace test;

namespace {

const std::string pictures = R"(
    <pictures><picture id="tall" width="4" height="8"/><picture id="flat" width="6" height="3"/>
      <picture id="low" width="3" height="2"/></pictures>)";
const std::string two_layers = R"(
    <layers><layer board="Oat"/><layer board="Slate" reveal="1/4"/></layers><borders all="3"/>)";

std::string row(const std::string& attributes, const std::string& children) {
  return pictures + two_layers + "<arrange><row " + attributes + ">" + children +
         "</row></arrange>";
}

const std::string tall = R"(<opening picture="tall"/>)", flat = R"(<opening picture="flat"/>)";

bool is_within(const Rect& rect, Vector p) {
  const Vector a = vector_of({rect.left, rect.top}), b = vector_of({rect.right, rect.bottom});
  return a.x < p.x && p.x < b.x && a.y < p.y && p.y < b.y;
}

// Close to both ends of what is seen, and spread over the opening; never on a whole tick.
std::vector<double> places(Length from, Length to, Length seen_from, Length seen_to) {
  const auto ticks = [](Length at) { return static_cast<double>(at.ticks()); };
  std::vector<double> out;
  for (const Length end : {seen_from, seen_to}) {
    out.push_back(ticks(end) - 3.5);
    out.push_back(ticks(end) + 3.5);
  }
  for (int k = 1; k < 8; ++k) {
    out.push_back(std::floor(ticks(from) + ticks(to - from) * k / 8) + 0.5);
  }
  return out;
}

// What an eye in front of each opening of the top mat sees through the joined window.
void check_seen(const Built& b) {
  const Polyline back = sampled(b.mat.layers[1].windows.at(0).back_edge, 2);
  for (std::size_t i = 0; i < b.layout.openings.size(); ++i) {
    const Rect top = b.layout.openings[i].rect, sight = b.mat.sights[i];
    const std::vector<double> xs = places(top.left, top.right, sight.left, sight.right);
    const std::vector<double> ys = places(top.top, top.bottom, sight.top, sight.bottom);
    for (const double x : xs) {
      for (const double y : ys) {
        if (!is_within(top, {x, y})) continue;
        INFO("opening " << i + 1 << " at " << x << ", " << y);
        REQUIRE(is_inside(back, {x, y}) == is_within(sight, {x, y}));
      }
    }
  }
}

// A row or column of up to three parts, each an opening or, while there is depth, another group.
struct RandomGroup {
  std::mt19937& random;
  int openings = 0;
  std::string pictures;

  std::string opening() {
    const std::string id = "p" + std::to_string(++openings);
    const auto side = [&] { return std::to_string(16 + random() % 60) + "/16"; };
    pictures += "<picture id=\"" + id + "\" width=\"" + side() + "\" height=\"" + side() + "\"/>";
    const char* reveals[] = {"", R"(<reveal layer="2" all="1/8"/>)",
                             R"(<reveal layer="2" all="1/4" left="3/8" bottom="1/2"/>)"};
    return "<opening picture=\"" + id + "\">" + reveals[random() % 3] + "</opening>";
  }

  // Of centred parts, so that every two neighbours lie beside each other.
  std::string group(int depth, bool is_row, const std::string& window) {
    const char* name = is_row ? "row" : "column";
    std::string out = std::string("<") + name + window + R"( gap="1/2">)";
    const unsigned parts = 2 + random() % 2;
    for (unsigned i = 0; i < parts; ++i) {
      const bool nested = depth > 1 && random() % 2 == 0;
      out += nested ? group(depth - 1, !is_row, "") : opening();
    }
    return out + "</" + name + ">";
  }
};

}  // namespace

TEST_CASE("a window below openings of unequal height steps in the middle of the bar") {
  const Built b = built(row(R"(gap="1" window="2")", tall + flat));
  REQUIRE(b.mat.layers[1].windows.size() == 1);
  const Window& joined = b.window(2, 1);
  const Rect first = b.window(1, 1).back, second = b.window(1, 2).back;
  const Length line = sixty_fourths(16 + 4);
  const Length step = first.right + sixty_fourths(32);
  CHECK(second.left - step == sixty_fourths(32));
  CHECK(joined.back_edge == polygon({{first.left + line, first.top + line},
                                     {step, first.top + line},
                                     {step, second.top + line},
                                     {second.right - line, second.top + line},
                                     {second.right - line, second.bottom - line},
                                     {step, second.bottom - line},
                                     {step, first.bottom - line},
                                     {first.left + line, first.bottom - line}}));
  CHECK(joined.back == bounding_box(joined.back_edge));
  CHECK(joined.shape.kind == ShapeKind::stepped);
  check_seen(b);
}

TEST_CASE(
    "a joined window steps where the rule can be read, as near the middle of the bar as it goes") {
  const Built b = built(row(R"(gap="5/16" window="2")", tall + flat));
  const Length step = b.window(2, 1).back_edge.segments[0].to.x;
  const Rect first = b.window(1, 1).back, second = b.window(1, 2).back;
  CHECK(step.ticks() % sixty_fourths(4).ticks() == 0);
  CHECK(first.right + sixty_fourths(8) <= step);
  CHECK(step <= second.left - sixty_fourths(8));
}

TEST_CASE("the face edge of a stepped window lies a bevel's run outside its back edge") {
  const Built b = built(row(R"(gap="1" window="2")", tall + flat));
  const Window& joined = b.window(2, 1);
  const Spread spread = distances(sampled(joined.face_edge, 200), sampled(joined.back_edge, 2));
  const double run = static_cast<double>(sixty_fourths(4).ticks());
  CHECK(spread.least == Approx(run));
  CHECK(spread.most == Approx(run * std::sqrt(2.0)));  // where two bevels meet at a corner
  CHECK(joined.face == outset(joined.back, sixty_fourths(4)));
  CHECK(joined.face_edge.segments.size() == joined.back_edge.segments.size());
}

TEST_CASE("pictures of unequal height are held on all sides below a joined window") {
  const Built b = built(row(R"(gap="1" window="2")", tall + flat));
  CHECK(b.mat.sights[1].height() == inches(3) - sixty_fourths(16));
  CHECK(b.mat.pictures[1].sight == b.mat.sights[1]);
  CHECK(findings_of(b) == "check-picture-unused");  // "low"
}

TEST_CASE("each opening keeps a reveal of its own in a window that it shares") {
  const Built b = built(row(
      R"(gap="1" window="2")",
      tall + R"(<opening picture="flat"><reveal layer="2" all="1/8" bottom="1/2"/></opening>)"));
  const Rect top = b.window(1, 2).back, sight = b.mat.sights[1];
  CHECK(sight.top - top.top == sixty_fourths(8 + 4));
  CHECK(top.bottom - sight.bottom == sixty_fourths(32 + 4));
  CHECK(sight.left == top.left);
  check_seen(b);
}

TEST_CASE("what is seen through one window above is joined by a rectangle") {
  const Built b = built(pictures + R"(
    <layers><layer board="Oat"/><layer board="Slate" reveal="1/4"/><layer board="Brick"/></layers>
    <borders all="3"/><arrange><row gap="1" window="1"><row gap="1" window="2">)" +
                        tall + flat + R"(</row><opening picture="low"/></row></arrange>)");
  for (int layer : {1, 2}) {
    CHECK(b.window(layer, 1).back_edge == rectangle(b.window(layer, 1).back));
  }
  CHECK(b.mat.layers[1].windows.size() == 2);
  CHECK(b.mat.layers[2].windows.size() == 3);
}

TEST_CASE("five hundred random groups show each picture and its reveals through a joined window") {
  std::mt19937 random(20260402);
  for (int i = 0; i < 500; ++i) {
    RandomGroup made{random, 0, {}};
    const std::string arranged = made.group(3, random() % 2 == 0, R"( window="2")");
    INFO(arranged);
    const Built b = built("<pictures>" + made.pictures + "</pictures>" + two_layers + "<arrange>" +
                          arranged + "</arrange>");
    REQUIRE(b.mat.layers[1].windows.size() == 1);
    check_seen(b);
  }
}

TEST_CASE("openings that do not lie beside each other have no window in common") {
  const std::string lines =
      row(R"(gap="1" window="2" align="top")",
          R"(<row gap="1" align="bottom">)" + tall + flat + R"(</row><opening picture="low"/>)");
  CHECK(refusal_of(lines).find("error: the openings of the row do not lie beside each other, so "
                               "that layer 2 can have no one window for them") !=
        std::string::npos);
}

TEST_CASE("narrow reveals are found where windows are shared") {
  const auto with = [](const std::string& window, const std::string& reveal) {
    return built(pictures + "<layers><layer board=\"Oat\"/><layer board=\"Slate\" reveal=\"" +
                 reveal + "\"/></layers><borders all=\"3\"/><arrange><row gap=\"1\" window=\"" +
                 window + "\">" + tall + flat + "</row></arrange>");
  };
  for (const char* window : {"1", "2"}) {
    CHECK(findings_of(with(window, "1/4")) == "check-picture-unused");
    CHECK(findings_of(with(window, "1/16")) == "check-picture-unused check-reveal-narrow");
  }
}
