#include "render/paper/tiling.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <cstdint>
#include <random>

using namespace mullion;
using paper::plan_tiling;
using paper::SheetSize;
using paper::Tiling;
using paper::TilingRequest;

namespace {

void set_margin(TilingRequest& request, Length margin) {
  request.margin = request.margin_turned = {margin, margin, margin, margin};
}

TilingRequest board_on(const char* sheet, Length width, Length height) {
  TilingRequest request;
  request.area = {{}, {}, width, height};
  request.sheet = *paper::parse_sheet_size(sheet, Unit::inch);
  set_margin(request, sixty_fourths(16));
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
    const Length wide = tiling->page_width - request.margin.left * 2;
    const Length high = tiling->page_height - request.margin.top * 2 - request.footer;
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
  set_margin(request, inches(1));
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

namespace {

// The fewest sheets in rows and columns by trying every number of them, the paper upright and
// across: n sheets with a strip under the next one reach n * sheet - (n - 1) * strip.
std::size_t fewest_sheets(const TilingRequest& request) {
  const auto count = [&](Length area, Length sheet) {
    for (std::size_t n = 1;; ++n) {
      const auto times = static_cast<std::int64_t>(n);
      if (sheet * times - request.overlap * (times - 1) >= area) return n;
    }
  };
  const auto sheets = [&](Length width, Length height) {
    return count(request.area.width(), width - request.margin.left * 2) *
           count(request.area.height(), height - request.margin.top * 2 - request.footer);
  };
  const SheetSize& sheet = request.sheet;
  return std::min(sheets(sheet.width, sheet.height), sheets(sheet.height, sheet.width));
}

struct Faults {
  int unwanted = 0;
  std::int64_t unevenness = 0;  // square millimetres
  auto operator<=>(const Faults&) const = default;
};

// Of three columns that are divided by joins at these millimetres.
Faults faults_of(const TilingRequest& request, std::int64_t first, std::int64_t second,
                 std::int64_t width) {
  Faults faults;
  for (const std::int64_t join : {first, second}) {
    const bool near =
        std::any_of(request.avoid_x.begin(), request.avoid_x.end(), [&](Length place) {
          const Length off = millimetres(static_cast<int>(join)) - place;
          return std::max(off, Length() - off) < request.clearance;
        });
    if (near) ++faults.unwanted;
  }
  const std::int64_t even = width / 3;
  for (const std::int64_t size : {first, second - first, width - second}) {
    faults.unevenness += (size - even) * (size - even);
  }
  return faults;
}

// The best of all pairs of joins.
Faults least_faults(const TilingRequest& request, std::int64_t width, std::int64_t tile,
                    std::int64_t overlap) {
  Faults least{1000, 0};
  for (std::int64_t first = 1; first <= tile - overlap; ++first) {
    for (std::int64_t second = first + 1; second - first <= tile - overlap; ++second) {
      if (second >= width || width - second > tile) continue;
      least = std::min(least, faults_of(request, first, second, width));
    }
  }
  return least;
}

}  // namespace

TEST_CASE("no other number of rows and columns, upright or across, needs fewer sheets") {
  std::mt19937 random(7);
  for (const char* paper : {"a4", "a3", "a2", "329 x 483 mm", "200 x 900 mm"}) {
    for (int i = 0; i < 60; ++i) {
      TilingRequest request = board_on(paper, {}, {});
      set_margin(request, millimetres(7));
      request.footer = millimetres(23);
      request.overlap = millimetres(i % 2 == 0 ? 12 : 0);
      const auto side = [&] { return Length::from_ticks(200'000 + random() % 2'000'000); };
      request.area.right = side();
      request.area.bottom = side();
      INFO(paper << ", " << to_millimetres(request.area.right) << " x "
                 << to_millimetres(request.area.bottom));
      const auto tiling = plan_tiling(request);
      REQUIRE(tiling);
      CHECK(tiling->sheets() == fewest_sheets(request));
    }
  }
}

TEST_CASE("no other pair of joins keeps a better distance from corners or is more even") {
  std::mt19937 random(11);
  for (int i = 0; i < 40; ++i) {
    TilingRequest request = board_on("200 x 200 mm", millimetres(500), millimetres(100));
    set_margin(request, millimetres(5));
    request.footer = millimetres(20);
    request.overlap = millimetres(12);
    request.clearance = millimetres(6);
    for (int corner = 0; corner < 3 + i; ++corner) {
      request.avoid_x.push_back(millimetres(static_cast<int>(random() % 500)));
    }
    const auto tiling = plan_tiling(request);
    REQUIRE(tiling);
    REQUIRE(tiling->columns.size() == 4);
    const auto millimetre = [&](std::size_t join) {
      return std::llround(to_millimetres(tiling->columns[join]));
    };
    const Faults found = faults_of(request, millimetre(1), millimetre(2), 500);
    CHECK(found == least_faults(request, 500, 190, 12));
    CHECK(found.unwanted == tiling->unwanted_joins);
  }
}
