// What is said of bad arrangements and rules: each message, with its exact place.

#include "complaint.h"
#include "engine/job/write.h"

using complaint::arrange;
using complaint::expect;
using complaint::job;
using complaint::layers;
using complaint::pictures;

namespace {

std::string arranged(const std::string& parts) {
  return job(pictures + layers + "<arrange>\n" + parts + "\n</arrange>");
}
std::string with_opening(const std::string& opening) {
  return arranged(opening);
}
std::string with_rule(const std::string& rule) {
  return job(pictures + layers + arrange + "<rules>\n  " + rule + "\n</rules>");
}

const std::string dune = "<opening picture=\"dune\"/>";
const std::string pier = "<opening picture=\"pier\"/>";

}  // namespace

TEST_CASE("an arrangement is one opening, row or column") {
  expect(
      job(pictures + layers + "@<arrange/>"), "job-arrange-one",
      "found nothing in <arrange>; expected one opening, row or column (several go into a row or "
      "a column)");
  expect(arranged(dune + "@" + pier), "job-arrange-one",
         "found a second part in <arrange>; expected one opening, row or column (several go into a "
         "row or a column)");
  expect(arranged("@<row/>"), "job-missing-element",
         "found nothing to arrange in <row>; expected an opening, a row or a column");
  expect(arranged("<row>@<colum>" + dune + "</colum>" + dune + "</row>"), "job-unknown-element",
         "unknown element <colum> in <row>; did you mean \"column\"?");
  expect(arranged("<row @align=\"left\">" + dune + "</row>"), "job-unknown-word",
         "found align=\"left\" in <row>; expected \"top\", \"centre\", \"bottom\" or \"stretch\"");
  expect(arranged("<column @align=\"center\">" + dune + "</column>"), "job-unknown-word",
         "found align=\"center\" in <column>; did you mean \"centre\"?");
}

TEST_CASE("a gap stands between two neighbours") {
  const std::string message =
      "found a <gap> that is not between two neighbours; expected one opening, row or column "
      "before "
      "it and one after it";
  expect(arranged("<row>@<gap/>" + dune + "</row>"), "job-stray-gap", message);
  expect(arranged("<row>" + dune + "@<gap/></row>"), "job-stray-gap", message);
  expect(arranged("<row>" + dune + "<gap/>@<gap/>" + pier + "</row>"), "job-stray-gap", message);
  expect(arranged("<row>" + dune + "<gap @size=\"0\"/>" + pier + "</row>"), "job-out-of-range",
         "found size=\"0\" in <gap>; expected a length above zero");
}

TEST_CASE("openings, groups and gaps have ids of their own") {
  const std::string message =
      "found a second opening, group or gap called \"dune\"; the first is on line 5; expected an "
      "id "
      "of its own";
  expect(arranged("<row>" + dune + "\n<opening @id=\"dune\" picture=\"pier\"/></row>"),
         "job-repeated-id", message);
  expect(arranged("<row>" + dune + "\n<gap @id=\"dune\"/>" + pier + "</row>"), "job-repeated-id",
         message);
  expect(arranged("<column>" + dune + "\n<row @id=\"dune\">" + pier + "</row></column>"),
         "job-repeated-id", message);
  expect(arranged("<row>" + dune + "<gap @id=\"a b\"/>" + pier + "</row>"), "job-bad-id",
         "found id=\"a b\" in <gap>; expected a name of letters, digits, hyphens and underscores");
}

TEST_CASE("a picture shows in one opening") {
  expect(arranged("<row>" + dune + "\n<opening @picture=\"dune\"/></row>"), "job-picture-twice",
         "found picture \"dune\" in a second opening; it is already in that of line 5");
  expect(with_opening("<opening @picture=\"dun\"/>"), "job-unknown-id",
         "found no picture \"dun\"; did you mean \"dune\"?");
  expect(with_opening("<opening @picture=\"mountain\"/>"), "job-unknown-id",
         "found no picture \"mountain\"; expected \"dune\" or \"pier\"");
}

