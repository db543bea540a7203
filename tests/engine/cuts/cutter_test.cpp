#include <catch2/catch.hpp>
#include <regex>

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
  CHECK(over_cut(cutter, sixty_fourths(4), sixty_fourths(4)) == sixty_fourths(6));
  CHECK(over_cut(cutter, sixty_fourths(6), sixty_fourths(6)) == sixty_fourths(7));
  CHECK(over_cut(cutter, sixty_fourths(2), sixty_fourths(2)) == sixty_fourths(3));
  CHECK(over_cut(cutter, sixty_fourths(16), sixty_fourths(16)) == sixty_fourths(16));
  // An entry holds to the tick, also where a thicker board needs less.
  cutter.over_cuts = {{Length::from_ticks(1600), Length::from_ticks(2900)},
                      {Length::from_ticks(1754), Length::from_ticks(1754)}};
  CHECK(over_cut(cutter, Length::from_ticks(1754), Length::from_ticks(1754)) ==
        Length::from_ticks(1754));
}

// Worked by hand: the blade needs 1/16 in past the lines on board 1/16 in thick.
TEST_CASE("at another angle the bevel's run changes, and what the blade needs beyond it stays") {
  CutterProfile cutter = default_cutter();
  const Length thickness = sixty_fourths(4);
  CHECK(over_cut(cutter, thickness, Length()) == Length());
  cutter.over_cuts = {{thickness, sixty_fourths(6)}};
  CHECK(over_cut(cutter, thickness, sixty_fourths(7)) == sixty_fourths(9));
  CHECK(over_cut(cutter, thickness, Length()) == sixty_fourths(2));
  cutter.over_cuts = {{thickness, sixty_fourths(3)}};
  CHECK(over_cut(cutter, thickness, Length()) == Length());
}

// The slanting way through board of thickness t is t times the square root of 2 at 45 degrees,
// twice t at 30 degrees and t at 90.
TEST_CASE("how deep the blade goes decides the passes, by the slanting way through the board") {
  CutterProfile cutter = default_cutter();
  cutter.deepest_cut = millimetres(3);
  cutter.deepest_in_two = millimetres(5);
  CHECK(passes(cutter, millimetres(3), millimetres(3)) == 1);
  CHECK(passes(cutter, millimetres(4), millimetres(4)) == 2);
  CHECK(passes(cutter, millimetres(4), Length()) == 1);
  CHECK(passes(cutter, millimetres(6), millimetres(6)) == 0);
  cutter.deepest_in_two.reset();
  CHECK(passes(cutter, millimetres(4), millimetres(4)) == 0);
  cutter.deepest_cut.reset();
  CHECK(passes(cutter, inches(1), inches(1)) == 1);
}

TEST_CASE("a cutter file of before says what has not been measured since, and still reads") {
  const std::string old =
      R"(<cutter version="1" id="mine" unit="in" division="1/16">
      <rail longest-cut="48" widest-board="60"/><blade mark-lead="1/16"/><arm length="32"/>
      <over-cut thickness="1/16" distance="1/16"/></cutter>)";
  const CutterProfile cutter = parse_cutter(old, "mine.xml").value();
  CHECK_FALSE(cutter.reach);
  CHECK_FALSE(cutter.thickest_board);
  CHECK_FALSE(cutter.line_from_rail);
  CHECK_FALSE(cutter.deepest_cut);
  CHECK(start_lead(cutter) == sixty_fourths(4));
  CHECK(cutter.stroke == Stroke::pull);
}

