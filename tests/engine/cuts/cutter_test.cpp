#include <catch2/catch.hpp>

#include "engine/cuts/cutter/check.h"
#include "engine/cuts/cutter/profile_file.h"
#include "tests/oracle/program.h"

using namespace mullion;

namespace {

const char* const schema = MULLION_SOURCE "/engine/cuts/cutter/cutter.xsd";

std::string replaced(std::string text, const std::string& what, const std::string& by) {
  const std::size_t at = text.find(what);
  REQUIRE(at != std::string::npos);
  return text.replace(at, what.size(), by);
}

}  // namespace

TEST_CASE("the generic cutters are written, accepted by xmllint, and read back the same") {
  const std::string folder = oracle::scratch_folder("cutter-files");
  for (const CutterProfile& cutter : generic_cutters()) {
    const std::string path = folder + "/" + cutter.id + ".xml";
    oracle::write_file(path, write_cutter(cutter));
    const oracle::Run run = oracle::run({"xmllint", "--noout", "--schema", schema, path});
    INFO(run.err);
    CHECK(run.status == 0);
    CHECK(read_cutter(path).value() == cutter);
  }
}

TEST_CASE("what is wrong with a cutter file is said at its place") {
  const std::string good = write_cutter(default_cutter());
  const auto errors = [](const std::string& text) {
    const auto cutter = parse_cutter(text, "mine.xml");
    REQUIRE_FALSE(cutter);
    std::string all;
    for (const Problem& problem : cutter.error()) all += to_string(problem) + "\n";
    return all;
  };
  CHECK(errors(replaced(good, "<guide least=\"1\" most=\"8\"", "<guide least=\"9\" most=\"8\""))
            .find("mine.xml:5:20: error: ") == 0);
  CHECK(errors(replaced(good, "<rail", "<raill")).find("did you mean") != std::string::npos);
  CHECK(errors(replaced(good, "end=\"near\"", "end=\"far\"")).find("second far stop") !=
        std::string::npos);
  CHECK(errors("<job/>").find("expected <cutter>") != std::string::npos);
  CHECK(errors("<cutter").size() > 0);
}

TEST_CASE("an over-cut goes by the table, in proportion between two entries") {
  CutterProfile cutter = default_cutter();
  cutter.over_cuts = {{sixty_fourths(4), sixty_fourths(6)}, {sixty_fourths(8), sixty_fourths(8)}};
  CHECK(over_cut(cutter, sixty_fourths(4)) == sixty_fourths(6));
  CHECK(over_cut(cutter, sixty_fourths(6)) == sixty_fourths(7));
  CHECK(over_cut(cutter, sixty_fourths(2)) == sixty_fourths(3));
  CHECK(over_cut(cutter, sixty_fourths(16)) == sixty_fourths(16));
}

TEST_CASE("what was measured on the test cuts becomes corrections") {
  const CutterProfile cutter = default_cutter();
  const TestCut test = test_cut(cutter, sixty_fourths(4));
  TestMeasures measures;
  measures.thickness = sixty_fourths(4);
  measures.line = *test.guide + sixty_fourths(2);          // it cuts wider than it shows
  measures.mark = sixty_fourths(5);                        // the blade leads more than thought
  measures.near_end = *test.near_stop - sixty_fourths(5);  // exactly where it should end
  measures.far_end = *test.far_stop + sixty_fourths(5) + sixty_fourths(1);
  measures.corner = sixty_fourths(1);
  const CutterProfile corrected = measure_up(cutter, measures).value().cutter;
  CHECK(corrected.guide->zero == -sixty_fourths(2));
  CHECK(corrected.mark_lead == sixty_fourths(5));
  CHECK(corrected.near_stop->zero == Length());
  CHECK(corrected.far_stop->zero == -sixty_fourths(1));
  CHECK(over_cut(corrected, sixty_fourths(4)) == sixty_fourths(3));
}

TEST_CASE("a measure that no cutter gives is refused") {
  TestMeasures measures;
  measures.thickness = sixty_fourths(4);
  measures.line = inches(9);
  CHECK_FALSE(measure_up(default_cutter(), measures));
  measures.line = inches(3);
  CHECK_FALSE(measure_up(*generic_cutter("plain-bench"), measures));
}
