#include "engine/suggest/suggest.h"

#include <catch2/catch.hpp>
#include <chrono>
#include <set>

#include "engine/job/read.h"
#include "engine/job/write.h"
#include "engine/suggest/choosing.h"
#include "engine/suggest/difference.h"
#include "engine/suggest/every_arrangement.h"
#include "engine/suggest/growing.h"

using namespace mullion;
using namespace mullion::suggest;

namespace {

Job pictures(int count, const std::string& rest = "") {
  std::string xml = "<job version=\"1\" reference=\"S\" unit=\"in\" increment=\"1/16\"><pictures>";
  for (int i = 0; i < count; ++i) {
    xml += "<picture id=\"p" + std::to_string(i) + "\" width=\"" + std::to_string(4 + i * 3 % 5) +
           "\" height=\"" + std::to_string(4 + i * 2 % 7) + "\"/>";
  }
  auto job = parse_job(xml + "</pictures>" + rest + "</job>", "suggest.xml", Need::pictures);
  REQUIRE(job.has_value());
  return *job;
}

std::vector<Item> different_items(int count) {
  std::vector<Item> items;
  for (int i = 0; i < count; ++i) items.push_back({inches(3 + i), inches(4 + 2 * i), false});
  return items;
}

std::string written(const Suggestions& suggestions) {
  std::string out;
  for (const Suggestion& suggestion : suggestions.best) out += write_job(suggestion.job);
  return out;
}

}  // namespace

// n! labels times the large Schröder number S(n-1): E. Schröder, Zeitschrift für Mathematik und
// Physik 15, 1870; OEIS A006318: 1, 2, 6, 22, 90, 394.
TEST_CASE("every slicing arrangement is visited once: n! times the large Schröder number") {
  const std::uint64_t schroeder[] = {1, 2, 6, 22, 90, 394};
  std::uint64_t labels = 1;
  for (int n = 1; n <= 6; ++n) {
    labels *= static_cast<std::uint64_t>(n);
    const auto items = different_items(n);
    const auto every = [](Length, Length, std::uint64_t) { return true; };
    const EveryArrangement arrangements(items, inches(1));
    std::uint64_t visited = 0, shared = 0;
    const auto see = [&](const EveryArrangement::Seen& seen) {
      ++visited;
      if (n < 6) CHECK(seen.places == places(seen.block(), inches(1), items.size()));
    };
    CHECK(arrangements.visit(0, 1, every, see) == labels * schroeder[n - 1]);
    CHECK(visited == labels * schroeder[n - 1]);
    for (int part = 0; part < 3; ++part) shared += arrangements.visit(part, 3, every, see);
    CHECK(visited == 2 * shared);
    CHECK(shared == labels * schroeder[n - 1]);
  }
}

TEST_CASE("no two of the visited arrangements are the same") {
  std::set<std::string> seen;
  const auto text = [](const Block& block, const auto& self) -> std::string {
    if (block.kind == Block::Kind::picture)
      return std::to_string(block.item) + (block.turned ? "t" : "");
    std::string out = block.kind == Block::Kind::row ? "(" : "[";
    for (const Block& part : block.parts) out += self(part, self) + " ";
    return out + ")";
  };
  auto items = different_items(4);
  items[1].may_turn = true;
  const auto count =
      EveryArrangement(items, inches(1))
          .visit(
              0, 1, [](Length, Length, std::uint64_t) { return true; },
              [&](const EveryArrangement::Seen& one) { seen.insert(text(one.block(), text)); });
  CHECK(count == 2 * 24 * 22);
  CHECK(seen.size() == count);
}

TEST_CASE("openings of a suggestion neither overlap nor leave the board, and gaps are as wished") {
  for (const int count : {1, 2, 5, 6, 9, 14}) {
    const auto found = suggest_collages(pictures(count), {});
    REQUIRE(found.has_value());
    for (const Suggestion& suggestion : found->best) {
      const auto layout = lay_out(suggestion.job);
      REQUIRE(layout.has_value());
      CHECK(layout->openings.size() == static_cast<std::size_t>(count));
      CHECK(layout->borders.left >= inches(2));
      CHECK(layout->borders.top >= inches(2));
      for (const PlacedOpening& a : layout->openings) {
        for (const PlacedOpening& b : layout->openings) {
          if (a.number >= b.number) continue;
          const Length across = std::max(b.rect.left - a.rect.right, a.rect.left - b.rect.right);
          const Length down = std::max(b.rect.top - a.rect.bottom, a.rect.top - b.rect.bottom);
          CHECK(std::max(across, down) >= inches(1));
        }
      }
    }
  }
}

TEST_CASE("suggestions do not depend on the number of threads") {
  for (const int count : {5, 9}) {
    Wishes one, three;
    one.threads = 1;
    three.threads = 3;
    const Job job = pictures(count);
    CHECK(written(suggest_collages(job, one).value()) ==
          written(suggest_collages(job, three).value()));
  }
}

TEST_CASE("suggestions are different: none has the plan of another") {
  const auto found = suggest_collages(pictures(6), {}).value();
  std::set<std::string> looks;
  for (const Suggestion& suggestion : found.best) looks.insert(plan_key(suggestion.ranked.block));
  CHECK(looks.size() == found.best.size());
  CHECK(found.best.size() >= few);
  CHECK(found.best.size() <= 6);
  CHECK(found.every_one);
  for (std::size_t i = 1; i < found.best.size(); ++i) {
    CHECK(found.best[i - 1].ranked.score >= found.best[i].ranked.score);
  }
}

TEST_CASE("no arrangement of six pictures with equal gaps scores better than the best suggestion") {
  const Job job = pictures(6);
  const Wishes wishes;
  const auto found = suggest_collages(job, wishes).value();
  std::vector<Item> items;
  for (const Picture& p : job.pictures) {
    items.push_back({p.width - default_overlap * 2, p.height - default_overlap * 2, false});
  }
  double best = 0;
  EveryArrangement(items, wishes.gap)
      .visit(
          0, 1, [](Length, Length, std::uint64_t) { return true; },
          [&](const EveryArrangement::Seen& seen) {
            const Block block = seen.block();
            const Board board{block.width + wishes.border * 2, block.height + wishes.border * 2};
            best = std::max(best, score(judge(block, wishes.gap, items.size(), board)));
          });
  CHECK(found.best.front().ranked.score >= best - 1e-12);
}

TEST_CASE("a frame that is given is the board, and what does not fit is said") {
  const auto fits = suggest_collages(
      pictures(4, "<frame rabbet-width=\"24 1/8\" rabbet-height=\"20 1/8\"/>"), {});
  REQUIRE(fits.has_value());
  CHECK(fits->best.front().ranked.board.width == inches(24));
  CHECK(lay_out(fits->best.front().job).value().height == inches(20));
  const auto tight = suggest_collages(pictures(4, "<outer width=\"9\" height=\"9\"/>"), {});
  REQUIRE_FALSE(tight.has_value());
  CHECK(tight.error().front().code == "suggest-nothing-fits");
  CHECK(suggest_collages(pictures(49), {}).error().front().code == "suggest-many");
}

TEST_CASE("a board is taken from the stock sizes, either way round") {
  Wishes wishes;
  wishes.stock = {{inches(20), inches(28)}, {inches(40), inches(60)}};
  const auto found = suggest_collages(pictures(5), wishes).value();
  for (const Suggestion& s : found.best) {
    const Length shorter = std::min(s.ranked.board.width, s.ranked.board.height);
    CHECK((shorter == inches(20) || shorter == inches(40)));
  }
}