TEST_CASE("every part of a cutter's profile is written, accepted by xmllint, and read back") {
  CutterProfile cutter = default_cutter();
  cutter.stroke = Stroke::push;
  cutter.mark_lead = -sixty_fourths(2);
  cutter.own_start_lead = sixty_fourths(3);
  cutter.start_extra = -sixty_fourths(1);
  cutter.line_from_rail = -sixty_fourths(20);
  cutter.errors.stop = millimetres(1);
  cutter.error_price = 45;
  cutter.prefers = Way::gauges;
  cutter.farther_first = false;
  const std::string path = oracle::scratch_folder("cutter-parts") + "/all.xml";
  oracle::write_file(path, write_cutter(cutter));
  const oracle::Run run = oracle::run({"xmllint", "--noout", "--schema", schema, path});
  INFO(run.err);
  CHECK(run.status == 0);
  const auto read = read_cutter(path);
  INFO((read ? std::string() : to_string(read.error().front())));
  REQUIRE(read);
  CHECK(*read == cutter);
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
  const MeasuredUp found = measure_up(cutter, measures).value();
  CHECK(found.cutter.guide->zero == -sixty_fourths(2));
  CHECK(found.cutter.mark_lead == sixty_fourths(5));
  CHECK(found.cutter.near_stop->zero == Length());
  CHECK(found.cutter.far_stop->zero == -sixty_fourths(1));
  // It went 4 - 4 + 5 sixty-fourths past the line, one more than it had to.
  CHECK(over_cut(found.cutter, sixty_fourths(4), sixty_fourths(4)) == sixty_fourths(4));
  REQUIRE(found.turn.size() == 1);  // one reading of the line
}

// Over-cut 1/16 with a lead of 1/16 in; the blade leads by 1/8 and goes 1/16 past
// the corner. The mark stood on the line, so the blade went 1/8 past it, and must go 1/16.
TEST_CASE("a lead that is measured anew does not leave the corners uncut") {
  TestMeasures measures;
  measures.thickness = sixty_fourths(4);
  measures.mark = sixty_fourths(8);
  measures.corner = sixty_fourths(4);
  const CutterProfile corrected = measure_up(default_cutter(), measures).value().cutter;
  CHECK(over_cut(corrected, sixty_fourths(4), sixty_fourths(4)) == sixty_fourths(4));
  CHECK(corrected.mark_lead == sixty_fourths(8));
  measures = {};
  measures.thickness = sixty_fourths(4);
  measures.mark = -sixty_fourths(2);
  const CutterProfile short_of_it = measure_up(default_cutter(), measures).value().cutter;
  CHECK(parse_cutter(write_cutter(short_of_it), "mine.xml").value() == short_of_it);
}

TEST_CASE("two readings show a guide that is not parallel, and an arm that is not square") {
  TestMeasures measures;
  measures.thickness = sixty_fourths(4);
  measures.line = inches(3);
  measures.line_far = inches(3) + millimetres(1);
  // A square of 300 mm whose corner at A and B is a thousandth wider than a right angle.
  measures.diagonal_ab = Length::from_ticks(678'483);
  measures.diagonal_bc = Length::from_ticks(679'162);
  const MeasuredUp found = measure_up(default_cutter(), measures).value();
  REQUIRE(found.turn.size() == 2);
  CHECK(found.turn[0].find("too far from the rail") != std::string::npos);
  CHECK(found.turn[1].find("wider than a right angle") != std::string::npos);
  measures.line_far = measures.line;
  measures.diagonal_bc = measures.diagonal_ab;
  CHECK(measure_up(default_cutter(), measures).value().turn.empty());
}

TEST_CASE("a measure that no cutter gives is refused") {
  TestMeasures measures;
  measures.thickness = sixty_fourths(4);
  measures.line = inches(9);
  CHECK_FALSE(measure_up(default_cutter(), measures));
  measures.line = inches(3);
  CHECK_FALSE(measure_up(*generic_cutter("plain-bench"), measures));
}

TEST_CASE("the manual's table of the cutter's profile has every word of its schema") {
  const std::string schema = oracle::read_file(MULLION_SOURCE "/engine/cuts/cutter/cutter.xsd");
  const std::string readme = oracle::read_file(MULLION_SOURCE "/README.md");
  const std::size_t from = readme.find("## Your cutter"), to = readme.find("\n## ", from);
  REQUIRE(to != std::string::npos);
  const std::string table = readme.substr(from, to - from);
  static const std::regex word("attribute name=\"([a-z0-9-]+)\"");
  int words = 0;
  for (std::sregex_iterator at(schema.begin(), schema.end(), word), end; at != end; ++at) {
    const std::string name = (*at)[1];
    if (name == "version" || name == "id" || name == "name") continue;
    ++words;
    INFO(name);
    CHECK(std::regex_search(table, std::regex("[` ]" + name + "`")));
  }
  CHECK(words > 40);
}
