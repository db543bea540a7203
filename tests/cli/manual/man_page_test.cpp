#include <catch2/catch.hpp>
#include <regex>

#include "tests/oracle/program.h"

namespace {

// The page as mandoc shows it, without the overstrikes of bold and underlined letters.
std::string as_read() {
  const std::string folder = oracle::scratch_folder("man");
  const oracle::Run page = oracle::mullion({"manual", "man", "-o", folder + "/mullion.1"});
  REQUIRE(page.status == 0);
  const oracle::Run shown = oracle::run({"mandoc", "-Tutf8", "-Owidth=400", folder + "/mullion.1"});
  REQUIRE(shown.status == 0);
  return std::regex_replace(shown.out, std::regex(".\b"), "");
}

}  // namespace

TEST_CASE("mandoc finds nothing to say against the manual page") {
  const std::string folder = oracle::scratch_folder("lint");
  REQUIRE(oracle::mullion({"manual", "man", "-o", folder + "/mullion.1"}).status == 0);
  const oracle::Run lint = oracle::run({"mandoc", "-Tlint", "-Wwarning", folder + "/mullion.1"});
  INFO(lint.out);
  CHECK(lint.status == 0);
}

TEST_CASE("the manual page has every verb, and every option that --help shows") {
  const std::string page = as_read();
  const std::string help = oracle::mullion({"--help"}).out;
  const std::string verbs = help.substr(help.find("Subcommands:"));
  const std::regex verb_line("\n  ([a-z-]+) "), option_name("--[a-z-]+");
  int found = 0;
  for (std::sregex_iterator at(verbs.begin(), verbs.end(), verb_line), end; at != end; ++at) {
    const std::string verb = (*at)[1];
    INFO(verb);
    CHECK(page.find("\n   " + verb) != std::string::npos);
    const std::string below = oracle::mullion({verb, "--help"}).out;
    for (std::sregex_iterator in(below.begin(), below.end(), option_name); in != end; ++in) {
      INFO(in->str());
      CHECK(page.find(in->str()) != std::string::npos);
      ++found;
    }
  }
  CHECK(found > 50);
}

TEST_CASE("the manual page lists the exit statuses of --help") {
  const std::string page = as_read();
  CHECK(std::regex_search(page, std::regex("EXIT STATUS\n +0 +done")));
  CHECK(std::regex_search(page, std::regex("\n +4 +a fault of the program")));
}
