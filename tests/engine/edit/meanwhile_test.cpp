// Edits that were made on a text which others changed since.

#include <catch2/catch.hpp>

#include "engine/job/read.h"
#include "tests/engine/edit/random_edit.h"
#include "tests/engine/layout/wild_job.h"
#include "tests/oracle/program.h"

using namespace mullion;
using namespace mullion::edit;

TEST_CASE("two edits of one text come to the same text, whichever is made first, or are refused") {
  std::mt19937 random(77);
  int both = 0, refused = 0;
  for (const char* name : {"family-tree.xml", "house-flags.xml", "sixteen-squares.xml"}) {
    const std::string base = oracle::read_file(oracle::gallery(name));
    const Job job = parse_job(base, name).value();
    for (int i = 0; i < 150; ++i) {
      const Edit a = test::random_edit(random, job).edit, b = test::random_edit(random, job).edit;
      const auto after_a = edit::apply(base, a), after_b = edit::apply(base, b);
      if (!after_a || !after_b) continue;
      const auto ab = apply_meanwhile(base, b, after_a->text);
      const auto ba = apply_meanwhile(base, a, after_b->text);
      if (!ab || !ba) {
        ++refused;
        continue;
      }
      ++both;
      CHECK(ab->text == ba->text);
      CHECK(parse_job(ab->text, name));
    }
  }
  CHECK(both > 150);
  CHECK(refused > 20);
}

TEST_CASE("an edit is undone from under a later one that stands elsewhere") {
  const std::string base = oracle::read_file(oracle::gallery("house-flags.xml"));
  const auto first = edit::apply(base, State{"title", "Four flags"}).value();
  const auto second = edit::apply(first.text, State{"rule.1.strength", "weak"}).value();
  const auto back = placed(inverse(hunks_of(base, first.changes)), second.text);
  REQUIRE(back);
  CHECK(with_changes(second.text, *back) ==
        edit::apply(base, State{"rule.1.strength", "weak"})->text);
}

TEST_CASE("a change that fits two places is not made at either") {
  const std::string text = "ab.........................................................ab";
  const Hunks hunks{{{30, "a", "x"}, "", "b"}};
  CHECK_FALSE(placed(hunks, text));
  CHECK(placed({{{0, "a", "x"}, "", "b"}}, text));
}

TEST_CASE("a job with a fault can be edited elsewhere, and mended, but not made worse") {
  const std::string good = oracle::read_file(oracle::gallery("double-mat.xml"));
  std::string bad = good;
  bad.replace(bad.find("colour=\"#3f5563\""), 16, "colour=\"blue\"");
  REQUIRE_FALSE(parse_job(bad, "bad.xml"));
  CHECK(edit::apply(bad, State{"outer.width", "17"}));
  CHECK(parse_job(edit::apply(bad, State{"layer.2.colour", "#3f5563"})->text, "bad.xml"));
  const auto worse = edit::apply(bad, State{"outer.width", "wide"}, "bad.xml");
  REQUIRE_FALSE(worse);
  CHECK(worse.error().size() == 1);
  CHECK(worse.error().front().code == "job-unknown-word");
  const auto broken = edit::apply("<job><title></job>", State{"title", "A"}, "bad.xml");
  REQUIRE_FALSE(broken);
  CHECK(broken.error().front().code == "job-xml");
}
