#include "engine/sheets/batch/work_order.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <random>
#include <set>

#include "engine/sheets/plan/stages.h"
#include "tests/how_many.h"

using namespace mullion;

namespace {

using Json = nlohmann::json;

Window window(Length width, Length height, Length border, Length run) {
  Window out;
  out.openings = {1};
  out.back = {border, border, width - border, height - border};
  out.face = {border - run, border - run, width - border + run, height - border + run};
  out.back_edge = rectangle(out.back);
  out.face_edge = rectangle(out.face);
  return out;
}

// A mat of one window in each of one or two layers, of the same two boards for all.
BatchJob job(const std::string& order, Length width, Length height, Length border, int layers,
             int quantity) {
  BatchJob batch;
  batch.order = order;
  batch.quantity = quantity;
  batch.mat.outer = {{}, {}, width, height};
  for (int number = 1; number <= layers; ++number) {
    MatLayer layer;
    layer.number = number;
    layer.board.name = number == 1 ? "Top mat" : "Under-mat";
    layer.board.board = number == 1 ? "Oat" : "Ink";
    layer.board.thickness = layer.run = sixty_fourths(4);
    layer.windows = {window(width, height, border + sixty_fourths(16) * (number - 1), layer.run)};
    batch.mat.layers.push_back(std::move(layer));
  }
  return batch;
}

// A large mat, a middle one that its fallouts may give, and a small one, some of each.
std::vector<BatchJob> random_trio(std::mt19937& random) {
  const auto between = [&](int low, int high) {
    return inches(low) + sixty_fourths(4) * static_cast<int>(random() % 16) +
           inches(1) * static_cast<int>(random() % static_cast<unsigned>(high - low));
  };
  const auto some = [&](int most) {
    return 1 + static_cast<int>(random() % static_cast<unsigned>(most));
  };
  return {job("L-1", between(24, 30), between(20, 28), between(2, 4), some(2), some(3)),
          job("M-1", between(11, 16), between(9, 14), between(2, 3), some(2), some(4)),
          job("S-1", between(5, 7), between(4, 6), between(1, 2), some(2), some(6))};
}

// Two fill a sheet of the usual size, so that the small ones come out of their fallouts.
std::vector<BatchJob> large_and_small() {
  return {job("L-1", inches(38), inches(28), inches(4), 2, 2),
          job("S-1", inches(14), inches(12), inches(3), 2, 3)};
}

struct Planned {
  SheetPlan plan;
  std::vector<WorkPart> work;
};

Planned planned(const std::vector<BatchJob>& jobs, std::int64_t effort = 300'000) {
  std::vector<Board> boards;
  const std::vector<BlankOrder> blanks = blanks_of(jobs, {});
  for (const BlankOrder& blank : blanks) {
    if (std::find(boards.begin(), boards.end(), blank.board) == boards.end())
      boards.push_back(blank.board);
  }
  SheetPlanOptions options;
  options.effort = effort;
  Planned out;
  const auto plan = plan_sheets(blanks, common_stock(boards, Unit::inch), {}, {}, options);
  REQUIRE(plan);
  out.plan = *plan;
  const auto work = order_of_work(jobs, out.plan, default_cutter(), {});
  REQUIRE(work);
  out.work = *work;
  return out;
}

// Carries the work out as the JSON says, with the blanks and fallouts of the plan. Empty where
// every blank and every fallout is there when it is asked for, and every mat is made once.
std::string fault_of(const Json& parts, const SheetPlan& plan, const std::vector<BatchJob>& jobs) {
  using Piece = std::tuple<std::string, std::string, int>;  // order, layer, copy
  std::set<Piece> blanks;
  std::set<std::pair<std::string, int>> finished;
  std::set<int> set_aside, cut;
  std::map<int, SheetOfBoard> by_number;
  for (const SheetOfBoard& one : sheets_in_order(plan)) by_number[one.sheet->number] = one;
  for (const Json& part : parts) {
    for (const int number : part["sheets"]) {
      if (by_number.count(number) == 0 || !cut.insert(number).second)
        return "sheet " + std::to_string(number) + " is cut twice or is none";
      const auto [board, sheet] = by_number[number];
      if (sheet->stock < 0 && set_aside.count(number) == 0)
        return "sheet " + std::to_string(number) + " is not there yet";
      for (const BlankCopy& copy : sheet->blanks) {
        const BlankOrder& line = board->lines[static_cast<std::size_t>(copy.line)];
        blanks.insert({line.order, line.layer, copy.copy});
      }
    }
    for (const Json& kind : part["run"]["kinds"]) {
      for (const Json& order : kind["orders"]) {
        const auto found = std::find_if(jobs.begin(), jobs.end(), [&](const BatchJob& job) {
          return job.order == order["order"];
        });
        std::vector<int> copies;
        if (order.contains("copies")) copies = order["copies"].get<std::vector<int>>();
        for (int copy = 1; !order.contains("copies") && copy <= found->quantity; ++copy)
          copies.push_back(copy);
        if (static_cast<int>(copies.size()) != order["quantity"]) return "another quantity";
        for (const int copy : copies) {
          for (const MatLayer& layer : found->mat.layers) {
            if (blanks.count({found->order, layer.board.name, copy}) == 0)
              return found->order + " " + std::to_string(copy) + " lacks its " + layer.board.name;
          }
          if (!finished.insert({found->order, copy}).second) return "a mat is cut twice";
        }
      }
    }
    for (const Json& fallout : part["setAside"]) {
      if (finished.count({fallout["order"], fallout["copy"]}) == 0)
        return "a fallout is set aside of a mat that is not finished";
      const auto [board, sheet] = by_number[fallout["sheet"]];
      const BlankOrder& line = board->lines[static_cast<std::size_t>(sheet->parent.line)];
      if (line.order != fallout["order"] || line.layer != fallout["layer"] ||
          sheet->parent.copy != fallout["copy"] || sheet->fallout.opening != fallout["opening"])
        return "another fallout";
      set_aside.insert(fallout["sheet"].get<int>());
    }
  }
  std::size_t mats = 0;
  for (const BatchJob& job : jobs) mats += static_cast<std::size_t>(job.quantity);
  if (finished.size() != mats) return "not every mat is made";
  return cut.size() == by_number.size() ? "" : "not every sheet is cut";
}

Json json_of(const std::vector<WorkPart>& work) {
  return Json::parse(work_to_json(work))["parts"];
}

}  // namespace

