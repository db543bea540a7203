// Parts added, taken away, copied, moved and grouped.

#include <catch2/catch.hpp>

#include "engine/edit/edit.h"
#include "engine/edit/edit_json.h"
#include "tests/engine/edit/edited.h"

using namespace mullion;
using namespace mullion::edit;
using test::edited;
using test::refused;
using Where = Position::Where;

namespace {

std::string job_of(const std::string& arrange, const std::string& more = {}) {
  std::string pictures;
  for (const char* id : {"a", "b", "c", "d"}) {
    pictures += "    <picture id=\"" + std::string(id) + "\" width=\"8\" height=\"10\"/>\n";
  }
  return "<job version=\"1\" unit=\"in\">\n  <pictures>\n" + pictures +
         "  </pictures>\n  <layers>\n    <layer board=\"Oat\"/>\n"
         "    <layer board=\"Ink\" reveal=\"3/8\"/>\n  </layers>\n" +
         "  <arrange>\n" + arrange + "  </arrange>\n" + more + "</job>\n";
}

const std::string row_of_three =
    "    <row gap=\"1\">\n"
    "      <opening picture=\"a\"/> <!-- first -->\n"
    "      <opening picture=\"b\"/>\n"
    "      <opening picture=\"c\"/>\n"
    "    </row>\n";

}  // namespace

TEST_CASE("an opening is moved before and after another one, with the comment on its line") {
  CHECK(edited(job_of(row_of_three), Move{"a", {Where::after, "c"}}) ==
        job_of("    <row gap=\"1\">\n"
               "      <opening picture=\"b\"/>\n"
               "      <opening picture=\"c\"/>\n"
               "      <opening picture=\"a\"/> <!-- first -->\n"
               "    </row>\n"));
  CHECK(edited(job_of(row_of_three), Move{"c", {Where::before, "b"}}) ==
        job_of("    <row gap=\"1\">\n"
               "      <opening picture=\"a\"/> <!-- first -->\n"
               "      <opening picture=\"c\"/>\n"
               "      <opening picture=\"b\"/>\n"
               "    </row>\n"));
}

TEST_CASE("an opening that is moved above another one in a row stands in a column with it") {
  CHECK(edited(job_of(row_of_three), Move{"c", {Where::above, "b"}}) ==
        job_of("    <row gap=\"1\">\n"
               "      <opening picture=\"a\"/> <!-- first -->\n"
               "      <column gap=\"1\">\n"
               "        <opening picture=\"c\"/>\n"
               "        <opening picture=\"b\"/>\n"
               "      </column>\n"
               "    </row>\n"));
}

TEST_CASE("a column that is left with one opening gives way to it") {
  const std::string nested =
      "    <row gap=\"1\">\n"
      "      <opening picture=\"a\"/>\n"
      "      <column>\n"
      "        <opening picture=\"b\"/>\n"
      "        <opening picture=\"c\"/>\n"
      "      </column>\n"
      "    </row>\n";
  CHECK(edited(job_of(nested), Move{"c", {Where::before, "a"}}) ==
        job_of("    <row gap=\"1\">\n"
               "      <opening picture=\"c\"/>\n"
               "      <opening picture=\"a\"/>\n"
               "      <opening picture=\"b\"/>\n"
               "    </row>\n"));
}

TEST_CASE("an opening out of a nested column stands in the row around it") {
  const std::string nested =
      "    <row gap=\"1\">\n"
      "      <opening picture=\"a\"/>\n"
      "      <column id=\"pair\">\n"
      "        <opening picture=\"b\"/>\n"
      "        <opening picture=\"c\"/>\n"
      "      </column>\n"
      "    </row>\n";
  CHECK(edited(job_of(nested), Move{"b", {Where::right, "pair"}}) ==
        job_of("    <row gap=\"1\">\n"
               "      <opening picture=\"a\"/>\n"
               "      <column id=\"pair\">\n"
               "        <opening picture=\"c\"/>\n"
               "      </column>\n"
               "      <opening picture=\"b\"/>\n"
               "    </row>\n"));
}

