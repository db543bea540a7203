// One value stated, changed or freed: which bytes of the job file change.

#include "engine/edit/state.h"

#include <catch2/catch.hpp>
#include <pugixml.hpp>

#include "engine/edit/edit.h"
#include "tests/engine/edit/edited.h"

using namespace mullion;
using namespace mullion::edit;
using test::edited;
using test::refused;

namespace {

// A job whose `lines` stand between pictures and arrange.
std::string job_with(const std::string& lines) {
  return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
         "<!-- A test's job. -->\n"
         "<job version=\"1\" unit=\"in\" increment=\"1/16\">\n"
         "  <pictures>\n"
         "    <picture id=\"dune\" width=\"10\" height='8'/> <!-- as it hangs -->\n"
         "    <picture id=\"pier\" width=\"8\" height=\"10\" overlap=\"1/4\"/>\n"
         "  </pictures>\n"
         "  <layers>\n"
         "    <layer board=\"Oat\"/>\n"
         "    <layer board=\"Ink\" reveal=\"1/4\"/>\n"
         "  </layers>\n" +
         lines +
         "  <arrange>\n"
         "    <row gap=\"1\">\n"
         "      <opening picture=\"dune\"/>\n"
         "      <opening picture=\"pier\"/>\n"
         "    </row>\n"
         "  </arrange>\n"
         "</job>\n";
}

std::string stated(const std::string& lines, const std::string& name,
                   const std::optional<std::string>& value) {
  return edited(job_with(lines), State{name, value});
}

}  // namespace

TEST_CASE("a border that is stated for the first time is said in an element of its own") {
  CHECK(stated("", "border.left", "3") == job_with("  <borders left=\"3\"/>\n"));
}

TEST_CASE("a changed border changes its number alone") {
  CHECK(stated("  <borders  left = '2 1/2' top=\"3\" />\n", "border.left", "3") ==
        job_with("  <borders  left = '3' top=\"3\" />\n"));
}

TEST_CASE("one of two sides that is stated apart leaves the other as it was") {
  CHECK(stated("  <borders sides=\"3\" top=\"4\"/>\n", "border.right", "2") ==
        job_with("  <borders left=\"3\" right=\"2\" top=\"4\"/>\n"));
  CHECK(stated("  <borders top=\"4\" left=\"3\" right=\"2\"/>\n", "border.sides", "3 1/2") ==
        job_with("  <borders top=\"4\" sides=\"3 1/2\"/>\n"));
}

TEST_CASE("a border is free when nothing states it any more") {
  CHECK(stated("  <borders left=\"3\"/>\n", "border.left", "free") == job_with(""));
  CHECK(stated("  <borders sides=\"3\"/>\n", "border.left", "free") ==
        job_with("  <borders right=\"3\"/>\n"));
  CHECK(stated("  <borders all=\"3\"/>\n", "border.left", "free") ==
        job_with("  <borders top=\"3\" right=\"3\" bottom=\"3\"/>\n"));
  CHECK(stated("  <borders all=\"3\" left=\"2\"/>\n", "border.left", "free") ==
        job_with("  <borders top=\"3\" right=\"3\" bottom=\"3\"/>\n"));
  CHECK(stated("  <borders all=\"3\" bottom-extra=\"1/2\"/>\n", "border.bottom", "free") ==
        job_with("  <borders left=\"3\" top=\"3\" right=\"3\"/>\n"));
  CHECK(stated("  <borders all=\"3\" left=\"2\"/>\n", "border.left", std::nullopt) ==
        job_with("  <borders all=\"3\"/>\n"));
}

TEST_CASE("the bottom border is weighted in one way at a time") {
  CHECK(stated("  <borders top=\"3\" bottom-extra=\"1/2\"/>\n", "border.bottom-ratio", "5/4") ==
        job_with("  <borders top=\"3\" bottom-ratio=\"5/4\"/>\n"));
}

TEST_CASE("an outer size that nothing states is no element") {
  CHECK(stated("", "outer.width", "24") == job_with("  <outer width=\"24\"/>\n"));
  CHECK(stated("  <outer width=\"24\"/>\n", "outer.width", "free") == job_with(""));
}

