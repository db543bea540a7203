#pragma once

// A shop that has sheets of one board, 32 x 40 in at 12.50, and the plan of its orders, for tests
// of what is reported and drawn of a plan.

#include <catch2/catch.hpp>
#include <string>
#include <vector>

#include "engine/sheets/report/report.h"

struct PlannedShop {
  mullion::Stock stock;
  mullion::SheetCutter cutter;
  mullion::KeepRule keep;
  mullion::SheetPlan plan;
  mullion::SheetReport report{plan, stock, cutter, keep};

  PlannedShop(const std::vector<mullion::BlankOrder>& orders, std::int64_t effort,
              mullion::Length damaged_left = {}) {
    stock.currency = "EUR";
    mullion::StockPiece sheet;
    sheet.id = "full";
    sheet.board = orders[0].board;
    sheet.width = mullion::inches(32);
    sheet.height = mullion::inches(40);
    sheet.price = 1250;
    sheet.trim.left = damaged_left;
    stock.pieces = {sheet};
    mullion::SheetPlanOptions options;
    options.effort = effort;
    const auto found = plan_sheets(orders, stock, cutter, {}, options);
    REQUIRE(found);
    plan = *found;
  }
  PlannedShop(const PlannedShop&) = delete;  // the report refers to the plan
  PlannedShop& operator=(const PlannedShop&) = delete;
};

// Blanks of the top mat, in Oat.
inline mullion::BlankOrder blank_order(const std::string& order, mullion::Length width,
                                       mullion::Length height, int quantity) {
  mullion::BlankOrder line;
  line.order = order;
  line.layer = "Top mat";
  line.layer_number = 1;
  line.board = {"Oat", {0xf2, 0xee, 0xe3}, mullion::sixty_fourths(4)};
  line.width = width;
  line.height = height;
  line.quantity = quantity;
  return line;
}
