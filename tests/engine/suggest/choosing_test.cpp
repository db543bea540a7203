// Which suggestions are shown, of sets of pictures such as shops get them.

#include "engine/suggest/choosing.h"

#include <catch2/catch.hpp>
#include <map>

#include "engine/suggest/suggest.h"

using namespace mullion;
using namespace mullion::suggest;

namespace {

struct Set {
  const char* name;
  std::vector<std::pair<int, int>> inches;
};

Job job_of(const Set& set) {
  Job job;
  job.scale = {Unit::inch, sixty_fourths(4)};
  for (const auto& [width, height] : set.inches) {
    Picture picture;
    picture.id = "p" + std::to_string(job.pictures.size());
    picture.width = inches(width);
    picture.height = inches(height);
    job.pictures.push_back(picture);
  }
  return job;
}

std::vector<std::pair<int, int>> times(std::size_t count, std::pair<int, int> size) {
  return std::vector<std::pair<int, int>>(count, size);
}

const std::vector<Set>& sets() {
  static const std::vector<Set> all{
      {"five", {{6, 8}, {4, 6}, {4, 6}, {6, 4}, {6, 4}}},
      {"seven", {{8, 10}, {4, 6}, {4, 6}, {4, 6}, {6, 4}, {6, 4}, {5, 5}}},
      {"twelve alike", times(12, {3, 4})},
      {"nine", {{6, 8}, {4, 6}, {4, 6}, {4, 6}, {4, 6}, {6, 4}, {6, 4}, {5, 7}, {5, 7}}},
      {"panoramas", {{12, 4}, {10, 3}, {12, 4}, {10, 3}, {12, 4}}}};
  return all;
}

}  // namespace

TEST_CASE(
    "beyond the first three no suggestion has holes or is ragged and much worse, and no kind comes "
    "thrice") {
  for (const Set& set : sets()) {
    for (const auto& [width, height] : {std::pair{0, 0}, {24, 36}, {32, 40}}) {
      Job job = job_of(set);
      if (width > 0) {
        job.outer_width = inches(width);
        job.outer_height = inches(height);
      }
      INFO(set.name << " on " << width << " x " << height);
      Wishes wishes;
      if (width == 24) wishes.gap = sixty_fourths(32);
      const auto found = suggest_collages(job, wishes).value();
      REQUIRE(found.best.size() >= few);
      std::map<Composition, int> kinds;
      std::size_t good = 0;
      for (const Suggestion& one : found.best) {
        ++kinds[one.composition];
        const Criteria& criteria = one.ranked.criteria;
        const bool near_best = kinds[one.composition] == 1 &&
                               one.ranked.score >= as_good * found.best.front().ranked.score;
        good += (is_tidy(criteria) || near_best) && criteria.bars >= even_enough ? 1 : 0;
      }
      CHECK((found.best.size() == few || good == found.best.size()));
      CHECK(good >= 2);
      for (const auto& [kind, count] : kinds) CHECK((count <= 2 || found.best.size() == few));
      CHECK(kinds.size() >= 2);
    }
  }
}
