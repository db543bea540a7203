#include "render/paper/tiling.h"

#include <algorithm>
#include <catch2/catch.hpp>

using namespace mullion;
using paper::plan_tiling;
using paper::SheetSize;
using paper::Tiling;
using paper::TilingRequest;

namespace {

TilingRequest board_on(const char* sheet, Length width, Length height) {
  TilingRequest request;
  request.area = {{}, {}, width, height};
  request.sheet = *paper::parse_sheet_size(sheet, Unit::inch);
  request.margin = sixty_fourths(16);
  request.footer = inches(1);
  request.overlap = sixty_fourths(32);
  request.clearance = sixty_fourths(16);
  return request;
}

void check_edges(const std::vector<Length>& edges, Length from, Length to, Length tile,
                 Length overlap) {
  REQUIRE(edges.size() >= 2);
  CHECK(edges.front() == from);
  CHECK(edges.back() == to);
  for (std::size_t i = 0; i + 1 < edges.size(); ++i) {
    const bool last = i + 2 == edges.size();
    CHECK(edges[i] < edges[i + 1]);
    CHECK(edges[i + 1] - edges[i] + (last ? Length() : overlap) <= tile);
  }
}

}  // namespace

TEST_CASE("a board that fits one sheet takes one sheet") {
  const auto tiling = plan_tiling(board_on("letter", inches(6), inches(8)));
  REQUIRE(tiling);
  CHECK(tiling->sheets() == 1);
}

TEST_CASE("the better of upright and across is chosen") {
  // Printable on Letter: 8 x 9 1/2 in upright, 10 1/2 x 7 in across.
  const auto across = plan_tiling(board_on("letter", inches(10), inches(7)));
  REQUIRE(across);
  CHECK(across->sheets() == 1);
  CHECK(across->page_width == inches(11));
  const auto upright = plan_tiling(board_on("letter", inches(8), inches(9)));
  REQUIRE(upright);
  CHECK(upright->sheets() == 1);
  CHECK(upright->page_height == inches(11));
}

TEST_CASE("every tile fits its sheet with its strip below the next one") {
  for (const SheetSize& sheet : paper::sheet_sizes()) {
    INFO(sheet.name);
    TilingRequest request = board_on(sheet.name.c_str(), inches(40), inches(60));
    const auto tiling = plan_tiling(request);
    REQUIRE(tiling);
    const Length wide = tiling->page_width - request.margin * 2;
    const Length high = tiling->page_height - request.margin * 2 - request.footer;
    check_edges(tiling->columns, {}, inches(40), wide, request.overlap);
    check_edges(tiling->rows, {}, inches(60), high, request.overlap);
  }
}

TEST_CASE("a join keeps its distance from a corner where there is room") {
  TilingRequest request = board_on("letter", inches(15), inches(9));
  const auto plain = plan_tiling(request);
  REQUIRE(plain);
  REQUIRE(plain->columns.size() == 3);
  request.avoid_x = {plain->columns[1]};
  const auto moved = plan_tiling(request);
  REQUIRE(moved);
  CHECK(moved->sheets() == plain->sheets());
  CHECK(moved->unwanted_joins == 0);
  const Length off = moved->columns[1] - plain->columns[1];
  CHECK(std::max(off, Length() - off) >= request.clearance);
}

TEST_CASE("a join that cannot keep its distance is counted, and costs no sheet") {
  TilingRequest request = board_on("letter", inches(15), inches(9));
  for (int i = 0; i < 120; ++i) request.avoid_x.push_back(sixty_fourths(8) * i);
  const auto tiling = plan_tiling(request);
  REQUIRE(tiling);
  CHECK(tiling->sheets() == 2);
  CHECK(tiling->unwanted_joins == 1);
}

TEST_CASE("paper too small for its own margins is refused") {
  TilingRequest request = board_on("3 x 3 in", inches(15), inches(9));
  request.margin = inches(1);
  CHECK_FALSE(plan_tiling(request));
}

TEST_CASE("a roll's page ends where the board ends") {
  const auto tiling = plan_tiling(board_on("roll-44", inches(40), inches(60)));
  REQUIRE(tiling);
  CHECK(tiling->sheets() == 1);
  CHECK(tiling->page_width == inches(44));
  CHECK(tiling->page_height < inches(62));
}

TEST_CASE("a long narrow board is laid along the roll") {
  const auto tiling = plan_tiling(board_on("roll-24", inches(60), inches(20)));
  REQUIRE(tiling);
  CHECK(tiling->sheets() == 1);
  CHECK(tiling->page_height == inches(24));
  CHECK(tiling->page_width < inches(62));
}
