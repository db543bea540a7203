// Whatever is offered to settle a conflict settles it.

#include "engine/measures/remedies.h"

#include <catch2/catch.hpp>
#include <map>

#include "engine/edit/edit_json.h"
#include "engine/mat/checks.h"
#include "engine/measures/concern.h"
#include "engine/measures/dimensions.h"
#include "tests/engine/layout/random_job.h"
#include "tests/engine/layout/wild_job.h"
#include "tests/how_many.h"
#include "tests/oracle/english.h"

using namespace mullion;

namespace {

struct Conflicted {
  std::string text;
  Job job;
  std::vector<layout::ToldConflict> conflicts;
};

std::string file_of(const std::string& lines, const std::string& attributes) {
  return "<job version=\"1\" " + attributes + ">\n" + lines + "\n</job>\n";
}

std::optional<Conflicted> conflict_in(const std::string& text) {
  Conflicted out{text, parse_job(text, "job.xml").value(), {}};
  if (lay_out(out.job)) {
    CHECK(conflicts_of(out.job).empty());
    return std::nullopt;
  }
  out.conflicts = conflicts_of(out.job);
  return out;
}

Problems errors_of(Problems problems) {
  std::erase_if(problems, [](const Problem& one) { return one.severity != Severity::error; });
  return problems;
}

// What is wrong with a job file; nothing: it can be laid out, and no check finds an error.
Problems faults_of(const std::string& text) {
  const auto job = parse_job(text, "job.xml");
  if (!job) return job.error();
  const auto layout = lay_out(*job);
  if (!layout) return layout.error();
  const auto mat = build_mat(*job, *layout);
  if (!mat) return mat.error();
  return errors_of(check_mat(*job, *layout, *mat));
}

struct Counts {
  int conflicts = 0, helped = 0, several = 0;
  std::map<std::string, int> remedies;  // by the kind of what they state
};

std::string kind_of(const edit::Edit& edit) {
  if (std::holds_alternative<edit::Several>(edit)) return "several";
  if (std::holds_alternative<edit::Remove>(edit)) return "remove a rule";
  const auto& state = std::get<edit::State>(edit);
  const std::string freed = *state.value == "free" ? "free " : "";
  if (state.name.starts_with("rule.")) return freed + "rule";
  if (state.name.find("gap") != std::string::npos) return freed + "gap";
  return freed + state.name.substr(0, state.name.find('.'));
}

void check(const Conflicted& conflicted, Counts& counts) {
  const auto& [text, job, conflicts] = conflicted;
  INFO(text);
  ++counts.conflicts;
  counts.several += conflicts.size() > 1 ? 1 : 0;
  const auto errors = errors_of(lay_out(job).error());
  REQUIRE(errors.size() == conflicts.size());
  const std::vector<Remedy> remedies = remedies_for(text, job, conflicts);
  counts.helped += remedies.empty() ? 0 : 1;
  CHECK(remedies.size() <= most_remedies);
  std::set<std::string> words;
  for (const Remedy& remedy : remedies) {
    INFO(remedy.words << "\n" << edit::edit_to_json(remedy.edit));
    ++counts.remedies[kind_of(remedy.edit)];
    CHECK(words.insert(remedy.words).second);
    const auto edited = edit::apply(text, remedy.edit);
    REQUIRE(edited);
    CHECK(faults_of(edited->text).empty());
  }
  // A number that the sentence says fits is offered, unless a check finds an error with it.
  for (std::size_t i = 0; i < conflicts.size(); ++i) {
    INFO(errors[i].message);
    for (const layout::Way& way : conflicts[i].ways) {
      CHECK(errors[i].message.find(way.words) != std::string::npos);
    }
  }
  for (const char* language : {"de", "es", "fr"}) {
    const Locale locale = Locale::find(language).value();
    const auto there = remedies_for(text, job, conflicts_of(job, locale), locale);
    REQUIRE(there.size() == remedies.size());
    for (std::size_t i = 0; i < there.size(); ++i) {
      INFO(there[i].words);
      CHECK(edit::edit_to_json(there[i].edit) == edit::edit_to_json(remedies[i].edit));
      CHECK(oracle::english_in(there[i].words).empty());
    }
  }
}

}  // namespace

TEST_CASE("every remedy that is offered ends in a job that lays out without an error") {
  std::mt19937 random(151);
  Counts counts;
  const int jobs = test::how_many(500, 5000);
  for (int i = 0; i < jobs; ++i) {
    const std::string text =
        i % 2 == 0 ? file_of(test::random_job(random, 6), R"(unit="in" increment="1/16")") : [&] {
          const test::WildJob wild = test::wild_job(random, 5);
          return file_of(wild.lines, wild.attributes);
        }();
    if (const auto conflicted = conflict_in(text)) check(*conflicted, counts);
  }
  for (const auto& [kind, count] : counts.remedies) INFO(kind << ": " << count);
  CHECK(counts.conflicts > 60);
  CHECK(counts.helped * 2 > counts.conflicts);
  for (const char* kind : {"outer", "frame", "border", "gap", "rule", "several", "free outer"}) {
    INFO(kind);
    CHECK(counts.remedies[kind] > 0);
  }
}

TEST_CASE("a sum that is too large names its measures, and its numbers are the buttons") {
  const std::string text = file_of(R"(
    <layers><layer board="Oat"/></layers><outer width="22" height="16"/>
    <borders left="3" right="3"/><arrange><row gap="1">
      <opening id="a" width="9" height="10"/><opening id="b" width="9" height="10"/>
    </row></arrange>)",
                                   R"(unit="in" increment="1/16")");
  const auto conflicted = conflict_in(text);
  REQUIRE(conflicted);
  REQUIRE(conflicted->conflicts.size() == 1);
  const Concern concern = concern_of(conflicted->job, conflicted->conflicts[0].parts);
  CHECK(std::set<std::string>(concern.measures.begin(), concern.measures.end()) ==
        std::set<std::string>{"outer.width", "border.left", "border.right", "opening.a.width",
                              "opening.b.width", "arrange.1.gap.1"});
  CHECK(concern.openings == std::vector<int>{1, 2});
  const auto remedies = remedies_for(text, conflicted->job, conflicted->conflicts);
  REQUIRE(remedies.size() >= 2);
  CHECK(remedies[0].words == "an outer width of 25 in");
  CHECK(std::get<edit::State>(remedies[0].edit).name == "outer.width");
  CHECK(std::get<edit::State>(remedies[0].edit).value == "25");
  CHECK(remedies[1].words == "left and right borders of 1 1/2 in");
  // Left free the outer width comes to the number that is offered already.
  for (const Remedy& remedy : remedies) {
    CHECK(remedy.words.find("outer width free") == std::string::npos);
  }
}

TEST_CASE("two conflicts are settled together") {
  const std::string text = file_of(R"(
    <layers><layer board="Oat"/></layers><outer width="12" height="12"/><borders all="3"/>
    <arrange><opening id="a" width="9" height="10"/></arrange>)",
                                   R"(unit="in" increment="1/16")");
  const auto conflicted = conflict_in(text);
  REQUIRE(conflicted);
  REQUIRE(conflicted->conflicts.size() == 2);
  const auto remedies = remedies_for(text, conflicted->job, conflicted->conflicts);
  REQUIRE_FALSE(remedies.empty());
  CHECK(remedies[0].words == "an outer width of 15 in and an outer height of 16 in");
  CHECK(faults_of(edit::apply(text, remedies[0].edit)->text).empty());
}
