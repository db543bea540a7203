// Whether anything fits, against every arrangement there is.

#include "engine/suggest/fitting.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <random>

#include "engine/suggest/bonds.h"
#include "engine/suggest/every_arrangement.h"
#include "engine/suggest/near_misses.h"
#include "tests/how_many.h"

using namespace mullion;
using namespace mullion::suggest;

namespace {

const Length gap = inches(1);

std::vector<Item> random_items(std::mt19937& random, std::size_t count) {
  const auto side = [&] { return sixty_fourths(16 * (8 + static_cast<int>(random() % 24))); };
  std::vector<Item> out(count);
  for (Item& item : out) item = {side(), side(), random() % 4 == 0};
  return out;
}

// The sizes than which no arrangement is smaller both ways, by looking at each one.
NearMisses least_of_all(const std::vector<Item>& items, const Room& room) {
  NearMisses out;
  EveryArrangement(items, gap)
      .visit(
          0, 1,
          [&](Length width, Length height, std::uint64_t) {
            if (width <= room.width && height <= room.height) out.add(width, height);
            return false;
          },
          [](const EveryArrangement::Seen&) {});
  return out;
}

void check_holds_all(const Block& block, const std::vector<Item>& items) {
  const std::vector<Rect> at = places(block, gap, items.size());
  CHECK(members_of(block) == (Members{1} << items.size()) - 1);
  for (std::size_t i = 0; i < at.size(); ++i) {
    const bool stands = at[i].width() == items[i].width && at[i].height() == items[i].height;
    const bool turned = at[i].width() == items[i].height && at[i].height() == items[i].width;
    CHECK((stands || (items[i].may_turn && turned)));
  }
}

}  // namespace

TEST_CASE("the least sizes of a few pictures are those of every arrangement, 40 times at random") {
  std::mt19937 random(16);
  for (int run = 0; run < test::how_many(40, 600); ++run) {
    const std::vector<Item> items = random_items(random, 1 + random() % 5);
    const Room room{inches(22), inches(18)};
    const Fitting fitting(items, gap, {room}, Fitting::Rounding::up);
    const NearMisses expected = least_of_all(items, room);
    CHECK(fitting.is_exact());
    CHECK(fitting.any() == !expected.smallest().empty());
    const std::vector<Room> found = fitting.least_sizes();
    CHECK(found.size() == expected.smallest().size());
    for (const Room& size : found) {
      CHECK(std::any_of(expected.smallest().begin(), expected.smallest().end(),
                        [&](const NearMisses::Size& other) {
                          return other.width == size.width && other.height == size.height;
                        }));
    }
  }
}

TEST_CASE(
    "a room a sixteenth too small for the only arrangement takes none, and the table is exact") {
  const std::vector<Item> items{{inches(4), inches(6)}, {inches(5), inches(6)}};
  const Room room{inches(10), inches(6)};
  CHECK(Fitting(items, gap, {room}, Fitting::Rounding::up).any());
  const Room narrow{inches(10) - sixty_fourths(4), inches(6)};
  const Fitting none(items, gap, {narrow}, Fitting::Rounding::up);
  CHECK_FALSE(none.any());
  CHECK(none.is_exact());
  CHECK(none.blocks(3).empty());
}

TEST_CASE("blocks from the table hold every picture once and fit into the room") {
  std::mt19937 random(61);
  for (int run = 0; run < test::how_many(10, 100); ++run) {
    const std::vector<Item> items = random_items(random, 7 + random() % 18);
    const Room room{inches(36 + static_cast<int>(random() % 10)), inches(40)};
    const Fitting fitting(items, gap, {room}, Fitting::Rounding::up, 0.1);
    const std::vector<Block> blocks = fitting.blocks(6);
    CHECK(fitting.any() == !blocks.empty());
    for (const Block& block : blocks) {
      check_holds_all(block, items);
      CHECK(block.width <= room.width);
      CHECK(block.height <= room.height);
    }
  }
}

TEST_CASE("sizes rounded down never miss what fits, and rounded up never promise what does not") {
  std::mt19937 random(7);
  for (int run = 0; run < test::how_many(10, 100); ++run) {
    // Sides of odd ticks have no common measure that a table could count in.
    std::vector<Item> items = random_items(random, 5);
    for (Item& item : items) item.width += Length::from_ticks(1 + static_cast<int>(random() % 97));
    const Room room{inches(14 + static_cast<int>(random() % 6)), inches(15)};
    const bool fits = !least_of_all(items, room).smallest().empty();
    const Fitting up(items, gap, {room}, Fitting::Rounding::up);
    if (fits) CHECK_FALSE(up.is_exact());
    if (up.any()) CHECK(fits);
    if (fits) CHECK(Fitting(items, gap, {room}, Fitting::Rounding::down).any());
  }
}
