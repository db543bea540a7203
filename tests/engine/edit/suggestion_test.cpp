// Suggestions taken as edits, and the names of what a layout holds.

#include <catch2/catch.hpp>

#include "engine/edit/names.h"
#include "engine/job/read.h"
#include "engine/layout/layout.h"
#include "engine/suggest/suggest.h"
#include "tests/engine/edit/edited.h"
#include "tests/oracle/program.h"

using namespace mullion;
using namespace mullion::edit;

TEST_CASE("every suggestion is taken: its arrangement, its size, and what it turns") {
  const std::string pictures =
      "<job version=\"1\" unit=\"in\">\n"
      "  <!-- Four from the shore. -->\n"
      "  <pictures>\n"
      "    <picture id=\"a\" width=\"8\" height=\"10\" turn=\"yes\"/>\n"
      "    <picture id=\"b\" width=\"5\" height=\"7\" turn=\"yes\" pan-x=\"0.5\" zoom=\"2\"/>\n"
      "    <picture id=\"c\" width=\"6\" height=\"6\"/>\n"
      "    <picture id=\"d\" width=\"10\" height=\"4\"/>\n"
      "  </pictures>\n"
      "</job>\n";
  const std::string arranged = test::edited(
      pictures, Several{{Add{"layer", {{"board", "Oat"}}, {}, {}},
                         Arrange{"<row><opening picture=\"a\" shape=\"ellipse\"/><opening "
                                 "picture=\"b\"/><opening picture=\"c\"/><opening "
                                 "picture=\"d\"/></row>"}}});
  for (const std::string& text : {pictures, arranged}) {
    const Job job = parse_job(text, "job.xml", Need::pictures).value();
    suggest::Wishes wishes;
    wishes.count = 8;
    const auto found = suggest::suggest_collages(job, wishes).value();
    REQUIRE(found.best.size() > 4);
    int turned = 0;
    for (const suggest::Suggestion& one : found.best) {
      const std::string taken = test::edited(text, taking(job, one.job));
      const Job now = parse_job(taken, "job.xml", Need::pictures).value();
      const Layout wanted = lay_out(one.job).value(), layout = lay_out(now).value();
      CHECK(layout.width == wanted.width);
      CHECK(layout.height == wanted.height);
      REQUIRE(layout.openings.size() == wanted.openings.size());
      for (std::size_t i = 0; i < layout.openings.size(); ++i) {
        CHECK(layout.openings[i].id == wanted.openings[i].id);
        CHECK(layout.openings[i].rect == wanted.openings[i].rect);
      }
      for (std::size_t i = 0; i < now.pictures.size(); ++i) {
        CHECK(now.pictures[i].turned == one.job.pictures[i].turned);
        CHECK(now.pictures[i].pan_x == one.job.pictures[i].pan_x);
        turned += now.pictures[i].turned != Turn::none;
      }
      CHECK((taken.find("shape=\"ellipse\"") != std::string::npos) == (text == arranged));
      CHECK(taken.find("<!-- Four from the shore. -->") != std::string::npos);
    }
    CHECK(turned > 0);
  }
}

TEST_CASE("the names of openings and groups are found in the text, in the layout's order") {
  for (const char* file : {"family-tree.xml", "four-moths.xml", "seven-picture-collage.xml"}) {
    const std::string text = oracle::read_file(oracle::gallery(file));
    const Job job = parse_job(text, file).value();
    const Layout layout = lay_out(job).value();
    const PartNames names = names_of(job);
    REQUIRE(names.openings.size() == layout.openings.size());
    REQUIRE(names.groups.size() == layout.groups.size());
    const Markup markup = read_markup(text);
    for (std::size_t i = 0; i < names.openings.size(); ++i) {
      CHECK(names.openings[i] == "opening." + layout.openings[i].id);
      CHECK(element_of(markup, names.openings[i]));
    }
    for (std::size_t i = 0; i < names.groups.size(); ++i) {
      const auto found = element_of(markup, names.groups[i]);
      REQUIRE(found);
      CHECK((*found)->value("id") == layout.groups[i].id);
    }
  }
}
