// What is said of a bad job file, part by part: each message, with its exact place.

#include "complaint.h"

using complaint::arrange;
using complaint::expect;
using complaint::job;
using complaint::layers;
using complaint::pictures;

namespace {

std::string with_picture(const std::string& picture) {
  return job("<pictures>\n  " + picture + "\n</pictures>" + layers +
             "<arrange><opening width=\"1\" height=\"1\"/></arrange>");
}
std::string with_layers(const std::string& text) {
  return job(pictures + text + arrange);
}
std::string with_part(const std::string& text) {
  return job(pictures + layers + arrange + text);
}
std::string with_head(const std::string& head) {
  return "<job " + head + ">\n" + layers +
         "<arrange><opening width=\"1\" height=\"1\"/></arrange></job>";
}

}  // namespace

TEST_CASE("the head of a job names a version, a unit and an increment that are known") {
  expect("@" + with_head("unit=\"in\""), "job-missing-attribute",
         "found no version in <job>; expected \"1\"");
  expect(with_head("unit=\"in\" @version=\"2\""), "job-version",
         "found version=\"2\" in <job>; expected \"1\", the only version that this program reads");
  expect("@" + with_head("version=\"1\""), "job-missing-attribute",
         "found no unit in <job>; expected \"in\", \"mm\" or \"cm\"");
  expect(with_head("version=\"1\" @unit=\"inn\""), "job-unknown-word",
         "found unit=\"inn\" in <job>; did you mean \"in\"?");
  expect(with_head("version=\"1\" @unit=\"furlong\""), "job-unknown-word",
         "found unit=\"furlong\" in <job>; expected \"in\", \"mm\" or \"cm\"");
  expect(with_head("version=\"1\" unit=\"in\" @increment=\"1/8\""), "job-bad-increment",
         "found increment=\"1/8\" in <job>; expected 1/16 in, 1/32 in, 1/64 in, 0.5 mm or 1 mm");
  expect(with_head("version=\"1\" unit=\"in\" @quantity=\"0\""), "job-bad-number",
         "found quantity=\"0\" in <job>; expected a whole number from 1 to 10000");
  expect(with_head("version=\"1\" unit=\"in\" @revision=\"1.5\""), "job-bad-number",
         "found revision=\"1.5\" in <job>; expected a whole number from 1 to 9999");
  expect(with_head("version=\"1\" unit=\"in\" @date=\"2026-02-29\""), "job-bad-date",
         "found date=\"2026-02-29\" in <job>; expected a day as year-month-day, such as "
         "2026-03-02");
  expect(with_head("version=\"1\" unit=\"in\" @refrence=\"A\""), "job-unknown-attribute",
         "unknown attribute \"refrence\" in <job>; did you mean \"reference\"?");
}

TEST_CASE("the parts of a job are known, and there once") {
  expect(with_part("<@"), "job-xml",
         "found a < that begins no tag; expected a name after it, or &lt; for the sign itself");
  expect(with_part("@<bordres all=\"3\"/>"), "job-unknown-element",
         "unknown element <bordres> in <job>; did you mean \"borders\"?");
  expect(with_part("<borders all=\"3\"/>\n  @<borders all=\"3\"/>"), "job-repeated-element",
         "found <borders> twice in <job>; expected it once");
  expect(with_part("  @hello  "), "job-stray-text",
         "found text \"hello\" in <job>; expected elements only");
  expect("@" + job(pictures + layers), "job-missing-element",
         "found no <arrange> in <job>; expected one, with an opening, a row or a column");
  expect("@" + job("<arrange><opening width=\"1\" height=\"1\"/></arrange>"), "job-missing-element",
         "found no <layers> in <job>; expected one, with a <layer> for each board");
  expect("<!-- mat -->\n@<mat/>", "job-unknown-element",
         "found <mat> at the top of the file; expected <job>");
}

TEST_CASE("a customer has a name, and an address that can be one") {
  expect(with_part("@<customer/>"), "job-missing-attribute",
         "found no name in <customer>; expected a name");
  expect(with_part("<customer name=\"Orla\" @email=\"orla\"/>"), "job-bad-email",
         "found email=\"orla\" in <customer>; expected an address such as name@example.org");
  expect(with_part("<title>One @<b>two</b></title>"), "job-unknown-element",
         "unknown element <b> in <title>; expected text only");
  expect(
      with_part("<wall @colour=\"red\"/>"), "job-bad-colour",
      "colour of <wall>: \"red\" is not a colour; expected # and six hexadecimal digits, such as "
      "#e9e2d0");
}

