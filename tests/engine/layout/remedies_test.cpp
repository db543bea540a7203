// Remedies of conflicts, each followed and looked at by every check; and what can be cut and held.

#include <algorithm>
#include <catch2/catch.hpp>
#include <random>

#include "engine/layout/changed_statement.h"
#include "engine/layout/told_conflict.h"
#include "engine/mat/checks.h"
#include "tests/engine/layout/jobs.h"
#include "tests/engine/layout/wild_job.h"
#include "tests/how_many.h"

using namespace mullion;

namespace {

struct Verdict {
  bool is_laid_out = false;
  std::set<std::pair<std::string, int>> errors;  // by code and line
};

Verdict verdict_of(const Job& job) {
  Verdict out;
  const auto layout = lay_out(job);
  if (!layout) return out;
  const auto mat = build_mat(job, *layout);
  if (!mat) return out;
  out.is_laid_out = true;
  for (const Problem& one : check_mat(job, *layout, *mat)) {
    if (one.severity == Severity::error) out.errors.emplace(one.code, one.place.line);
  }
  return out;
}

// Errors of pictures and openings, which no number that a remedy changes can mend.
bool is_of_itself(const std::string& code) {
  return code == "check-not-held" || code == "check-layer-order" || code == "check-groove-bevel" ||
         code == "check-groove-beyond";
}

const std::string two = R"(<pictures><picture id="a" width="10" height="8"/>
    <picture id="b" width="10" height="8"/></pictures><layers><layer board="Oat"/></layers>)";
const std::string row =
    R"(<arrange><row><opening picture="a"/><opening picture="b"/></row></arrange>)";
const std::string alone = R"(<pictures><picture id="a" width="10" height="8"/></pictures>
    <layers><layer board="Oat"/></layers>)";

}  // namespace

TEST_CASE("every remedy of a random conflict, followed, is laid out and passes the checks") {
  std::mt19937 random(16);
  int conflicts = 0, remedies = 0, unfit = 0;
  for (int i = 0; conflicts < test::how_many(40, 500); ++i) {
    const test::WildJob wild = test::wild_job(random, 6);
    const Job job = wild.job();
    const auto told = conflicts_of(job);
    if (told.empty()) continue;
    ++conflicts;
    const bool all_have_ways =
        std::none_of(told.begin(), told.end(), [](const auto& one) { return one.ways.empty(); });
    const auto layout = lay_out(job);
    REQUIRE_FALSE(layout.has_value());
    if (!all_have_ways || layout.error().front().message.find("would fit") == std::string::npos) {
      continue;
    }
    for (std::size_t c = 0; c < told.size(); ++c) {
      for (const layout::Way& way : told[c].ways) {
        Job changed = job;
        for (std::size_t other = 0; other < told.size(); ++other) {
          const layout::Way& one = other == c ? way : told[other].ways.front();
          for (const layout::Statement& what : one.what) layout::change(changed, what, one.number);
        }
        ++remedies;
        const Verdict verdict = verdict_of(changed);
        INFO(wild.attributes << wild.lines << "\n" << way.words);
        CHECK(verdict.is_laid_out);
        if (!verdict.is_laid_out) ++unfit;
        for (const auto& [code, line] : verdict.errors) {
          INFO(code);
          CHECK(is_of_itself(code));
        }
      }
    }
  }
  CHECK(unfit == 0);
  CHECK(remedies > conflicts / 2);
}

TEST_CASE("borders do not vanish for a ratio of the outer size") {
  for (const std::string times : {"5/4", "3/2"}) {
    const Job job = test::job_of(alone + R"(<arrange><opening picture="a"/></arrange><rules>
        <multiple measure="outer.width" of="outer.height" times=")" +
                                 times + R"("/></rules>)");
    const Layout layout = lay_out(job).value();
    INFO(times);
    for (const auto side : every_side) CHECK(layout.borders.*side >= inches(2));
    CHECK(verdict_of(job).errors.empty());
  }
}

TEST_CASE("no free border is hidden by the frame's lip, where narrower bars leave room") {
  // 20 7/8 in for two openings of 9 3/4 in: 1 3/8 in are left for a bar and two borders.
  const Job job = test::job_of(R"(<frame rabbet-width="21" rabbet-height="12"/>)" + two + row);
  const Layout layout = lay_out(job).value();
  CHECK(layout.borders.left > job.frame->lip);
  CHECK(verdict_of(job).errors.empty());
}

TEST_CASE("what can be cut and held has its own sentence, and only a stated size goes below it") {
  const std::string small = R"(<outer width="10" height="9"/>)" + alone;
  const std::string opening = R"(<arrange><opening picture="a"/></arrange>)";
  CHECK(lay_out(test::job_of(small + opening)).has_value());  // 9 3/4 in and twice 1/8 in
  const std::string smaller = R"(<outer width="9 7/8" height="9"/>)" + alone;
  const auto refused = lay_out(test::job_of(smaller + opening));
  REQUIRE_FALSE(refused.has_value());
  CHECK(refused.error().front().message.find("two holding borders of at least 1/8 in") !=
        std::string::npos);
  const Job stated = test::job_of(smaller + R"(<borders left="1/16" right="1/16"/>)" + opening);
  CHECK(lay_out(stated).has_value());
  const Verdict verdict = verdict_of(stated);
  CHECK(std::any_of(verdict.errors.begin(), verdict.errors.end(),
                    [](const auto& error) { return error.first == "check-border-bevel"; }));
}
