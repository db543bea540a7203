// Conflicts, remedies and notes are values; their words say what the values are.

#include "engine/layout/words.h"

#include <catch2/catch.hpp>
#include <set>

#include "engine/layout/conflict.h"
#include "tests/engine/layout/jobs.h"
#include "tests/engine/layout/languages.h"
#include "tests/engine/layout/random_job.h"
#include "tests/engine/layout/wild_job.h"
#include "tests/oracle/english.h"

using namespace mullion;
using namespace mullion::layout;

namespace {

std::vector<int> tags_of(const Model& model, const solver::Conflict& conflict) {
  std::set<int> tags;
  for (const auto& part : conflict.parts) {
    const int tag = model.system.constraints()[part.constraint].tag;
    if (tag > 0) tags.insert(tag);
  }
  return {tags.begin(), tags.end()};
}

// The length at the end of a text: "an outer width of 26 in", "gaps of 1/2 in in place of 1 in".
Length length_at_end(std::string text, Unit unit) {
  text = text.substr(0, text.find(" in place of "));
  for (std::size_t at = 0; at != std::string::npos; at = text.find(' ', at + 1)) {
    const auto length = parse_length(text.substr(at == 0 ? 0 : at + 1), unit);
    if (length) return *length;
  }
  throw std::runtime_error("no length at the end of: " + text);
}

int check_remedies(const Job& job) {
  const Model model = build_model(job, {inches(2), inches(1), solver::Rational(1)});
  const auto solution = solver::solve(model.system);
  if (solution) return 0;
  const solver::Conflict& conflict = solution.error();
  const RequiredRules linked = linked_to(conflict, required_rules(model));
  const std::string told = describe_conflict(job, model, conflict).front().message;
  test::check_languages(
      [&](const Locale& locale) { return describe_conflict(job, model, conflict, locale); });
  int numbers = 0;
  for (const Remedy& remedy : ways_out(job, model, linked, tags_of(model, conflict))) {
    const std::string text = text_of(remedy, model, job);
    INFO(told << "\n" << text);
    CHECK(told.find(text) != std::string::npos);
    REQUIRE_FALSE(remedy.tags.empty());
    const Statement& first = model.statements[static_cast<std::size_t>(remedy.tags.front())];
    if (!remedy.number) {
      CHECK(is_rule(first));
      CHECK(text == "leaving out \"" + text_of(first, job) + "\"");
      continue;
    }
    ++numbers;
    CHECK(first.adjustable);
    CHECK(*remedy.number != first.value);
    const bool framed = first.kind == Statement::Kind::frame;
    const Length said = length_at_end(text, job.scale.unit);
    CHECK((framed ? said - job.frame->allowance : said) == *remedy.number);
  }
  return numbers;
}

}  // namespace

TEST_CASE("the sentence of a conflict says the number of every remedy") {
  std::mt19937 random(71);
  int numbers = 0;
  for (int i = 0; i < 150; ++i)
    numbers += check_remedies(test::job_of(test::random_job(random, 6)));
  for (int i = 0; i < 250; ++i) numbers += check_remedies(test::wild_job(random, 5).job());
  CHECK(numbers > 50);
}

TEST_CASE("the sentence of a note says its length, exactly or as about so much") {
  std::mt19937 random(73);
  std::set<std::size_t> kinds;
  for (int i = 0; i < 200; ++i) {
    const Job job = test::wild_job(random, 5).job();
    const auto layout = lay_out(job);
    if (!layout) continue;
    const Problems told = told_notes(*layout, job);
    REQUIRE(told.size() == layout->notes.size());
    test::check_languages([&](const Locale& locale) { return told_notes(*layout, job, locale); });
    for (std::size_t n = 0; n < told.size(); ++n) {
      const LayoutNote& note = layout->notes[n];
      kinds.insert(note.index());
      INFO(told[n].message);
      CHECK(told[n].message.find("  ") == std::string::npos);
      CHECK_FALSE(told[n].message.starts_with(":"));
      if (const auto* off = std::get_if<OffStep>(&note)) {
        const std::string& text = told[n].message;
        const std::size_t from = text.find(" is ") + 4, to = text.find(", between");
        const bool about = text.substr(from).starts_with("about ");
        const std::string number = text.substr(from + (about ? 6 : 0), to - from - (about ? 6 : 0));
        const Length said = parse_length(number, job.scale.unit).value();
        CHECK(said == to_finest_mark(off->size, job.scale.unit));
        CHECK(about == (said != off->size));
      }
    }
  }
  CHECK(kinds.size() >= 3);
}

TEST_CASE("every kind of statement that can be named has words") {
  const Job job = test::job_of(R"(
    <layers><layer board="Oat"/></layers><frame rabbet-width="20" rabbet-height="16"/>
    <arrange><opening id="a" width="5" height="5"/></arrange>
    <rules><fixed measure="border.left" length="3"/></rules>)");
  std::set<std::string> texts;
  constexpr int last = static_cast<int>(Statement::Kind::rule);
  for (int kind = 1; kind <= last; ++kind) {
    Statement statement;
    statement.kind = static_cast<Statement::Kind>(kind);
    statement.value = inches(3);
    statement.part.id = "a";
    const std::string text = text_of(statement, job);
    INFO(kind << ": " << text);
    CHECK_FALSE(text.empty());
    CHECK(texts.insert(text).second);
    for (const char* language : {"de", "es", "fr"}) {
      const std::string there = text_of(statement, job, Locale::find(language).value());
      INFO(there);
      CHECK(there != text);
      CHECK(oracle::english_in(there).empty());
    }
  }
}
