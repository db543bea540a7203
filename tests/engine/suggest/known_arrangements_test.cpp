// Frames built around an arrangement that is known: suggestions must be found in them.

#include <catch2/catch.hpp>
#include <random>

#include "engine/suggest/block.h"
#include "engine/suggest/suggest.h"
#include "tests/how_many.h"

using namespace mullion;
using namespace mullion::suggest;

namespace {

class Known {
 public:
  explicit Known(unsigned seed) : random_(seed) {}

  // Pictures of 7 to 12 random sizes, joined at random, and the frame that just holds them.
  Job job(Length slack) {
    const int count = 7 + number(6);
    Job job;
    job.scale = {Unit::inch, sixty_fourths(4)};
    std::vector<Item> items;
    for (int i = 0; i < count; ++i) {
      Picture picture;
      picture.id = "p" + std::to_string(i);
      picture.width = sixty_fourths(16 * (14 + number(32)));
      picture.height = sixty_fourths(16 * (14 + number(32)));
      items.push_back({picture.width - default_overlap * 2, picture.height - default_overlap * 2});
      job.pictures.push_back(picture);
    }
    const Block block = joined_at_random(items);
    job.outer_width = block.width + inches(4) + slack;
    job.outer_height = block.height + inches(4) + slack;
    return job;
  }

 private:
  int number(int below) { return static_cast<int>(random_() % static_cast<unsigned>(below)); }

  // Half the time by the longer sides, so that blocks are no strips.
  Block joined_at_random(const std::vector<Item>& items) {
    std::vector<Block> blocks;
    for (std::size_t i = 0; i < items.size(); ++i) {
      blocks.push_back(picture_block(items, static_cast<int>(i), false));
    }
    while (blocks.size() > 1) {
      const auto at = static_cast<std::size_t>(number(static_cast<int>(blocks.size())));
      const Block one = blocks[at];
      blocks.erase(blocks.begin() + static_cast<std::ptrdiff_t>(at));
      Block& other = blocks[static_cast<std::size_t>(number(static_cast<int>(blocks.size())))];
      const bool stacks = number(2) == 0 ? number(2) == 0 : one.width > one.height;
      other = joined(stacks ? Block::Kind::column : Block::Kind::row, other, one, inches(1));
    }
    return blocks.front();
  }

  std::mt19937 random_;
};

}  // namespace

TEST_CASE("a known arrangement's frame gets suggestions that fit, at every slack") {
  for (const Length slack : {Length(), sixty_fourths(32), inches(1), inches(2)}) {
    const int frames = test::how_many(2, 200);
    int found = 0;
    for (int seed = 0; seed < frames; ++seed) {
      const Job job = Known(static_cast<unsigned>(seed) + 1).job(slack);
      Wishes wishes;
      wishes.count = 2;
      const auto suggestions = suggest_collages(job, wishes);
      found += suggestions.has_value() ? 1 : 0;
      if (!suggestions) continue;
      for (const Suggestion& suggestion : suggestions->best) {
        const Layout layout = lay_out(suggestion.job).value();
        CHECK(layout.width == *job.outer_width);
        CHECK(std::min({layout.borders.left, layout.borders.top, layout.borders.right,
                        layout.borders.bottom}) >= wishes.border - job.scale.increment);
      }
    }
    INFO("slack of " << to_inches(slack) << " in");
    CHECK(found * 48 >= frames * 47);
  }
}

TEST_CASE("what is said to fit nowhere is proved: the exact table has no arrangement either") {
  Known known(99);
  Job job = known.job(Length());
  job.outer_width = inches(12);
  job.outer_height = inches(12);
  const auto found = suggest_collages(job, {});
  REQUIRE_FALSE(found.has_value());
  CHECK(found.error().front().message.find("in rows and columns fits on") != std::string::npos);
}

TEST_CASE("one large picture with 24 and with 40 small ones around it gets suggestions") {
  for (const int small : {24, 40}) {
    if (small == 40 && test::how_many(0, 1) == 0) continue;
    Job job;
    job.scale = {Unit::inch, sixty_fourths(4)};
    for (int i = 0; i <= small; ++i) {
      Picture picture;
      picture.id = "p" + std::to_string(i);
      picture.width = inches(i == 0 ? 12 : 3);
      picture.height = inches(i == 0 ? 16 : 4);
      job.pictures.push_back(picture);
    }
    job.outer_width = inches(small == 24 ? 30 : 36);
    job.outer_height = inches(small == 24 ? 36 : 44);
    Wishes wishes;
    wishes.gap = sixty_fourths(32);
    const auto found = suggest_collages(job, wishes);
    INFO(small << (found ? "" : found.error().front().message));
    REQUIRE(found.has_value());
    bool has_centre_piece = false;
    for (const Suggestion& one : found->best) {
      CHECK(lay_out(one.job).value().openings.size() == static_cast<std::size_t>(small) + 1);
      has_centre_piece |= one.composition == Composition::centre_piece;
    }
    CHECK(has_centre_piece);
  }
}