TEST_CASE("a picture has an id of its own and a size") {
  expect(with_picture("@<picture width=\"1\" height=\"1\"/>"), "job-missing-attribute",
         "found no id in <picture>; expected a name");
  expect(with_picture("<picture @id=\"a.b\" width=\"1\" height=\"1\"/>"), "job-bad-id",
         "found id=\"a.b\" in <picture>; expected a name of letters, digits, hyphens and "
         "underscores");
  expect(with_picture("<picture @id=\"mat\" width=\"1\" height=\"1\"/>"), "job-reserved-id",
         "found id=\"mat\" in <picture>; expected another name, since mat, outer and border have a "
         "meaning in rules");
  expect(with_picture("<picture id=\"a\" width=\"1\" height=\"1\"/>\n"
                      "<picture @id=\"a\" width=\"1\" height=\"1\"/>"),
         "job-repeated-id", "found a second picture with the id \"a\"; the first is on line 3");
  expect(with_picture("@<picture id=\"a\" width=\"1\"/>"), "job-missing-attribute",
         "found no height in <picture>; expected a length");
  expect(with_picture("<picture id=\"a\" width=\"1\" @height=\"ten\"/>"), "job-bad-length",
         "height of <picture>: \"ten\" is not a length; expected a number such as 8, 8.5, 8 1/2 or "
         "215.9 mm");
  expect(with_picture("<picture id=\"a\" width=\"1\" @height=\"-1\"/>"), "job-out-of-range",
         "found height=\"-1\" in <picture>; expected a length above zero");
  expect(with_picture("<picture id=\"a\" width=\"1\" @height=\"0\"/>"), "job-out-of-range",
         "found height=\"0\" in <picture>; expected a length above zero");
  expect(with_picture("<picture id=\"a\" width=\"1\" @height=\"11000 mm\"/>"), "job-out-of-range",
         "found height=\"11000 mm\" in <picture>; expected at most 10000 mm");
  expect(with_picture("<picture id=\"a\" @widht=\"1\" width=\"1\" height=\"1\"/>"),
         "job-unknown-attribute",
         "unknown attribute \"widht\" in <picture>; did you mean \"width\"?");
  expect(with_picture("<picture id=\"a\" width=\"1\" @width=\"2\" height=\"1\"/>"),
         "job-repeated-attribute", "found \"width\" twice in <picture>; expected it once");
  expect(with_picture("<picture id=\"a\" width=\"1\" height=\"1\">@x</picture>"), "job-stray-text",
         "found text \"x\" in <picture>; expected nothing in it");
  expect(with_picture("<picture id=\"a\" width=\"1\" height=\"1\">@<x/></picture>"),
         "job-unknown-element", "unknown element <x> in <picture>; expected nothing in it");
}

TEST_CASE("columns count characters, not bytes") {
  expect(with_part("<customer name=\"Zo\u00eb \u4e09\U0001F5BC\" @mail=\"x\"/>"),
         "job-unknown-attribute",
         "unknown attribute \"mail\" in <customer>; did you mean \"email\"?");
  const auto bad = mullion::parse_job("<job unit='in'\n version='1' d='\u00e9' x=''/>", "");
  REQUIRE_FALSE(bad);
  CHECK(bad.error().back().place == mullion::Place{2, 20});
}

TEST_CASE("a picture is covered or floats, and is not covered whole") {
  expect(
      with_picture("<picture id=\"a\" width=\"4\" height=\"4\" overlap=\"1/8\" @float=\"1/4\"/>"),
      "job-overlap-and-float",
      "found overlap and float in one <picture>; expected one of them: the mat covers its edge, "
      "or board shows all around it");
  expect(with_picture("<picture id=\"a\" width=\"4\" height=\"1\" @overlap=\"1/2\"/>"),
         "job-overlap-too-large",
         "found an overlap of 1/2 in on each side of a picture 4 in x 1 in; expected less than "
         "half of the picture");
  expect(with_picture("<picture id=\"a\" width=\"4\" height=\"1\" @zoom=\"0.5\"/>"),
         "job-bad-number", "found zoom=\"0.5\" in <picture>; expected a number from 1 to 100");
  expect(with_picture("<picture id=\"a\" width=\"4\" height=\"1\" @pan-x=\"nan\"/>"),
         "job-bad-number", "found pan-x=\"nan\" in <picture>; expected a number from -1 to 1");
  expect(with_picture("<picture id=\"a\" width=\"4\" height=\"1\" @turn=\"true\"/>"),
         "job-unknown-word", "found turn=\"true\" in <picture>; expected \"yes\" or \"no\"");
}

