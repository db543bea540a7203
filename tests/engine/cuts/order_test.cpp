#include "engine/cuts/plan/order.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <map>
#include <random>

using namespace mullion;

namespace {

std::vector<OrderItem> random_items(std::mt19937& random, int count) {
  std::vector<OrderItem> items;
  for (int i = 0; i < count; ++i) {
    OrderItem item;
    item.edge = static_cast<BoardEdge>(random() % 4);
    item.distance = inches(1 + static_cast<int>(random() % 3));
    item.settings.guide = item.distance;
    item.settings.near_stop = inches(static_cast<int>(random() % 3));
    if (random() % 2 == 0) item.settings.far_stop = inches(9 + static_cast<int>(random() % 2));
    item.length = inches(5);
    item.along = inches(i);
    item.marks = {static_cast<int>(random() % static_cast<unsigned>(count + 1)) - 1};
    items.push_back(item);
  }
  return items;
}

bool allowed(const std::vector<OrderItem>& items, const std::vector<int>& order) {
  std::map<BoardEdge, Length> last;
  for (const int i : order) {
    const OrderItem& item = items[static_cast<std::size_t>(i)];
    const auto [at, is_new] = last.emplace(item.edge, item.distance);
    if (!is_new && item.distance > at->second) return false;
    at->second = item.distance;
  }
  return true;
}

}  // namespace

TEST_CASE("the order that is found is as quick as the quickest of all orders, tried one by one") {
  std::mt19937 random(11);
  for (int round = 0; round < 60; ++round) {
    const auto items = random_items(random, 2 + static_cast<int>(random() % 6));
    const int quantity = random() % 2 == 0 ? 1 : 5;
    std::vector<int> order(items.size());
    for (std::size_t i = 0; i < order.size(); ++i) order[i] = static_cast<int>(i);
    std::int64_t quickest = INT64_MAX;
    do {
      if (allowed(items, order)) {
        quickest = std::min(quickest, cost_of(items, order, HandlingTimes{}, quantity));
      }
    } while (std::next_permutation(order.begin(), order.end()));
    const Order found = best_order(items, HandlingTimes{}, quantity);
    CHECK(found.exact);
    CHECK(found.seconds == quickest);
    CHECK(found.bound == quickest);
    CHECK(allowed(items, found.items));
  }
}

TEST_CASE("an order that is too large to be searched whole comes with a bound that holds") {
  std::mt19937 random(12);
  const auto items = random_items(random, 60);
  const Order found = best_order(items, HandlingTimes{}, 1);
  CHECK_FALSE(found.exact);
  CHECK(allowed(items, found.items));
  CHECK(found.bound <= found.seconds);
  CHECK(found.bound * 3 > found.seconds);
  std::vector<int> sorted = found.items;
  std::sort(sorted.begin(), sorted.end());
  for (std::size_t i = 0; i < sorted.size(); ++i) CHECK(sorted[i] == static_cast<int>(i));
}
