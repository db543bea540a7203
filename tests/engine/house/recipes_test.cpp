// What the recipes of DEVELOPERS.md name is there, for every shape, every rule and every verb.

#include <catch2/catch.hpp>
#include <fstream>
#include <regex>
#include <set>

#include "engine/cuts/plan/plan.h"
#include "engine/job/job_words.h"
#include "engine/job/read.h"
#include "engine/job/write.h"
#include "engine/layout/rule_words.h"
#include "engine/mat/rect.h"
#include "engine/mat/shape.h"
#include "tests/oracle/program.h"

using namespace mullion;

namespace {

std::string source(const std::string& file) {
  return oracle::read_file(std::string(MULLION_SOURCE) + "/" + file);
}

bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

// What an opening of the kind says beside its shape's word.
std::string attributes_of(ShapeKind kind) {
  switch (kind) {
    case ShapeKind::rectangle:
    case ShapeKind::ellipse:
    case ShapeKind::arch:
      return "";
    case ShapeKind::rounded:
    case ShapeKind::stepped:
    case ShapeKind::octagon:
      return "corner=\"1\"";
    case ShapeKind::outline:
      return "file=\"leaf.svg\"";
  }
  return "";
}

// A rule of the kind between the openings a and b, that holds on the increment.
std::string rule_of(Rule::Kind kind) {
  switch (kind) {
    case Rule::Kind::same_size:
      return R"(<same-size of="a b" dimension="height"/>)";
    case Rule::Kind::align:
      return R"(<align of="a b" edge="top"/>)";
    case Rule::Kind::equal:
      return R"(<equal of="border.left g"/>)";
    case Rule::Kind::multiple:
      return R"(<multiple measure="border.left" of="g" times="2"/>)";
    case Rule::Kind::fixed:
      return R"(<fixed measure="g" length="2"/>)";
    case Rule::Kind::at_least:
      return R"(<at-least measure="g" length="3"/>)";
    case Rule::Kind::at_most:
      return R"(<at-most measure="border.left" length="1 1/2"/>)";
    case Rule::Kind::centred:
      return R"(<centred what="b" on="mat" direction="down"/>)";
  }
  return "";
}

// Whether the rule holds in the layout of two openings in a row.
bool holds(Rule::Kind kind, const Layout& layout) {
  const Rect &a = layout.openings[0].rect, &b = layout.openings[1].rect;
  const Length gap = b.left - a.right, border = layout.borders.left;
  switch (kind) {
    case Rule::Kind::same_size:
      return a.height() == b.height();
    case Rule::Kind::align:
      return a.top == b.top;
    case Rule::Kind::equal:
      return border == gap;
    case Rule::Kind::multiple:
      return border == gap * 2;
    case Rule::Kind::fixed:
      return gap == inches(2);
    case Rule::Kind::at_least:
      return gap >= inches(3);
    case Rule::Kind::at_most:
      return border <= sixty_fourths(96);
    case Rule::Kind::centred:
      return b.top == layout.height - b.bottom;
  }
  return false;
}

std::string whole_job(const std::string& arrange, const std::string& rules) {
  return R"(<job version="1" reference="R-1" unit="in" increment="1/16">
    <layers><layer board="Oat"/></layers>)" +
         arrange + rules + "</job>";
}

// Written to a file, so that the paths in it are found.
Job job_of(const std::string& text, const std::string& path) {
  oracle::write_file(path, text);
  const auto checked = oracle::run({"xmllint", "--noout", "--schema",
                                    std::string(MULLION_SOURCE) + "/engine/job/job.xsd", path});
  INFO(checked.err);
  CHECK(checked.status == 0);
  return read_job(path).value();
}

}  // namespace