TEST_CASE("an image lies in the folder of the job file or below it") {
  const auto refused = [](const std::string& path, const std::string& expected) {
    expect(with_picture("<picture id=\"a\" width=\"4\" height=\"1\" @image=\"" + path + "\"/>"),
           "job-bad-path", "found image=\"" + path + "\" in <picture>; " + expected);
  };
  refused("", "expected the name of a file");
  refused("../a.png", "expected a path that stays in the job file's folder");
  refused("a/../../b.png", "expected a path that stays in the job file's folder");
  refused("..", "expected a path that stays in the job file's folder");
  refused("/etc/passwd", "expected a path that begins in the job file's folder");
  refused("C:/a.png", "expected a path that begins in the job file's folder");
  refused("file://a.png", "expected a path that begins in the job file's folder");
  refused("..\\a.png", "expected / between folders");
  refused("a//b.png", "expected a path of plain names with / between them");
  refused("./b.png", "expected a path of plain names with / between them");
  CHECK(mullion::parse_job(
      with_picture("<picture id=\"a\" width=\"4\" height=\"1\" image=\"old/my  dune..1.png\"/>"),
      ""));
}

TEST_CASE("a layer has a board that can be, and a reveal only where one shows") {
  expect(with_layers("@<layers/>"), "job-missing-element",
         "found no <layer> in <layers>; expected at least one");
  expect(with_layers("<layers @bevel=\"20\"><layer/></layers>"), "job-bad-number",
         "found bevel=\"20\" in <layers>; expected a number from 30 to 90");
  expect(with_layers("<layers @bevel=\"45.0005\"><layer/></layers>"), "job-bad-number",
         "found bevel=\"45.0005\" in <layers>; expected at most three decimals");
  expect(with_layers("<layers @reveal-is=\"sen\"><layer/></layers>"), "job-unknown-word",
         "found reveal-is=\"sen\" in <layers>; did you mean \"seen\"?");
  expect(with_layers("<layers><layer/><layer @color=\"#ffffff\"/></layers>"),
         "job-unknown-attribute",
         "unknown attribute \"color\" in <layer>; did you mean \"colour\"?");
  expect(with_layers("<layers><layer @ply=\"65\"/></layers>"), "job-bad-number",
         "found ply=\"65\" in <layer>; expected a whole number from 1 to 64");
  expect(with_layers("<layers><layer @thickness=\"0\"/></layers>"), "job-out-of-range",
         "found thickness=\"0\" in <layer>; expected a length above zero");
  expect(with_layers("<layers><layer @reveal-left=\"1/4\"/></layers>"), "job-reveal-unseen",
         "found reveal-left on the top layer; a reveal belongs to a layer below it");
  expect(with_layers("<layers><layer/><layer spacer=\"yes\" @reveal=\"1/4\"/></layers>"),
         "job-reveal-unseen", "found reveal on a spacer; a spacer shows no reveal");
  expect(with_layers("<layers><layer @spacer=\"yes\"/></layers>"), "job-spacer-on-top",
         "found a spacer as the top layer; expected a layer above it");
  expect(with_layers("<layers><layer/><layer @only=\"dune peer\"/></layers>"), "job-unknown-id",
         "found no opening \"peer\"; did you mean \"pier\"?");
  expect(with_layers("<layers><layer/><layer @only=\" \"/></layers>"), "job-unknown-id",
         "found only=\"\" in <layer>; expected ids of openings with blanks between them");
}

TEST_CASE("a frame takes a mat, and the mat fits into it") {
  expect(with_part("@<frame rabbet-width=\"20\"/>"), "job-missing-attribute",
         "found no rabbet-height in <frame>; expected a length");
  expect(with_part("<frame rabbet-width=\"20\" rabbet-height=\"1\" @allowance=\"1\"/>"),
         "job-out-of-range",
         "found an allowance of 1 in; expected less than the rabbet's width and height");
  expect(with_part("<frame rabbet-width=\"20\" rabbet-height=\"16\"/><outer @width=\"21\"/>"),
         "job-outer-beyond-frame",
         "found an outer width of 21 in for a frame with a rabbet of 20 in; expected at most the "
         "rabbet");
  expect(with_part("<outer @width=\"fre\"/>"), "job-unknown-word",
         "found width=\"fre\" in <outer>; did you mean \"free\"?");
}

TEST_CASE("no border is stated twice") {
  expect(with_part("<borders sides=\"3\" @left=\"2\"/>"), "job-border-twice",
         "found sides and left in one <borders>; expected one of them");
  expect(with_part("<borders bottom=\"3\" @bottom-extra=\"1/2\"/>"), "job-border-twice",
         "found bottom and bottom-extra in one <borders>; expected one of them");
  expect(with_part("<borders @bottom=\"optcal\"/>"), "job-unknown-word",
         "found bottom=\"optcal\" in <borders>; did you mean \"optical\"?");
  expect(with_part("<borders @bottom-ratio=\"1/0\"/>"), "job-bad-number",
         "found bottom-ratio=\"1/0\" in <borders>; expected a number from 1/100 to 100 such as 2, "
         "3/2, 1 1/2 or 1.5");
  expect(with_part("<borders @top=\"0\"/>"), "job-out-of-range",
         "found top=\"0\" in <borders>; expected a length above zero");
}
