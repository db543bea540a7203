#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <set>

#include "engine/cuts/sheet/json.h"
#include "engine/job/read.h"
#include "mats.h"
#include "tests/how_many.h"

using namespace mullion;

namespace {

// Half the time the plan's own choice.
std::optional<Way> random_way(std::mt19937& random, const CutterProfile& cutter) {
  const Way way = all_ways[random() % std::size(all_ways)];
  if (random() % 2 == 0) return std::nullopt;
  const int needed = way < Way::one_stop ? 0 : way == Way::one_stop ? 1 : 2;
  if (stops(cutter) < needed) return std::nullopt;
  if (!cutter.guide && (way == Way::guide_marked || way == Way::gauges)) return std::nullopt;
  return way;
}

}  // namespace

TEST_CASE("random mats come off the ideal cutter exactly as they were meant") {
  const int count = test::how_many(400, 2000);
  std::mt19937 random(20260301);
  for (int i = 0; i < count; ++i) {
    const Mat mat = mats::random_mat(random);
    const CutterProfile cutter = mats::random_cutter(random);
    PlanOptions options;
    options.stacked = random() % 2 == 0;
    options.quantity = random() % 3 == 0 ? 12 : 1;
    options.way = random_way(random, cutter);
    const auto plan = plan_cutting(mat, cutter, options);
    INFO("mat " << i);
    REQUIRE(plan);
    REQUIRE(mats::difference(mat, plan_to_json(*plan), mats::ideal(cutter),
                             static_cast<unsigned>(random())) == "");
  }
}

namespace {

// A job as a framer writes it: rows in a column, up to three layers, some cut for some openings
// alone, a row with one window in the lowest layer, a spacer now and then; in either unit.
std::string random_job(std::mt19937& random) {
  const bool metric = random() % 2 == 0;
  const auto size = [&](int least, int most) {
    const int steps = static_cast<int>(random() % 9);
    return metric ? std::to_string(25 * least + steps * (most - least) * 3)
                  : std::to_string(least) + " " + std::to_string(steps) + "/16";
  };
  std::string arrange, all;
  const int rows = 1 + static_cast<int>(random() % 2);
  const int layers = 1 + static_cast<int>(random() % 3);
  for (int row = 0; row < rows; ++row) {
    const bool joined = layers > 1 && random() % 3 == 0;
    arrange += "<row gap=\"" + size(1, 2) + "\"" +
               (joined ? " window=\"" + std::to_string(layers) + "\"" : std::string()) + ">";
    const std::string height = size(3, 5);
    const int columns = 1 + static_cast<int>(random() % 3);
    for (int column = 0; column < columns; ++column) {
      const std::string id = "o" + std::to_string(row) + std::to_string(column);
      all += (all.empty() ? "" : " ") + id;
      arrange +=
          "<opening id=\"" + id + "\" width=\"" + size(3, 6) + "\" height=\"" + height + "\"/>";
    }
    arrange += "</row>";
  }
  std::string boards = "<layer name=\"Top mat\" board=\"Oat\"/>";
  for (int layer = 2; layer <= layers; ++layer) {
    boards += "<layer name=\"Under " + std::to_string(layer) + "\" board=\"Slate\"";
    if (layer == layers && random() % 4 == 0) {
      boards += " spacer=\"yes\"";
    } else {
      boards += std::string(" reveal=\"") + (metric ? "6" : "1/4") + "\"";
      if (random() % 4 == 0) boards += " only=\"o00\"";
    }
    boards += "/>";
  }
  return std::string("<job version=\"1\" reference=\"R\" unit=\"") + (metric ? "mm" : "in") +
         "\" increment=\"" + (metric ? "1" : "1/16") + "\"><layers>" + boards +
         "</layers><borders all=\"" + size(2, 4) + "\"/><arrange><column gap=\"" + size(1, 2) +
         "\">" + arrange + "</column></arrange></job>";
}

}  // namespace

TEST_CASE("random jobs with shared windows, layers for some openings and spacers come out right") {
  const int count = test::how_many(150, 2000);
  std::mt19937 random(88);
  int played = 0, shared = 0, skipped = 0, spaced = 0;
  for (int i = 0; i < count; ++i) {
    const std::string xml = random_job(random);
    const CutterProfile cutter = mats::random_cutter(random);
    const std::optional<Way> way = random_way(random, cutter);
    const auto lie = static_cast<unsigned>(random());
    INFO(xml);
    const Job job = parse_job(xml, "random.xml").value();
    const auto layout = lay_out(job);
    if (!layout) continue;
    const auto mat = build_mat(job, *layout);
    if (!mat) continue;
    PlanOptions options;
    options.way = way;
    const auto plan = plan_cutting(*mat, cutter, options);
    if (!plan) continue;
    ++played;
    for (const MatLayer& layer : mat->layers) {
      spaced += layer.board.spacer ? 1 : 0;
      for (const Window& window : layer.windows) {
        shared += window.openings.size() > 1 ? 1 : 0;
        skipped += window.seen ? 0 : 1;
      }
    }
    REQUIRE(mats::difference(*mat, plan_to_json(*plan), mats::ideal(cutter), lie) == "");
  }
  CHECK(played > count / 2);
  CHECK(shared > 0);
  CHECK(skipped > 0);
  CHECK(spaced > 0);
}