TEST_CASE("a removed picture takes its opening, its gap and its mentions along") {
  const std::string gaps =
      "    <row>\n"
      "      <opening picture=\"a\"/>\n"
      "      <gap id=\"g1\"/>\n"
      "      <opening picture=\"b\"/>\n"
      "      <gap id=\"g2\"/>\n"
      "      <opening picture=\"c\"/>\n"
      "    </row>\n";
  const std::string rules =
      "  <rules>\n"
      "    <equal of=\"g1 g2 border.left\"/>\n"
      "    <same-size of=\"a b\"/>\n"
      "    <align of=\"a b c\" edge=\"top\"/>\n"
      "  </rules>\n";
  const std::string after = edited(job_of(gaps, rules), Remove{"picture.b"});
  CHECK(after.find("id=\"b\"") == std::string::npos);
  CHECK(after.find("<gap id=\"g1\"/>\n      <opening picture=\"c\"/>") != std::string::npos);
  CHECK(after.find("  <rules>\n"
                   "    <equal of=\"g1 border.left\"/>\n"
                   "    <align of=\"a c\" edge=\"top\"/>\n"
                   "  </rules>\n") != std::string::npos);
}

TEST_CASE("the last opening and the last layer stay") {
  const std::string one = job_of("    <opening picture=\"a\"/>\n");
  CHECK(refused(one, Remove{"a"}).ends_with("[edit-last-opening]"));
  const std::string top = edited(one, Remove{"layer.2"});
  CHECK(refused(top, Remove{"layer.1"}).ends_with("[edit-last-layer]"));
}

TEST_CASE("without the top layer the next one is the top, without a reveal") {
  const std::string after = edited(job_of("    <opening picture=\"a\"/>\n"), Remove{"layer.1"});
  CHECK(after.find("  <layers>\n    <layer board=\"Ink\"/>\n  </layers>\n") != std::string::npos);
}

TEST_CASE("numbers of layers are counted anew where one comes between") {
  const std::string before = job_of(
      "    <row window=\"2\">\n"
      "      <opening picture=\"a\"><reveal layer=\"2\" all=\"1/2\"/></opening>\n"
      "    </row>\n");
  const std::string after =
      edited(before, Add{"layer", {{"board", "Clay"}}, {}, Position{Where::after, "layer.1"}});
  CHECK(
      after.find("<layer board=\"Oat\"/>\n    <layer board=\"Clay\"/>\n    <layer board=\"Ink\"") !=
      std::string::npos);
  CHECK(after.find("<row window=\"3\">") != std::string::npos);
  CHECK(after.find("<reveal layer=\"3\" all=\"1/2\"/>") != std::string::npos);
  const std::string swapped = edited(before, Move{"layer.2", {Where::before, "layer.1"}});
  CHECK(swapped.find("<row window=\"1\">") != std::string::npos);
  CHECK(swapped.find("reveal") == std::string::npos);
}

TEST_CASE("an opening without a name keeps its mentions where it is counted anew") {
  const std::string before = job_of(
      "    <row>\n"
      "      <opening picture=\"a\"/>\n"
      "      <opening width=\"4\" height=\"1\"/>\n"
      "      <opening picture=\"b\"/>\n"
      "    </row>\n",
      "  <rules>\n    <align of=\"b opening-2\" edge=\"top\"/>\n  </rules>\n");
  CHECK(edited(before, Move{"b", {Where::before, "a"}}).find("of=\"b opening-3\"") !=
        std::string::npos);
  CHECK(edited(before, Remove{"a"}).find("of=\"b opening-1\"") != std::string::npos);
}

TEST_CASE("a picture comes with its opening, named after its image") {
  const std::string after =
      edited(job_of("    <opening picture=\"a\"/>\n"),
             Add{"picture",
                 {{"width", "4"}, {"height", "5"}, {"image", "pictures/a gull.jpg"}},
                 {{"shape", "ellipse"}},
                 Position{Where::below, "a"}});
  CHECK(after.find("    <picture id=\"a-gull\" width=\"4\" height=\"5\" "
                   "image=\"pictures/a gull.jpg\"/>\n  </pictures>") != std::string::npos);
  CHECK(after.find("    <column>\n"
                   "      <opening picture=\"a\"/>\n"
                   "      <opening picture=\"a-gull\" shape=\"ellipse\"/>\n"
                   "    </column>\n") != std::string::npos);
}

TEST_CASE("a copied picture has a name of its own and stands beside the other") {
  const std::string after = edited(job_of(row_of_three), Copy{"picture.a", ""});
  CHECK(after.find("<picture id=\"a-2\" width=\"8\" height=\"10\"/>") != std::string::npos);
  CHECK(after.find("<opening picture=\"a\"/> <!-- first -->\n      <opening picture=\"a-2\"/>") !=
        std::string::npos);
}

