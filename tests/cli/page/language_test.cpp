// What is wrong is said in the page's language.

#include <catch2/catch.hpp>

#include "engine/mat/checks.h"
#include "tests/cli/page/client.h"
#include "tests/oracle/english.h"
#include "tests/oracle/program.h"

using namespace page_test;

namespace {

std::string job_of(const std::string& attributes, const std::string& lines) {
  return "<job version=\"1\" " + attributes + ">\n" + lines + "\n</job>\n";
}

// A job with checks of many kinds; conflicts of the width, of both ways, of a rule.
std::vector<std::pair<std::string, std::string>> jobs() {
  const std::string inches = R"(unit="in" increment="1/16")", board = R"(<layers>
    <layer name="Oben" board="Oat"/><layer name="Unten" board="Slate" reveal="1/32"/></layers>)";
  const std::string pictures = R"(<pictures><picture id="a" width="8" height="10"/>
    <picture id="b" width="8" height="10" float="1/16"/></pictures>)";
  const std::string row = R"(<arrange><row gap="1/4"><opening id="a" picture="a" width="7 15/16"/>
    <opening id="b" picture="b"/></row></arrange>)";
  return {
      {"checks", job_of(inches, pictures + board + R"(<borders all="1/4"/>)" + row)},
      {"wide", job_of(inches, pictures + board + R"(<outer width="12"/><borders all="3"/>)" + row)},
      {"both", job_of(inches, pictures + board +
                                  R"(<outer width="12" height="9"/><borders all="3"/>)" + row)},
      {"rule", job_of(R"(unit="mm" increment="1")",
                      R"(<layers><layer board="Oat"/></layers><borders left="50"/>
    <arrange><opening id="c" width="100" height="80"/></arrange>
    <rules><fixed measure="c.left" length="70"/></rules>)")}};
}

std::string said_of(const Json& state) {
  std::string out;
  for (const Json& problem : state.at("problems")) {
    out += problem.at("message").get<std::string>() + "\n";
    for (const Json& remedy : problem.at("remedies")) {
      out += remedy.at("words").get<std::string>() + "\n";
    }
  }
  return out;
}

}  // namespace

TEST_CASE("a check is explained in the page's language") {
  const std::string folder = folder_of_jobs("explained");
  for (const std::string language : {"de", "fr", "es"}) {
    const Served served(folder, {"--language", language});
    for (const mullion::Explanation& check : mullion::check_table()) {
      const Json told = served.get("/api/explain/" + std::string(check.code)).json();
      INFO(told.dump());
      for (const char* part : {"summary", "reason", "advice"}) {
        CHECK(oracle::english_in(told.at(part).get<std::string>()).empty());
      }
      CHECK(told.at("reason") != check.reason);
    }
  }
}

TEST_CASE("problems and remedies are said in the page's language") {
  const std::string folder = oracle::scratch_folder("language");
  for (const auto& [name, text] : jobs()) oracle::write_file(folder + "/" + name + ".xml", text);
  const Served english(folder);
  for (const std::string language : {"de", "fr", "es"}) {
    const Served served(folder, {"--language", language});
    for (const auto& [name, text] : jobs()) {
      const Json state = served.get("/api/jobs/" + name).json();
      const Json plain = english.get("/api/jobs/" + name).json();
      INFO(said_of(state));
      CHECK_FALSE(oracle::english_in(said_of(plain)).empty());
      CHECK(oracle::english_in(said_of(state)).empty());
      const Json& first = state.at("problems").at(0);
      CHECK(first.at("remedies").empty() == (name == "checks"));
      CHECK(first.at("remedies").size() == plain.at("problems").at(0).at("remedies").size());
    }
    for (const Json& card : served.get("/api/jobs").json().at("jobs")) {
      CHECK(oracle::english_in(card.at("problem").get<std::string>()).empty());
    }
  }
}
