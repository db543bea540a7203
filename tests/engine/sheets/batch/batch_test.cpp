#include "engine/sheets/batch/batch.h"

#include <catch2/catch.hpp>
#include <set>

#include "engine/cuts/cutter/profile.h"
#include "engine/sheets/inventory/take.h"

using namespace mullion;

namespace {

BatchJob job(const std::string& order, Length width, Length height, Length border, int quantity) {
  BatchJob batch;
  batch.order = order;
  batch.quantity = quantity;
  batch.mat.outer = {{}, {}, width, height};
  MatLayer layer;
  layer.number = 1;
  layer.board.name = "Top mat";
  layer.board.board = "Oat";
  Window window;
  window.openings = {1};
  window.back = {border, border, width - border, height - border};
  layer.windows = {window};
  batch.mat.layers = {layer};
  return batch;
}

SheetPlan plan_of(const std::vector<BatchJob>& jobs, const Stock& stock) {
  SheetPlanOptions options;
  options.effort = 500'000;
  const auto plan = plan_sheets(blanks_of(jobs, {}), stock, {}, {}, options);
  REQUIRE(plan);
  return *plan;
}

}  // namespace

TEST_CASE("a taped under-mat's blank is smaller by the trim, as in the cutting plan") {
  BatchJob batch = job("A-1", inches(16), inches(20), inches(3), 2);
  batch.mat.layers.push_back(batch.mat.layers[0]);
  MatLayer& under = batch.mat.layers[1];
  under.number = 2;
  Rect& back = under.windows[0].back;
  back = {inches(4), inches(4), inches(12), inches(16)};
  for (MatLayer& layer : batch.mat.layers) {
    Window& window = layer.windows[0];
    window.face = window.back;
    window.back_edge = window.face_edge = rectangle(window.back);
    layer.board.thickness = sixty_fourths(4);
  }
  PlanOptions options;
  options.trim = sixty_fourths(8);
  const auto blanks = blanks_of({batch}, options);
  REQUIRE(blanks.size() == 2);
  CHECK(blanks[0].width == inches(16));
  CHECK(blanks[1].width == inches(16) - sixty_fourths(16));
  const auto run =
      plan_run({{batch.order, batch.title, batch.mat, batch.quantity}}, default_cutter(), options);
  REQUIRE(run);
  const std::vector<Stage>& stages = run->kinds.at(0).plan.stages;
  REQUIRE(stages.size() == 2);
  for (std::size_t i = 0; i < stages.size(); ++i) {
    CHECK(blanks[i].width == stages[i].blank.width());
    CHECK(blanks[i].height == stages[i].blank.height());
  }
  options.stacked = false;
  CHECK(blanks_of({batch}, options)[1].width == inches(16));
}

TEST_CASE("every blank gets one label, and no two labels have the same code") {
  const std::vector<BatchJob> jobs = {job("A-1", inches(16), inches(20), inches(3), 3),
                                      job("A-2", inches(11), inches(14), inches(2), 4)};
  const Stock stock = common_stock({board_of(jobs[0].mat.layers[0].board)}, Unit::inch);
  const auto labels = labels_of(plan_of(jobs, stock));
  REQUIRE(labels.size() == 7);
  std::set<std::string> codes;
  for (const BlankLabel& label : labels) codes.insert(label.code);
  CHECK(codes == std::set<std::string>{"A-1/1/1", "A-1/1/2", "A-1/1/3", "A-2/1/1", "A-2/1/2",
                                       "A-2/1/3", "A-2/1/4"});
}

TEST_CASE("after a plan the stock is short of what was cut and has the off-cuts that were kept") {
  const std::vector<BatchJob> jobs = {job("A-1", inches(30), inches(20), inches(3), 1),
                                      job("A-2", inches(11), inches(13), inches(2), 1)};
  Stock stock;
  StockPiece sheet;
  sheet.id = "full";
  sheet.board = board_of(jobs[0].mat.layers[0].board);
  sheet.width = inches(32);
  sheet.height = inches(40);
  sheet.price = 1200;
  sheet.on_hand = 6;
  StockPiece offcut = sheet;
  offcut.id = "offcut-1";
  offcut.width = inches(12);
  offcut.height = inches(14);
  offcut.price = 0;
  offcut.on_hand = 1;
  offcut.offcut = true;
  stock.pieces = {sheet, offcut};
  const SheetPlan plan = plan_of(jobs, stock);
  CHECK(plan.cost() == 1200);
  const Stock after = stock_after(plan, stock, {});
  REQUIRE(after.pieces.size() == 2);
  CHECK(after.pieces[0].on_hand == 5);
  CHECK(after.pieces[1].id == "offcut-2");  // offcut-1 is used up; its name is not used again
  CHECK(after.pieces[1].offcut);
  CHECK(after.pieces[1].width == inches(32));
  CHECK(after.pieces[1].height == inches(20));
}