TEST_CASE("neighbours become a column as they stand, others where the first one stands") {
  CHECK(edited(job_of(row_of_three), MakeGroup{Along::column, {"b", "c"}, {}}) ==
        job_of("    <row gap=\"1\">\n"
               "      <opening picture=\"a\"/> <!-- first -->\n"
               "      <column gap=\"1\">\n"
               "        <opening picture=\"b\"/>\n"
               "        <opening picture=\"c\"/>\n"
               "      </column>\n"
               "    </row>\n"));
  CHECK(edited(job_of(row_of_three), MakeGroup{Along::column, {"c", "a"}, {{"gap", "2"}}}) ==
        job_of("    <row gap=\"1\">\n"
               "      <opening picture=\"b\"/>\n"
               "      <column gap=\"2\">\n"
               "        <opening picture=\"c\"/>\n"
               "        <opening picture=\"a\"/> <!-- first -->\n"
               "      </column>\n"
               "    </row>\n"));
}

TEST_CASE("a row that is turned keeps what its parts are aligned by") {
  const std::string row = "    <row align=\"bottom\"><opening picture=\"a\"/></row>\n";
  CHECK(edited(job_of(row), TurnGroup{"arrange.1"}) ==
        job_of("    <column align=\"right\"><opening picture=\"a\"/></column>\n"));
}

TEST_CASE("a group that is taken away leaves its parts in its place") {
  const std::string nested =
      "    <row>\n"
      "      <column>\n"
      "        <opening picture=\"a\"/>\n"
      "        <!-- between -->\n"
      "        <opening picture=\"b\"/>\n"
      "      </column>\n"
      "      <opening picture=\"c\"/>\n"
      "    </row>\n";
  CHECK(edited(job_of(nested), Dissolve{"arrange.1.1"}) == job_of("    <row>\n"
                                                                  "      <opening picture=\"a\"/>\n"
                                                                  "      <!-- between -->\n"
                                                                  "      <opening picture=\"b\"/>\n"
                                                                  "      <opening picture=\"c\"/>\n"
                                                                  "    </row>\n"));
  CHECK(refused(job_of(nested), Dissolve{"arrange.1"}).ends_with("[edit-outermost]"));
}

TEST_CASE("a suggestion keeps shapes, and openings without a picture below") {
  const std::string before = job_of(
      "    <groove distance=\"1\" width=\"1/8\"/>\n"
      "    <row>\n"
      "      <opening picture=\"a\" shape=\"ellipse\"/>\n"
      "      <opening id=\"name\" width=\"4\" height=\"1\"/>\n"
      "      <opening picture=\"b\"/>\n"
      "    </row>\n");
  CHECK(edited(before, Arrange{"<row gap=\"1\"><opening picture=\"b\"/><opening "
                               "picture=\"a\"/></row>"}) ==
        job_of("    <groove distance=\"1\" width=\"1/8\"/>\n"
               "    <column>\n"
               "      <row gap=\"1\">\n"
               "        <opening picture=\"b\"/>\n"
               "        <opening picture=\"a\" shape=\"ellipse\"/>\n"
               "      </row>\n"
               "      <opening id=\"name\" width=\"4\" height=\"1\"/>\n"
               "    </column>\n"));
}

TEST_CASE("a part cannot go into itself") {
  CHECK(refused(job_of(row_of_three), Move{"arrange.1", {Where::after, "a"}})
            .ends_with("[edit-within-itself]"));
}

TEST_CASE("edits are written as JSON and read again") {
  const std::string json =
      R"({"kind":"several","edits":[{"kind":"state","name":"border.left","value":null},)"
      R"({"kind":"add","element":"picture","attributes":{"width":"8"},"opening":{"shape":"arch"},)"
      R"("at":{"where":"first_in","part":"arrange.1"}},{"kind":"remove","part":"a"},)"
      R"({"kind":"copy","part":"a","id":"z"},{"kind":"move","part":"a","to":{"where":"left",)"
      R"("part":"b"}},{"kind":"group","along":"column","parts":["a","b"],"attributes":)"
      R"({"gap":"1"}},{"kind":"turn","group":"arrange.1"},{"kind":"dissolve","group":"x"},)"
      R"({"kind":"arrange","text":"<row/>"},{"kind":"change","changes":[{"offset":3,)"
      R"("removed":"a","inserted":"b"}]}]})";
  const auto edit = edit_from_json(json);
  REQUIRE(edit);
  CHECK(edit_to_json(*edit) == json);
  const auto complaint = [](const char* text) {
    const auto bad = edit_from_json(text);
    return bad ? std::string() : bad.error().front().message;
  };
  CHECK(complaint("{") == "found no JSON");
  CHECK(complaint(R"({"kind":"mvoe"})").starts_with("found kind \"mvoe\"; expected"));
  CHECK(complaint(R"({"kind":"turn","grup":"a"})") ==
        "found unknown \"grup\" in an edit; did you mean \"group\"?");
  CHECK(complaint(R"({"kind":"turn"})") == "found no \"group\" in an edit");
}
