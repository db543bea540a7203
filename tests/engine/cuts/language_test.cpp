#include <catch2/catch.hpp>
#include <filesystem>
#include <set>

#include "engine/cuts/sheet/cautions.h"
#include "engine/cuts/sheet/dials.h"
#include "engine/cuts/sheet/words.h"
#include "engine/job/read.h"
#include "mats.h"
#include "tests/oracle/english.h"
#include "tests/oracle/program.h"

using namespace mullion;

namespace {

using Texts = std::vector<std::string>;

std::string texts_of(const ToldPlan& plan, const Stage& stage) {
  Texts out{stage_text(plan, stage), prepare_text(plan, stage), shift_text(plan, stage),
            by_eye_text(plan, stage), outside_blocks_text(plan, stage)};
  for (const Marking& marking : markings_of(stage))
    out.push_back(marking_text(plan, stage, marking));
  for (const SetUp& set_up : stage.set_ups) {
    for (const Dial& dial : dials_of(plan, set_up.settings, {})) {
      out.push_back(dial.name + " " + dial.shows);
    }
    if (set_up.settings.block) out.push_back(block_text(plan, *set_up.settings.block));
    if (set_up.settings.arm_block) {
      out.push_back(arm_block_text(plan, *set_up.settings.arm_block));
    }
    for (const Placement& placement : set_up.placements) {
      out.push_back(lay_text(plan, placement.edge, placement.laid, placement.turns));
      for (const BevelCut& cut : placement.cuts) out.push_back(brief_ends_text(plan, stage, cut));
    }
  }
  for (const SkewCut& cut : stage.skew_cuts) out.push_back(skew_brief_text(plan, stage, cut));
  if (!stage.skew_cuts.empty()) out.push_back(skew_marks_text(plan, stage));
  for (const std::string& curve : curve_texts(plan, stage)) out.push_back(curve);
  for (const GrooveTrim& trim : stage.trims) out.push_back(trim_text(plan, trim));
  for (const std::string& text : guide_marking_texts(plan, stage)) out.push_back(text);
  for (const std::string& text : spacer_texts(plan, stage)) out.push_back(text);
  for (const Check& check : stage.checks) out.push_back(check_text(plan, stage, check));
  std::string all;
  for (const std::string& text : out) all += text + "\n";
  return all;
}

// All that paper says of a plan.
std::string texts_of(const ToldPlan& plan) {
  std::string all;
  for (const std::string& caution : cautions(plan)) all += caution + "\n";
  all += chosen_text(plan, plan.locale) + "\n" + gauges_text(plan) + "\n";
  all += how_boards_lie(plan.cutter, plan.locale) + "\n" + line_up_text(plan) + "\n";
  for (const StraightCut& side : plan.blanks) all += blank_text(plan, side) + "\n";
  for (const Stage& stage : plan.stages) all += texts_of(plan, stage);
  return all;
}

// Words with a number in them are the same in every language: "1/16 in", "A".
void check_languages(const CuttingPlan& plan) {
  REQUIRE_FALSE(oracle::english_in(texts_of(ToldPlan{plan, {}})).empty());
  for (const char* language : {"de", "es", "fr"}) {
    const std::string told = texts_of(ToldPlan{plan, Locale::find(language).value()});
    INFO(language << "\n" << told);
    CHECK(oracle::english_in(told) == Texts{});
  }
}

}  // namespace

TEST_CASE("the plan of any mat, and every kind of note on it, is told in the reader's language") {
  std::mt19937 random(97);
  std::set<std::string_view> noted;
  int planned = 0;
  for (int i = 0; i < 150; ++i) {
    const Mat mat = mats::random_mat(random);
    CutterProfile cutter = mats::random_cutter(random);
    if (i % 3 == 0)
      cutter.longest_cut = std::max(mat.outer.width(), mat.outer.height()) - inches(2);
    PlanOptions options;
    options.stacked = random() % 3 > 0;
    if (i % 5 == 0) cutter.over_cuts = {{sixty_fourths(3), sixty_fourths(3)}};
    if (i % 5 == 0) cutter.deepest_cut = cutter.deepest_in_two = std::nullopt;
    if (i % 5 == 1) cutter.deepest_cut = Length::from_ticks(1800);
    const auto plan = plan_cutting(mat, cutter, options);
    if (!plan) continue;
    ++planned;
    for (const PlanNote& note : plan->notes) noted.insert(code_of(note));
    check_languages(*plan);
  }
  CHECK(planned > 100);
  CHECK(noted.size() == std::variant_size_v<PlanNote>);
}

TEST_CASE("the plan of every gallery job is told in the reader's language") {
  std::size_t jobs = 0;
  for (const auto& entry : std::filesystem::directory_iterator(oracle::gallery(""))) {
    if (entry.path().extension() != ".xml") continue;
    const Job job = read_job(entry.path().string()).value();
    const auto plan = plan_cutting(build_mat(job, lay_out(job).value()).value(), default_cutter());
    INFO(entry.path());
    check_languages(plan.value());
    ++jobs;
  }
  CHECK(jobs > 25);
}

TEST_CASE("a plan is the same values whoever reads it") {
  std::mt19937 random(5);
  const Mat mat = mats::random_mat(random);
  const ToldPlan german{plan_cutting(mat, default_cutter()).value(), Locale::find("de").value()};
  for (const PlanNote& note : {PlanNote(UnevenShift{2}), PlanNote(BeyondGuide{3, inches(7)}),
                               PlanNote(LongBlank{inches(60)})}) {
    const std::string english = sentence_of(note, Unit::inch, {});
    CHECK(english.back() == '.');
    CHECK(sentence_of(note, Unit::inch, german.locale) != english);
  }
  CHECK(sentence_of(BeyondGuide{1, millimetres(180)}, Unit::millimetre, {}) ==
        "1 line lies beyond the guide's reach of 180 mm: cut freehand against the rail on a pencil "
        "line.");
}