TEST_CASE("in random weeks every blank and fallout is there when the order of work asks for it") {
  std::mt19937 random(20);
  int with_fallouts = 0;
  for (int i = 0; i < test::how_many(12, 300); ++i) {
    const std::vector<BatchJob> jobs = random_trio(random);
    const Planned shop = planned(jobs);
    INFO("trio " << i);
    REQUIRE(fault_of(json_of(shop.work), shop.plan, jobs) == "");
    if (shop.work.size() > 1) ++with_fallouts;
  }
  CHECK(with_fallouts > 0);
}

TEST_CASE("an order of work that cuts a mat before its blank is there would be noticed") {
  const std::vector<BatchJob> jobs = large_and_small();
  const Planned shop = planned(jobs);
  Json parts = json_of(shop.work);
  REQUIRE(parts.size() == 2);
  REQUIRE(fault_of(parts, shop.plan, jobs) == "");
  Json in_one = parts;
  for (const Json& kind : parts[1]["run"]["kinds"]) in_one[0]["run"]["kinds"].push_back(kind);
  in_one[1]["run"]["kinds"] = Json::array();
  CHECK(fault_of(in_one, shop.plan, jobs).find("lacks its") != std::string::npos);
  Json too_early = parts;
  too_early[0]["sheets"].push_back(too_early[1]["sheets"][0]);
  CHECK(fault_of(too_early, shop.plan, jobs).find("is not there yet") != std::string::npos);
  Json not_kept = parts;
  not_kept[0]["setAside"].erase(0);
  CHECK(fault_of(not_kept, shop.plan, jobs).find("is not there yet") != std::string::npos);
}

TEST_CASE("kinds and steps are numbered through all parts, and the text tells what is set aside") {
  const std::vector<BatchJob> jobs = large_and_small();
  const Planned shop = planned(jobs);
  int kinds = 0, steps = 0;
  for (const WorkPart& part : shop.work) {
    for (const RunKind& kind : part.run.kinds) CHECK(kind.number == ++kinds);
    for (const RunStep& step : part.run.steps) CHECK(step.number == ++steps);
  }
  const std::string text = work_to_text(shop.work);
  const std::size_t second = text.find("PART 2 of 2");
  REQUIRE(second != std::string::npos);
  for (const SetAside& fallout : shop.work[0].set_aside) {
    const std::size_t told = text.find(set_aside_text(fallout, {}));
    CHECK(told < second);
  }
  CHECK(shop.work[1].set_aside.empty());
  CHECK(shop.work[0].run.kinds.at(0).shares.at(0).copies.empty());
}

TEST_CASE("a mat that lacks a blank is in no part, and its fallouts are not counted on") {
  const std::vector<BatchJob> jobs = {job("L-1", inches(30), inches(24), inches(3), 2, 1),
                                      job("S-1", inches(14), inches(12), inches(3), 1, 1)};
  const std::vector<BlankOrder> blanks = blanks_of(jobs, {});
  Stock stock = common_stock({blanks[0].board, blanks[1].board}, Unit::inch);
  for (StockPiece& piece : stock.pieces) {
    if (piece.board.name == "Ink") piece.on_hand = piece.width > inches(39) ? 0 : 1;
  }
  // The only Ink is a sheet that holds no blank of the large mat's.
  stock.pieces.erase(std::remove_if(stock.pieces.begin(), stock.pieces.end(),
                                    [](const StockPiece& piece) { return piece.on_hand == 0; }),
                     stock.pieces.end());
  SheetPlanOptions options;
  options.effort = 300'000;
  std::vector<BatchJob> twice = jobs;
  twice[0].quantity = 3;  // one sheet of 32 x 40 holds one
  const auto plan = plan_sheets(blanks_of(twice, {}), stock, {}, {}, options);
  REQUIRE(plan);
  const auto stages = stages_of_mats(*plan);
  CHECK(stages.size() == 2);
  const auto work = order_of_work(twice, *plan, default_cutter(), {});
  REQUIRE(work);
  int mats = 0;
  for (const WorkPart& part : *work) mats += mats_in(part.run);
  CHECK(mats == 2);
}