TEST_CASE(
    "every shape is read, written, in both schemas and the reference, on the page, drawn and cut") {
  const std::string folder = oracle::scratch_folder("shapes"),
                    prices = source("engine/shop/prices.xsd"),
                    reference = source("gallery/JOB-FILE.md"),
                    page = source("cli/page/web/opening.js");
  oracle::write_file(folder + "/leaf.svg",
                     R"(<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 80 60">)"
                     R"(<path d="M0 30 C20 0 60 0 80 30 C60 60 20 60 0 30 Z"/></svg>)");
  const auto kinds = all_words<ShapeKind>();
  REQUIRE(kinds.size() >= 7);
  for (const Word<ShapeKind>& kind : kinds) {
    const std::string word(kind.text);
    INFO(word);
    const std::string path = folder + "/" + word + ".xml";
    const Job job =
        job_of(whole_job("<arrange><opening id=\"a\" width=\"8\" height=\"6\" shape=\"" + word +
                             "\" " + attributes_of(kind.value) + "/></arrange>",
                         ""),
               path);
    CHECK(std::get<Opening>(job.arrangement.what).shape.kind == kind.value);
    const bool is_usual = kind.value == ShapeKind::rectangle;
    CHECK(has(write_job(job), "shape=\"" + word + "\"") == !is_usual);
    CHECK(has(prices, "<xs:enumeration value=\"" + word + "\"/>"));
    CHECK(has(reference, "`" + word + "`"));
    CHECK(has(page, "[\"" + word + "\", say("));

    const Mat mat = build_mat(job, lay_out(job).value()).value();
    const Window& window = mat.layers.front().windows.front();
    CHECK((window.back_edge == rectangle(window.back)) == is_usual);
    const CuttingPlan plan = plan_cutting(mat, default_cutter()).value();
    const Stage& stage = plan.stages.front();
    CHECK(stage.set_ups.size() + stage.skew_cuts.size() + stage.curves.size() > 0);
    const auto proof =
        oracle::mullion({"proof", path, "-o", folder + "/proof.svg", "--language", "de"});
    INFO(proof.err);
    CHECK(proof.status == 0);
  }
}

TEST_CASE("every rule is read, written, in the schema and the reference, kept and put into words") {
  const std::string folder = oracle::scratch_folder("rules"),
                    reference = source("gallery/JOB-FILE.md");
  const std::string arrange = R"(<arrange><row><opening id="a" width="8" height="6"/><gap id="g"/>
    <opening id="b" width="6" height="free"/></row></arrange>)";
  std::set<std::string> told;
  REQUIRE(rule_words().size() >= 8);
  for (const Word<Rule::Kind>& kind : rule_words()) {
    const std::string word(kind.text);
    INFO(word);
    const Job job = job_of(whole_job(arrange, "<rules>" + rule_of(kind.value) + "</rules>"),
                           folder + "/" + word + ".xml");
    REQUIRE(job.rules.size() == 1);
    CHECK(job.rules[0].kind == kind.value);
    const std::string written = write_job(job);
    CHECK(has(written, "<" + word + " "));
    CHECK(write_job(parse_job(written, job.file).value()) == written);
    CHECK(has(reference, "\n### " + word + "\n"));
    CHECK(holds(kind.value, lay_out(job).value()));
    const std::string words = words_of(job.rules[0], job.scale);
    CHECK_FALSE(words.empty());
    CHECK(told.insert(words).second);
  }
}

TEST_CASE(
    "every verb has a file of its own, is in the program's help, and README says what it is for") {
  static const std::regex declared("void add_(\\w+)\\(CommandLine& program\\);");
  const std::string header = source("cli/verb.h"), readme = source("README.md");
  const std::string help = oracle::mullion({"--help"}).out;
  std::set<std::string> verbs;
  for (std::sregex_iterator it(header.begin(), header.end(), declared), end; it != end; ++it) {
    verbs.insert((*it)[1]);
  }
  REQUIRE(verbs.size() > 10);
  for (const std::string& verb : verbs) {
    INFO(verb);
    CHECK(std::ifstream(std::string(MULLION_SOURCE) + "/cli/verbs/" + verb + ".cpp").good());
    CHECK(has(help, "\n  " + verb + " "));
    CHECK(has(readme, "mullion " + verb));
    CHECK(oracle::mullion({verb, "--help"}).status == 0);
  }
}