TEST_CASE("float takes the place of overlap") {
  const std::string before = job_with("");
  std::string after = before;
  after.replace(after.find("overlap=\"1/4\""), 13, "float=\"1/2\"");
  CHECK(edited(before, State{"picture.pier.float", "1/2"}) == after);
  CHECK(edited(after, State{"picture.pier.overlap", "1/4"}) == before);
}

TEST_CASE("a fixed rule follows the measure that it fixes") {
  const std::string rule =
      "  <rules>\n    <fixed measure=\"pier.left\" length=\"14\"/>\n  </rules>\n";
  CHECK(stated(rule, "pier.left", "15") ==
        job_with("  <rules>\n    <fixed measure=\"pier.left\" length=\"15\"/>\n  </rules>\n"));
  CHECK(stated(rule, "pier.left", "free") == job_with(""));
}

TEST_CASE("a gap between two neighbours gets an element of its own") {
  const std::string before = job_with("");
  std::string after = before;
  after.insert(after.find("\n      <opening picture=\"pier\""), "\n      <gap size=\"2\"/>");
  CHECK(edited(before, State{"arrange.1.gap.1", "2"}) == after);
  CHECK(edited(after, State{"arrange.1.gap.1", std::nullopt}) == before);
  CHECK(edited(after, State{"arrange.1.gap.1", "free"}).find("<gap size=\"free\"/>") !=
        std::string::npos);
}

TEST_CASE("a reveal of one opening is an element within it") {
  const std::string before = job_with("");
  const std::string after = edited(before, State{"dune.reveal.2.left", "1/2"});
  CHECK(after.find("      <opening picture=\"dune\">\n"
                   "        <reveal layer=\"2\" left=\"1/2\"/>\n"
                   "      </opening>\n") != std::string::npos);
}

TEST_CASE("a new id of a picture is followed by its opening and by rules") {
  const std::string rule = "  <rules>\n    <equal of=\"dune.width pier.width\"/>\n  </rules>\n";
  const std::string after = stated(rule, "picture.dune.id", "dunes");
  CHECK(after.find("<picture id=\"dunes\"") != std::string::npos);
  CHECK(after.find("<opening picture=\"dunes\"/>") != std::string::npos);
  CHECK(after.find("of=\"dunes.width pier.width\"") != std::string::npos);
}

TEST_CASE("a title is text between tags, and comments in it stay") {
  CHECK(stated("", "title", "Dune & pier") == edited(job_with(""), State{"title", "Dune & pier"}));
  CHECK(stated("  <title> Old <!-- by whom? --> name </title>\n", "title", "New") ==
        job_with("  <title> New <!-- by whom? --></title>\n"));
  CHECK(stated("  <title>Old</title>\n", "title", std::nullopt) == job_with(""));
}

TEST_CASE("a new unit leaves all sizes as they are") {
  const std::string after = stated("", "unit", "mm");
  CHECK(after.find("width=\"10 in\" height='8 in'") != std::string::npos);
  CHECK(after.find("increment=\"1/16 in\"") != std::string::npos);
  CHECK(after.find("unit=\"mm\"") != std::string::npos);
}

TEST_CASE("an unknown name is refused with a near one") {
  CHECK(refused(job_with(""), State{"picture.dunne.width", "3"}) ==
        "found no picture \"dunne\"; did you mean \"dune\"? [edit-unknown-name]");
  CHECK(refused(job_with(""), State{"picture.dune.widht", "3"}) ==
        "unknown attribute \"widht\" in <picture>; did you mean \"width\"? "
        "[job-unknown-attribute]");
  CHECK(refused(job_with(""), State{"boarder.left", "3"}) ==
        "found nothing called \"boarder\"; did you mean \"border\"? [edit-unknown-name]");
}

TEST_CASE("what would give no valid job is refused") {
  CHECK(refused(job_with(""), State{"picture.dune.width", "ten"}).ends_with("[job-bad-length]"));
  CHECK(refused(job_with(""), State{"picture.dune.width", std::nullopt})
            .ends_with("[job-missing-attribute]"));
}

