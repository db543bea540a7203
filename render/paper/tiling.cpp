#include "render/paper/tiling.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>
#include <optional>
#include <utility>

namespace mullion::paper {
namespace {

constexpr Length join_step = millimetres(1);  // joins lie on a grid of this
constexpr Length least_tile = inches(1);
constexpr Length least_roll_page = inches(8);
constexpr std::int64_t unwanted = 1'000'000'000'000;  // cost; any unevenness costs less

struct Division {
  std::vector<Length> edges;
  int unwanted_joins = 0;
};

// The fewest tiles for which all but the last are `tile - overlap` and the last is `tile` at most.
std::int64_t fewest_tiles(Length length, Length tile, Length overlap) {
  if (length <= tile) return 1;
  const std::int64_t own = (tile - overlap).ticks() / join_step.ticks() * join_step.ticks();
  return 1 + ((length - tile).ticks() + own - 1) / own;
}

// What a join at each place of the grid costs, by its place alone.
std::vector<std::int64_t> faults(Length from, std::int64_t places, const std::vector<Length>& avoid,
                                 Length clearance) {
  std::vector<std::int64_t> cost(static_cast<std::size_t>(places) + 1, 0);
  for (const Length place : avoid) {
    const std::int64_t low = (place - clearance - from).ticks();
    const std::int64_t high = (place + clearance - from).ticks();
    std::int64_t at = std::max<std::int64_t>(0, low / join_step.ticks());
    for (; at <= places && at * join_step.ticks() < high; ++at) {
      if (at * join_step.ticks() > low) cost[static_cast<std::size_t>(at)] = unwanted;
    }
  }
  return cost;
}

constexpr std::int64_t never = std::numeric_limits<std::int64_t>::max() / 4;

struct Start {
  std::int64_t cost = never, at = -1;
};

// Where a tile that ends at a join begins best, by the cost of the tiles before it; of equals the
// first. An even tile is tried first, and none so uneven that the least cost before it could not
// make up for it.
Start cheapest_start(const std::vector<std::int64_t>& until, std::int64_t least, std::int64_t first,
                     std::int64_t last, std::int64_t end, std::int64_t even) {
  if (first > last) return {};
  const auto unevenness = [&](std::int64_t at) { return (end - at - even) * (end - at - even); };
  const std::int64_t middle = std::clamp(end - even, first, last);
  Start best;
  for (std::int64_t at = middle; at >= first && least + unevenness(at) <= best.cost; --at) {
    const std::int64_t cost = until[static_cast<std::size_t>(at)] + unevenness(at);
    if (cost < never && cost <= best.cost) best = {cost, at};
  }
  for (std::int64_t at = middle + 1; at <= last && least + unevenness(at) < best.cost; ++at) {
    const std::int64_t cost = until[static_cast<std::size_t>(at)] + unevenness(at);
    if (cost < best.cost) best = {cost, at};
  }
  return best;
}

// The cheapest `tiles` tiles between from and to, by dynamic programming over the joins' grid.
Division divide(Length from, Length to, std::int64_t tiles, Length tile, Length overlap,
                const std::vector<Length>& avoid, Length clearance) {
  const std::int64_t places = (to - from).ticks() / join_step.ticks();
  const std::int64_t reach = (tile - overlap).ticks() / join_step.ticks();
  const std::int64_t last_reach = tile.ticks() / join_step.ticks();
  const std::int64_t even = (to - from).ticks() / join_step.ticks() / tiles;
  const auto unevenness = [&](std::int64_t size) { return (size - even) * (size - even); };
  const std::vector<std::int64_t> fault = faults(from, places, avoid, clearance);
  // cost[k][at]: of k tiles that end at a join `at`.
  const std::size_t columns = static_cast<std::size_t>(places) + 1;
  std::vector<std::vector<std::int64_t>> cost(static_cast<std::size_t>(tiles),
                                              std::vector<std::int64_t>(columns, never));
  std::vector<std::vector<std::int64_t>> before(static_cast<std::size_t>(tiles),
                                                std::vector<std::int64_t>(columns, -1));
  cost[0][0] = 0;
  // Beyond these places, the tiles on one side or the other are too few to reach the end.
  const auto first = [&](std::int64_t k) {
    const std::int64_t left_reach = (tiles - k - 1) * reach + last_reach + 1;
    return k == 0 ? 0 : std::max<std::int64_t>(1, places - left_reach);
  };
  const auto last = [&](std::int64_t k) { return std::min(places - 1, k * reach); };
  for (std::int64_t k = 1; k < tiles; ++k) {
    const std::vector<std::int64_t>& until = cost[static_cast<std::size_t>(k) - 1];
    const std::int64_t least = *std::min_element(until.begin(), until.end());
    for (std::int64_t at = first(k); at <= last(k); ++at) {
      const Start start = cheapest_start(until, least, std::max(first(k - 1), at - reach),
                                         std::min(at - 1, last(k - 1)), at, even);
      if (start.cost >= never) continue;
      cost[static_cast<std::size_t>(k)][static_cast<std::size_t>(at)] =
          start.cost + fault[static_cast<std::size_t>(at)];
      before[static_cast<std::size_t>(k)][static_cast<std::size_t>(at)] = start.at;
    }
  }
  std::int64_t best = never, join = 0;
  const std::size_t joins = static_cast<std::size_t>(tiles) - 1;
  for (std::int64_t at = 0; at < std::max<std::int64_t>(1, places); ++at) {
    const std::int64_t until = cost[joins][static_cast<std::size_t>(at)];
    // A length between two places of the grid must still fit the last tile.
    if (until >= never || (to - from - join_step * at) > tile || places - at > last_reach) continue;
    const std::int64_t total = until + unevenness(places - at);
    if (total < best) {
      best = total;
      join = at;
    }
  }
  Division division{{to}, 0};
  for (std::size_t k = joins; k > 0; --k) {
    division.edges.push_back(from + join_step * join);
    if (fault[static_cast<std::size_t>(join)] > 0) ++division.unwanted_joins;
    join = before[k][static_cast<std::size_t>(join)];
  }
  division.edges.push_back(from);
  std::reverse(division.edges.begin(), division.edges.end());
  return division;
}

Length scaled_down(Length length, double factor) {
  return Length::from_ticks(
      static_cast<std::int64_t>(std::floor(static_cast<double>(length.ticks()) * factor)));
}

// A way to lay pages: how large a tile may be, and how many it takes.
struct Grid {
  Length page_width, page_height;
  Length wide, high;
  std::int64_t columns = 0, rows = 0;
};

std::optional<Grid> grid_of(const TilingRequest& request, Length page_width, Length page_height,
                            const Sides& margin, const Shrink& shrink) {
  const Length wide = scaled_down(page_width - margin.left - margin.right, shrink.x);
  const Length high =
      scaled_down(page_height - margin.top - margin.bottom, shrink.y) - request.footer;
  if (wide - request.overlap < least_tile || high - request.overlap < least_tile) {
    return std::nullopt;
  }
  const Rect& area = request.area;
  return Grid{page_width,
              page_height,
              wide,
              high,
              fewest_tiles(area.width(), wide, request.overlap) + request.more_columns,
              fewest_tiles(area.height(), high, request.overlap) + request.more_rows};
}

Tiling tile_pages(const TilingRequest& request, const Grid& grid) {
  const Rect& area = request.area;
  const Division across = divide(area.left, area.right, grid.columns, grid.wide, request.overlap,
                                 request.avoid_x, request.clearance);
  const Division down = divide(area.top, area.bottom, grid.rows, grid.high, request.overlap,
                               request.avoid_y, request.clearance);
  return {grid.page_width, grid.page_height, across.edges, down.edges,
          across.unwanted_joins + down.unwanted_joins};
}

Length longest_tile(const std::vector<Length>& edges, Length overlap) {
  Length longest;
  for (std::size_t i = 0; i + 1 < edges.size(); ++i) {
    const bool last = i + 2 == edges.size();
    longest = std::max(longest, edges[i + 1] - edges[i] + (last ? Length() : overlap));
  }
  return longest;
}

// A roll's page is cut off where its content ends, at a whole millimetre.
Length cut_off(Length page, Length content, Length margins, double shrink) {
  const double grown = static_cast<double>(content.ticks()) / shrink;
  const double needed = std::ceil(grown) + static_cast<double>((margins + join_step).ticks()) + 1;
  const double millimetre = static_cast<double>(ticks_per_mm);
  const auto whole = static_cast<std::int64_t>(std::ceil(needed / millimetre));
  return std::min(page, Length::from_ticks(whole * ticks_per_mm));
}

Tiling upright_pages(const TilingRequest& request, const Grid& grid) {
  Tiling tiling = tile_pages(request, grid);
  if (request.sheet.roll) {
    const Length content = longest_tile(tiling.rows, request.overlap) + request.footer;
    tiling.page_height = cut_off(tiling.page_height, content,
                                 request.margin.top + request.margin.bottom, request.shrink.y);
  }
  return tiling;
}

Tiling turned_pages(const TilingRequest& request, const Grid& grid) {
  Tiling tiling = tile_pages(request, grid);
  if (request.sheet.roll) {
    // The foot needs its width too.
    const Length content = std::max(longest_tile(tiling.columns, request.overlap), least_roll_page);
    tiling.page_width =
        cut_off(tiling.page_width, content,
                request.margin_turned.left + request.margin_turned.right, request.shrink_turned.x);
  }
  return tiling;
}

}  // namespace

tl::expected<Tiling, std::string> plan_tiling(const TilingRequest& request) {
  const SheetSize& sheet = request.sheet;
  const std::optional<Grid> upright =
      grid_of(request, sheet.width, sheet.height, request.margin, request.shrink);
  const std::optional<Grid> turned =
      grid_of(request, sheet.height, sheet.width, request.margin_turned, request.shrink_turned);
  if (!upright && !turned) {
    return tl::unexpected("the paper \"" + sheet.name +
                          "\" is too small for its margins, the overlap and the check rules");
  }
  const auto sheets = [](const Grid& grid) { return grid.columns * grid.rows; };
  if (!turned || (upright && sheets(*upright) < sheets(*turned))) {
    return upright_pages(request, *upright);
  }
  if (!upright || sheets(*turned) < sheets(*upright)) return turned_pages(request, *turned);
  const Tiling one = upright_pages(request, *upright), other = turned_pages(request, *turned);
  const auto rank = [](const Tiling& tiling) {
    const double paper = to_inches(tiling.page_width) * to_inches(tiling.page_height);
    return std::pair(tiling.unwanted_joins, paper);
  };
  return rank(other) < rank(one) ? other : one;
}

}  // namespace mullion::paper