TEST_CASE("an opening has a size, and its shape the attributes of that shape") {
  expect(with_opening("@<opening width=\"1\"/>"), "job-missing-attribute",
         "found no height in <opening>; expected a length or \"free\", since it shows no picture");
  expect(
      with_opening("<opening picture=\"dune\" @width=\"free\"/>"), "job-free-picture",
      "found width=\"free\" in <opening>; expected a length, or nothing: then the window fits the "
      "picture");
  expect(with_opening("<opening picture=\"dune\" @shape=\"elipse\"/>"), "job-unknown-word",
         "found shape=\"elipse\" in <opening>; did you mean \"ellipse\"?");
  expect(with_opening("<opening picture=\"dune\" @shape=\"letters\" file=\"a.svg\"/>"),
         "job-letters",
         "found shape=\"letters\" in <opening>; expected another shape: letters are not cut as "
         "openings, but an \"outline\" may be one letter, drawn as a path in an SVG file");
  expect(with_opening("<opening picture=\"dune\" @shape=\"circle\"/>"), "job-not-equal-sided",
         "found shape=\"circle\" in <opening>; expected a stated width, or width and height alike "
         "(they are 9 3/4 in and 7 3/4 in)");
  expect(with_opening("<opening width=\"4\" height=\"5\" @shape=\"square\"/>"),
         "job-not-equal-sided",
         "found shape=\"square\" in <opening>; expected a stated width, or width and height alike "
         "(they are 4 in and 5 in)");
  expect(with_opening("@<opening picture=\"dune\" shape=\"rounded\"/>"), "job-missing-attribute",
         "found no corner in <opening>; expected a length");
  expect(with_opening("<opening picture=\"dune\" shape=\"octagon\" @corner=\"4\"/>"),
         "job-out-of-range",
         "found corner=\"4\" in <opening>; expected less than half of the opening's width and "
         "height");
  expect(with_opening("<opening picture=\"dune\" @corner=\"1\"/>"), "job-not-of-this-shape",
         "found corner on an opening of another shape; expected it with shape \"rounded\", "
         "\"stepped\" or \"octagon\"");
  expect(with_opening("<opening picture=\"dune\" shape=\"arch\" @rise=\"5\"/>"), "job-out-of-range",
         "found rise=\"5\" in <opening>; expected at most half of the opening's width, which is a "
         "half round");
  expect(with_opening("<opening width=\"20\" height=\"5\" shape=\"arch\" @rise=\"5\"/>"),
         "job-out-of-range",
         "found rise=\"5\" in <opening>; expected less than the opening's height");
  expect(with_opening("@<opening picture=\"dune\" shape=\"outline\"/>"), "job-missing-attribute",
         "found no file in <opening>; expected an SVG file");
  expect(with_opening("<opening picture=\"dune\" shape=\"outline\" @file=\"../leaf.svg\"/>"),
         "job-bad-path",
         "found file=\"../leaf.svg\" in <opening>; expected a path that stays in the job file's "
         "folder");
}

TEST_CASE("windows and reveals speak of layers that are there") {
  expect(arranged("<row @window=\"3\">" + dune + "</row>"), "job-bad-number",
         "found window=\"3\" in <row>; expected a whole number from 1 to 2");
  expect(arranged("<row window=\"2\"><column @window=\"2\">" + dune + "</column></row>"),
         "job-window-twice",
         "found a window of layer 2 within a group that has one window of that layer; expected one "
         "of them");
  expect(with_opening("<opening picture=\"dune\"><reveal @layer=\"1\"/></opening>"),
         "job-bad-number", "found layer=\"1\" in <reveal>; expected a whole number from 2 to 2");
  expect(job("<layers><layer/></layers><arrange><opening width=\"1\" height=\"1\"><reveal "
             "@layer=\"2\"/></opening></arrange>"),
         "job-bad-number", "found layer=\"2\" in <reveal>; expected at least 2 layers in <layers>");
  expect(with_opening("<opening picture=\"dune\">@<reveal all=\"1\"/></opening>"),
         "job-missing-attribute",
         "found no layer in <reveal>; expected the number of a layer below the top one");
  expect(with_opening("<opening picture=\"dune\"><reveal layer=\"2\"/><reveal @layer=\"2\"/>"
                      "</opening>"),
         "job-reveal-twice", "found a second reveal of layer 2 in one opening; expected one");
  expect(with_opening("<opening picture=\"dune\">@<groove width=\"1/16\"/></opening>"),
         "job-missing-attribute", "found no distance in <groove>; expected a length");
}

