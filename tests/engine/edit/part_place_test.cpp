// Rings, places on the mat and moved parts, edited: their lengths by name, and what a part says of
// its place when it goes to another group.

#include <catch2/catch.hpp>

#include "engine/edit/edit.h"
#include "engine/job/read.h"
#include "engine/job/write.h"
#include "tests/engine/edit/edited.h"

using namespace mullion;
using namespace mullion::edit;
using test::edited;
using test::refused;
using Where = Position::Where;

namespace {

std::string job_of(const std::string& arrange) {
  return "<job version=\"1\" unit=\"in\">\n  <layers><layer board=\"Oat\"/></layers>\n"
         "  <arrange>" +
         arrange + "</arrange>\n</job>\n";
}

std::string opening(const std::string& id, const std::string& more = {}) {
  return "<opening id=\"" + id + "\" width=\"2\" height=\"3\"" + more + "/>";
}

}  // namespace

TEST_CASE("the lengths of a ring and of places are stated by name, and freed") {
  const auto ring = [](const std::string& attributes) {
    return job_of("<ring id=\"year\"" + attributes + ">" + opening("a") + opening("b") + "</ring>");
  };
  CHECK(edited(ring(""), State{"year.across", "12"}) == ring(" across=\"12\""));
  CHECK(edited(ring(" across=\"12\""), State{"arrange.1.down", "9 1/2"}) ==
        ring(" across=\"12\" down=\"9 1/2\""));
  CHECK(edited(ring(" across=\"12\""), State{"ring.year.across", "free"}) == ring(""));
  const auto moved = [](const std::string& attributes) {
    return job_of("<row>" + opening("a", attributes) + opening("b") + "</row>");
  };
  CHECK(edited(moved(""), State{"a.move-up", "1/4"}) == moved(" move-up=\"1/4\""));
  CHECK(edited(moved(" move-up=\"1/4\""), State{"a.move-up", {}}) == moved(""));
}

TEST_CASE("left of a part of places is its own attribute, elsewhere a rule states it") {
  const auto places = [](const std::string& attributes) {
    return job_of("<places>" + opening("a", attributes) + "</places>");
  };
  CHECK(edited(places(" left=\"3\""), State{"a.left", "4"}) == places(" left=\"4\""));
  CHECK(edited(places(" left=\"3\""), State{"a.left", "free"}) == places(""));
  CHECK(edited(places(""), State{"a.bottom", "2"}) == places(" bottom=\"2\""));
  const std::string row = job_of("<row>" + opening("a") + opening("b") + "</row>");
  CHECK(edited(row, State{"a.left", "4"}).find("<fixed measure=\"a.left\"") != std::string::npos);
}

TEST_CASE("what only its old group understands does not go along with a part") {
  const std::string ring = "<row>" + opening("x") + "<ring across=\"9\">" +
                           opening("a", " centre=\"yes\" move-up=\"1\"") + opening("b") +
                           opening("c") + "</ring></row>";
  CHECK(edited(job_of(ring), Move{"a", {Where::after, "x"}}) ==
        job_of("<row>" + opening("x") + opening("a", " move-up=\"1\"") + "<ring across=\"9\">" +
               opening("b") + opening("c") + "</ring></row>"));
  const std::string places = "<places>" + opening("a", " left=\"2\"") + "<row>" + opening("b") +
                             opening("c") + "</row></places>";
  CHECK(edited(job_of(places), Move{"a", {Where::before, "b"}}) ==
        job_of("<places><row>" + opening("a") + opening("b") + opening("c") + "</row></places>"));
}

TEST_CASE("a new row around a part takes over its place") {
  const std::string places = "<places>" + opening("a", " left=\"2\" top=\"1\"") +
                             opening("b", " left=\"9\"") + "</places>";
  CHECK(edited(job_of(places), MakeGroup{Along::row, {"a", "b"}, {}}) ==
        job_of("<places><row left=\"2\" top=\"1\">" + opening("a") + opening("b") +
               "</row></places>"));
}

TEST_CASE("what makes no sense in a ring or at places is refused in words") {
  const std::string ring = job_of("<ring>" + opening("a") + opening("b") + "</ring>");
  CHECK(refused(ring, TurnGroup{"arrange.1"}) ==
        "found \"arrange.1\"; expected a row or a column [edit-wrong-part]");
  CHECK(refused(ring, Move{"a", {Where::left, "b"}}) ==
        "found a place beside \"b\", which is part of <ring>; expected one before or after it, or "
        "in a row or a column [edit-wrong-place]");
  CHECK(refused(ring, State{"arrange.1.gap.1", "2"}).find("edit-unknown-name") !=
        std::string::npos);
  CHECK(edited(ring, Move{"a", {Where::after, "b"}}) ==
        job_of("<ring>" + opening("b") + opening("a") + "</ring>"));
}

TEST_CASE("an arrangement that is taken brings the places of its parts") {
  const std::string job =
      "<job version=\"1\" unit=\"in\">\n  <pictures><picture id=\"a\" width=\"5\" height=\"4\"/>"
      "<picture id=\"b\" width=\"5\" height=\"4\"/></pictures>\n"
      "  <layers><layer board=\"Oat\"/></layers>\n  <arrange>";
  const std::string old = job +
                          "<row><opening picture=\"a\" shape=\"ellipse\" move-up=\"1\"/>"
                          "<opening picture=\"b\"/></row></arrange>\n</job>\n";
  CHECK(edited(old, Arrange{"<ring across=\"9\"><opening picture=\"a\" centre=\"yes\"/>"
                            "<opening picture=\"b\"/></ring>"}) ==
        job +
            "<ring across=\"9\"><opening picture=\"a\" shape=\"ellipse\" centre=\"yes\"/>"
            "<opening picture=\"b\"/></ring></arrange>\n</job>\n");
}

TEST_CASE("a part of a ring or of places is taken out, added and copied like any other") {
  const std::string ring =
      "<ring across=\"9\">" + opening("a", " centre=\"yes\"") + opening("b") + "</ring>";
  CHECK(edited(job_of("<row>" + opening("x") + ring + "</row>"), Remove{"x"}) == job_of(ring));
  CHECK(edited(job_of(ring), Remove{"a"}) ==
        job_of("<ring across=\"9\">" + opening("b") + "</ring>"));
  CHECK(edited(job_of(ring), Add{"opening",
                                 {{"id", "c"}, {"width", "2"}, {"height", "3"}},
                                 {},
                                 Position{Where::last_in, "arrange.1"}}) ==
        job_of("<ring across=\"9\">" + opening("a", " centre=\"yes\"") + opening("b") +
               opening("c") + "</ring>"));
  CHECK(edited(job_of(ring), Copy{"b", "d"}) ==
        job_of("<ring across=\"9\">" + opening("a", " centre=\"yes\"") + opening("b") +
               opening("d") + "</ring>"));
  CHECK(refused(job_of(ring), Copy{"a", "d"}).ends_with("[job-ring-centre]"));
  const std::string places = "<places>" + opening("a", " left=\"2\"") + "</places>";
  CHECK(
      edited(job_of(places), Copy{"a", "b"}) ==
      job_of("<places>" + opening("a", " left=\"2\"") + opening("b", " left=\"2\"") + "</places>"));
}
