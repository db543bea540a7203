// Pictures that stay together and pictures that keep a sequence.

#include "engine/suggest/bonds.h"

#include <catch2/catch.hpp>
#include <functional>
#include <set>

#include "engine/job/read.h"
#include "engine/suggest/choosing.h"
#include "engine/suggest/every_arrangement.h"
#include "engine/suggest/suggest.h"

using namespace mullion;
using namespace mullion::suggest;

namespace {

struct Bond {
  int group = -1, order = 0;
};

std::vector<Item> items_with(const std::vector<Bond>& bonds) {
  std::vector<Item> items;
  for (std::size_t i = 0; i < bonds.size(); ++i) {
    const int n = static_cast<int>(i);
    items.push_back({inches(3 + n), inches(4 + 2 * n), false, bonds[i].group, bonds[i].order});
  }
  return items;
}

std::uint64_t count(
    const std::vector<Item>& items,
    const std::function<void(const Block&)>& visit = [](const Block&) {}) {
  return EveryArrangement(items, inches(1))
      .visit(
          0, 1, [](Length, Length, std::uint64_t) { return true; },
          [&](const EveryArrangement::Seen& seen) { visit(seen.block()); });
}

std::string text(const Block& block) {
  if (block.kind == Block::Kind::picture) return std::to_string(block.item);
  std::string out = block.kind == Block::Kind::row ? "(" : "[";
  for (const Block& part : block.parts) out += text(part) + " ";
  return out + ")";
}

bool lies_after(const Rect& later, const Rect& earlier) {
  return later.left >= earlier.right || later.top >= earlier.bottom;
}

bool overlap(const Rect& a, const Rect& b) {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

// The whole of a group's openings, with the gaps between them.
Rect around(const std::vector<Rect>& rects, const std::vector<Item>& items, int group) {
  std::optional<Rect> out;
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (items[i].group != group) continue;
    const Rect& r = rects[i];
    out = out ? Rect{std::min(out->left, r.left), std::min(out->top, r.top),
                     std::max(out->right, r.right), std::max(out->bottom, r.bottom)}
              : r;
  }
  return *out;
}

void check_bonds(const Block& block, const std::vector<Item>& items) {
  const std::vector<Rect> rects = places(block, inches(1), items.size());
  for (std::size_t i = 0; i < items.size(); ++i) {
    for (std::size_t j = 0; j < items.size(); ++j) {
      if (items[i].order > 0 && items[j].order > items[i].order) {
        CHECK(lies_after(rects[j], rects[i]));
      }
      if (items[i].group >= 0 && items[j].group != items[i].group) {
        CHECK_FALSE(overlap(around(rects, items, items[i].group), rects[j]));
      }
    }
  }
}

Job job_of(int pictures, const std::function<std::string(int)>& more) {
  std::string xml = "<job version=\"1\" reference=\"B\" unit=\"in\" increment=\"1/16\"><pictures>";
  for (int i = 0; i < pictures; ++i) {
    xml += "<picture id=\"p" + std::to_string(i) + "\" width=\"" + std::to_string(4 + i * 3 % 5) +
           "\" height=\"" + std::to_string(4 + i * 2 % 7) + "\" " + more(i) + "/>";
  }
  return parse_job(xml + "</pictures></job>", "bonds.xml", Need::pictures).value();
}

}  // namespace

// The large Schröder numbers (E. Schröder, Zeitschrift für Mathematik und Physik 15, 1870; OEIS
// A006318) count the arrangements of pictures whose sequence is fixed.
TEST_CASE("pictures in a fixed sequence have as many arrangements as the large Schröder number") {
  const std::uint64_t schroeder[] = {1, 2, 6, 22, 90, 394};
  std::vector<Bond> bonds;
  for (int n = 1; n <= 6; ++n) {
    bonds.insert(bonds.begin(), {-1, 10 - n});
    CHECK(count(items_with(bonds)) == schroeder[n - 1]);
  }
}

TEST_CASE("of all arrangements those are visited that keep the bonds, and all of them") {
  const std::vector<std::vector<Bond>> cases{
      {{0, 0}, {-1, 0}, {0, 0}, {-1, 0}, {-1, 0}},
      {{0, 0}, {1, 0}, {0, 0}, {1, 0}, {0, 0}},
      {{0, 2}, {-1, 1}, {0, 3}, {-1, 0}, {-1, 5}},
      {{-1, 3}, {-1, 0}, {-1, 1}, {0, 0}, {0, 0}},
  };
  for (const auto& bonds : cases) {
    const std::vector<Item> items = items_with(bonds);
    const Bonds kept(items);
    std::set<std::string> expected, visited;
    count(items_with(std::vector<Bond>(bonds.size())), [&](const Block& block) {
      if (kept.are_kept(block)) expected.insert(text(block));
    });
    const std::uint64_t number =
        count(items, [&](const Block& block) { visited.insert(text(block)); });
    CHECK(number == visited.size());
    CHECK(visited == expected);
    CHECK(expected.size() > 10);
  }
}

TEST_CASE("no other picture stands within a group, and each comes after those of smaller order") {
  const std::vector<Item> items = items_with({{0, 2}, {-1, 1}, {0, 3}, {1, 0}, {1, 0}});
  count(items, [&](const Block& block) { check_bonds(block, items); });
}

TEST_CASE("suggestions for many pictures keep groups together and orders in sequence") {
  const auto more = [](int i) -> std::string {
    if (i == 2 || i == 9) return "group=\"sea\"";
    if (i == 4 || i == 5 || i == 11) {
      return "group=\"hills\" order=\"" + std::to_string(20 - i) + "\"";
    }
    return i == 0 ? "order=\"30\"" : "";
  };
  const auto found = suggest_collages(job_of(12, more), {});
  REQUIRE(found.has_value());
  CHECK(found->best.size() >= few);
  CHECK(found->best.size() <= 6);
  std::vector<Bond> bonds(12);
  bonds[2].group = bonds[9].group = 0;
  bonds[4] = {1, 16};
  bonds[5] = {1, 15};
  bonds[11] = {1, 9};
  bonds[0].order = 30;
  const std::vector<Item> items = items_with(bonds);
  for (const Suggestion& suggestion : found->best) check_bonds(suggestion.ranked.block, items);
}

TEST_CASE("a group that the sequence tears apart is refused at one of its pictures") {
  const auto more = [](int i) {
    return "order=\"" + std::to_string(i + 1) + "\"" + (i == 1 ? "" : " group=\"g\"");
  };
  const auto found = suggest_collages(job_of(3, more), {});
  REQUIRE_FALSE(found.has_value());
  CHECK(found.error().front().code == "suggest-torn-group");
  CHECK(found.error().front().place.line == 1);
}