TEST_CASE("line ends and blanks are those of the neighbours") {
  const std::string lines =
      "<job version=\"1\" unit=\"mm\">\r\n"
      "\t<pictures>\r\n"
      "\t\t<picture id=\"a\" width=\"80\" height=\"100\"/>\r\n"
      "\t</pictures>\r\n"
      "\t<layers>\r\n"
      "\t\t<layer\r\n"
      "\t\t\tboard=\"Oat\"\r\n"
      "\t\t\tply=\"4\"/>\r\n"
      "\t</layers>\r\n"
      "\t<arrange><opening picture=\"a\"/></arrange>\r\n"
      "</job>\r\n";
  const auto with = [&](const std::string& at, const std::string& more) {
    std::string out = lines;
    out.insert(out.find(at) + at.size(), more);
    return out;
  };
  CHECK(edited(lines, State{"border.left", "50"}) ==
        with("</layers>\r\n", "\t<borders left=\"50\"/>\r\n"));
  CHECK(edited(lines, State{"layer.1.colour", " #ffffff "}) ==
        with("ply=\"4\"", "\r\n\t\t\tcolour=\"#ffffff\""));
  CHECK(edited(lines, Add{"layer", {{"board", "Ink"}}, {}, {}}) ==
        with("ply=\"4\"/>", "\r\n\t\t<layer board=\"Ink\"/>"));
  CHECK(edited(lines, State{"quantity", "3"}) == with("unit=\"mm\"", " quantity=\"3\""));
  CHECK(edited(lines, Add{"groove", {{"distance", "5"}, {"width", "1"}}, {}, {}}) ==
        with("<opening picture=\"a\"/>", "<groove distance=\"5\" width=\"1\"/>"));
}

TEST_CASE("every length of the schema, and nothing else, gets its unit where the job's changes") {
  pugi::xml_document schema;
  REQUIRE(schema.load_file((std::string(MULLION_SOURCE) + "/engine/job/job.xsd").c_str()));
  int lengths = 0;
  for (const auto& found : schema.select_nodes("//xs:complexType/xs:attribute")) {
    const std::string type = found.node().attribute("type").value();
    const std::string element = found.node().parent().attribute("name").value();
    const bool length = type == "length" || type == "length-or-free" || type == "bottom";
    lengths += length;
    INFO(element << " " << found.node().attribute("name").value());
    for (const std::string& name : element == "compare"
                                       ? std::vector<std::string>{"fixed", "at-least", "at-most"}
                                       : std::vector<std::string>{element}) {
      CHECK(is_length(name, found.node().attribute("name").value()) == length);
    }
  }
  CHECK(lengths > 35);
  int shared = 0;
  for (const auto& found : schema.select_nodes("//xs:complexType/xs:attributeGroup")) {
    const std::string element = found.node().parent().attribute("name").value();
    const pugi::xml_node group =
        schema.child("xs:schema")
            .find_child_by_attribute("xs:attributeGroup", "name",
                                     found.node().attribute("ref").value());
    for (const pugi::xml_node& attribute : group.children("xs:attribute")) {
      ++shared;
      INFO(element << " " << attribute.attribute("name").value());
      CHECK(is_length(element, attribute.attribute("name").value()) ==
            (attribute.attribute("type").value() == std::string("length")));
    }
  }
  CHECK(shared >= 36);
}

TEST_CASE("a job that is not right yet is edited without a fault of the program") {
  const std::string bad =
      "<job version=\"1\" unit=\"in\"><arrange><row><row/><gap/></row></arrange><rules/></job>";
  for (const Edit& edit :
       {Edit(Dissolve{"arrange.1.1"}), Edit(Dissolve{"arrange.1"}), Edit(TurnGroup{"arrange.1.1"}),
        Edit(Add{"opening",
                 {{"width", "3"}, {"height", "3"}},
                 {},
                 Position{Position::Where::first_in, "arrange.1.1"}}),
        Edit(Remove{"arrange.1.1"}), Edit(State{"arrange.1.gap", "1"}),
        Edit(MakeGroup{Along::row, {"arrange.1.1"}, {}}), Edit(Copy{"arrange.1", ""}),
        Edit(Move{"arrange.1.1", {Position::Where::left, "arrange.1"}})}) {
    const auto after = edit::apply(bad, edit);
    if (after) CHECK(with_changes(bad, after->changes) == after->text);
  }
}