TEST_CASE("a rule is one of the known kinds and names what is there") {
  expect(with_rule("@<centered what=\"dune\"/>"), "job-unknown-element",
         "unknown element <centered> in <rules>; did you mean \"centred\"?");
  expect(with_rule("<same-size @of=\"dune\"/>"), "job-too-few",
         "found of=\"dune\" in <same-size>; expected at least two names with blanks between them");
  expect(with_rule("@<same-size/>"), "job-missing-attribute",
         "found no of in <same-size>; expected names with blanks between them");
  expect(with_rule("<same-size @of=\"dune dune\"/>"), "job-repeated-name",
         "found \"dune\" twice in one rule; expected it once");
  expect(with_rule("<same-size @of=\"dune peer\"/>"), "job-unknown-id",
         "found no opening, row or column \"peer\"; did you mean \"pier\"?");
  expect(with_rule("<same-size of=\"dune pier\" @dimension=\"widht\"/>"), "job-unknown-word",
         "found dimension=\"widht\" in <same-size>; did you mean \"width\"?");
  expect(with_rule("@<align of=\"dune pier\"/>"), "job-missing-attribute",
         "found no edge in <align>; expected \"left\", \"top\", \"right\", \"bottom\", "
         "\"centre\" or \"middle\"");
  expect(with_rule("<align of=\"dune pier\" @edge=\"lefft\"/>"), "job-unknown-word",
         "found edge=\"lefft\" in <align>; did you mean \"left\"?");
  expect(with_rule("<equal @of=\"g1 gap\"/>"), "job-unknown-measure",
         "found no gap \"gap\"; expected \"g1\"");
  expect(with_rule("<equal @of=\"g1 dune\"/>"), "job-unknown-measure",
         "found \"dune\", which is no measure; expected one such as \"dune.width\"");
  expect(with_rule("<equal @of=\"g1 border\"/>"), "job-unknown-measure",
         "found \"border\", which is no measure; expected one such as \"border.left\"");
  expect(with_rule("<equal @of=\"g1 dun.left\"/>"), "job-unknown-id",
         "found nothing called \"dun\", of which \"dun.left\" would be a measure; did you mean "
         "\"dune\"?");
  expect(with_rule("<equal @of=\"g1 dune.widht\"/>"), "job-unknown-measure",
         "found no measure \"dune.widht\"; did you mean \"width\"?");
  expect(with_rule("<equal @of=\"g1 outer.left\"/>"), "job-unknown-measure",
         "found no measure \"outer.left\"; expected \"width\" or \"height\"");
  expect(with_rule("@<multiple measure=\"g1\" of=\"dune.width\"/>"), "job-missing-attribute",
         "found no times in <multiple>; expected a number such as 2 or 3/2");
  expect(with_rule("<multiple measure=\"g1\" of=\"dune.width\" @times=\"1000\"/>"),
         "job-bad-number",
         "found times=\"1000\" in <multiple>; expected a number from 1/100 to 100 such as 2, 3/2, "
         "1 1/2 or 1.5");
  expect(with_rule("@<fixed measure=\"g1\"/>"), "job-missing-attribute",
         "found no length in <fixed>; expected a length");
  expect(with_rule("@<at-most length=\"1\"/>"), "job-missing-attribute",
         "found no measure in <at-most>; expected a measure such as g1 or border.left");
  expect(with_rule("<at-least @measure=\"h1\" length=\"1\"/>"), "job-unknown-measure",
         "found no gap \"h1\"; did you mean \"g1\"?");
  expect(with_rule("<centred what=\"dune\" @on=\"mtt\"/>"), "job-unknown-id",
         "found no opening, row or column \"mtt\"; did you mean \"mat\"?");
  expect(with_rule("<centred what=\"dune\" @direction=\"up\"/>"), "job-unknown-word",
         "found direction=\"up\" in <centred>; expected \"both\", \"across\" or \"down\"");
  expect(with_rule("<equal of=\"g1 outer.width\" @strength=\"week\"/>"), "job-unknown-word",
         "found strength=\"week\" in <equal>; did you mean \"weak\"?");
}

TEST_CASE("a part is moved, or lies on the mat, by words that its group understands") {
  expect(arranged("<row><opening picture=\"dune\" @move-left=\"1\" move-right=\"1\"/></row>"),
         "job-moved-twice", "found move-right and move-left on one part; expected one of them");
  expect(arranged("<row><opening picture=\"dune\" @left=\"1\"/></row>"), "job-unknown-attribute",
         "unknown attribute \"left\" in <opening>; expected \"picture\", \"id\", \"width\", "
         "\"height\", "
         "\"shape\", \"corner\", \"rise\", \"file\", \"path\", \"move-right\", \"move-left\", "
         "\"move-down\" or \"move-up\"");
  expect(arranged("<places><opening picture=\"dune\" @move-up=\"1\"/></places>"),
         "job-unknown-attribute",
         "unknown attribute \"move-up\" in <opening>; expected \"picture\", \"id\", \"width\", "
         "\"height\", \"shape\", \"corner\", \"rise\", \"file\", \"path\", \"left\", \"top\", "
         "\"right\" or \"bottom\"");
  expect(arranged("<row>" + pier + "@<places>" + dune + "</places></row>"), "job-unknown-element",
         "unknown element <places> in <row>; expected \"opening\", \"row\", \"column\", \"ring\", "
         "\"gap\" or \"groove\"");
}

TEST_CASE("a ring has one centre at most, something around it, and no one window") {
  const std::string centre = "<opening picture=\"dune\" centre=\"yes\"/>";
  expect(arranged("@<ring>" + centre + "<opening picture=\"pier\" centre=\"yes\"/></ring>"),
         "job-ring-centre",
         "found 2 parts with centre=\"yes\" in one <ring>; expected one at most");
  expect(arranged("@<ring>" + centre + "</ring>"), "job-missing-element",
         "found nothing around the centre of <ring>; expected an opening, a row or a column");
  expect(arranged("<row window=\"1\">@<ring>" + dune + "</ring>" + pier + "</row>"),
         "job-ring-in-window",
         "found a <ring> within a row or column that has one window in a layer; expected rows and "
         "columns alone");
  expect(
      arranged("<ring @align=\"top\">" + dune + pier + "</ring>"), "job-unknown-attribute",
      "unknown attribute \"align\" in <ring>; expected \"id\", \"across\", \"down\", \"first\" or "
      "\"gap\"");
}

TEST_CASE(
    "an opening that is turned, and one within another, are refused with what to do instead") {
  const auto with = [](const std::string& arrangement) {
    return job(pictures + layers + "<arrange>" + arrangement + "</arrange>\n");
  };
  const std::string upright =
      "; expected none, since openings stand upright; draw the turned window as a path in an SVG "
      "file and use shape=\"outline\"";
  expect(with("<opening picture=\"dune\" @angle=\"5\"/>"), "job-turned-opening",
         "found angle=\"5\" in <opening>" + upright);
  expect(with("<row @rotation=\"-3.5\"><opening picture=\"dune\"/></row>"), "job-turned-opening",
         "found rotation=\"-3.5\" in <row>" + upright);
  const std::string beside =
      "; expected it beside, since what an opening leaves inside falls out of the board; state the "
      "inner mat in a job file of its own, and mount it on the backing";
  expect(with("<opening picture=\"dune\">@<opening width=\"4\" height=\"4\"/></opening>"),
         "job-nested-opening", "found <opening> in <opening>" + beside);
  expect(with("<opening picture=\"dune\">@<row><opening picture=\"pier\"/></row></opening>"),
         "job-nested-opening", "found <row> in <opening>" + beside);
}

// A gauge reads thousandths of an inch, of which few are whole ticks.
TEST_CASE("a measured thickness is taken to the nearest tick, with a note; what is cut is exact") {
  using namespace mullion;
  const auto read = [](const std::string& parts) { return parse_job(job(parts), "gauge.xml"); };
  const auto measured = read(pictures + "<layers><layer thickness=\"0.055\"/></layers>" + arrange);
  REQUIRE(measured);
  CHECK(measured->layers.front().thickness == Length::from_ticks(2235));  // 2235.2 of 1/40640 in
  REQUIRE(measured->remarks.size() == 1);
  const Problem& note = measured->remarks.front();
  CHECK(note.severity == Severity::note);
  CHECK(note.code == "job-measured");
  CHECK(note.place.line == 3);
  CHECK(note.place.column == 16);
  CHECK(note.message ==
        "thickness of <layer>: \"0.055\" is taken to the nearest tick (1/40640 in), less than "
        "0.0004 mm away");
  const auto again = parse_job(write_job(*measured), "again.xml");
  REQUIRE(again);
  CHECK(again->layers.front().thickness == Length::from_ticks(2235));
  CHECK(
      read(pictures + "<layers><layer thickness=\"1.5 mm\"/></layers>" + arrange)->remarks.empty());
  expect(
      job(pictures + "<layers><layer/><layer @reveal=\"0.055\"/></layers>" + arrange),
      "job-bad-length",
      "reveal of <layer>: \"0.055\" is not a whole number of ticks (1/40640 in); the nearest are "
      "447/8128 and 559/10160 in");
}
