#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>
#include <set>
#include <sstream>

#include "tests/oracle/program.h"

// The program that is typed has the verbs that do not draw, and hands the others over to the whole
// program. Its libraries are read by readelf.

namespace {

namespace fs = std::filesystem;

std::set<std::string> libraries_of(const std::string& program) {
  const oracle::Run run = oracle::run({"readelf", "--dynamic", "--wide", program});
  REQUIRE(run.status == 0);
  std::set<std::string> out;
  std::istringstream lines(run.out);
  for (std::string line; std::getline(lines, line);) {
    if (line.find("(NEEDED)") == std::string::npos) continue;
    const std::size_t from = line.find("[lib") + 1;
    out.insert(line.substr(from, line.find(".so", from) - from));
  }
  return out;
}

// The verbs that `mullion --help` lists.
std::vector<std::string> verbs() {
  const oracle::Run run = oracle::mullion({"--help"});
  std::vector<std::string> out;
  std::istringstream lines(run.out.substr(run.out.find("Subcommands:\n")));
  std::string line;
  std::getline(lines, line);
  while (std::getline(lines, line) && line.starts_with("  ")) {
    out.push_back(line.substr(2, line.find(' ', 2) - 2));
  }
  return out;
}

std::string alone_in(const std::string& folder) {
  fs::copy(MULLION_PROGRAM, folder + "/mullion");
  return folder + "/mullion";
}

}  // namespace

TEST_CASE("the program that is typed is linked to no library that draws, mails or serves") {
  const std::set<std::string> few = libraries_of(MULLION_PROGRAM);
  const std::set<std::string> allowed = {"libc", "libgcc_s",  "libgmp",     "libgmpxx",
                                         "libm", "libstdc++", "libpugixml", "libpolyclipping"};
  CHECK(few.contains("libc"));
  for (const std::string& library : few) {
    INFO(library);
    // asan and tsan bring a library of their own
    CHECK((allowed.contains(library) || library.ends_with("san")));
  }
  CHECK(libraries_of(MULLION_WHOLE_PROGRAM).contains("libcairo"));
}

TEST_CASE("every verb says the same of itself in the program that is typed and in the whole one") {
  const std::vector<std::string> all = verbs();
  REQUIRE(all.size() >= 16);
  for (const std::string& verb : all) {
    INFO(verb);
    const oracle::Run typed = oracle::mullion({verb, "--help"});
    const oracle::Run whole = oracle::run({MULLION_WHOLE_PROGRAM, verb, "--help"});
    CHECK(typed.status == 0);
    CHECK(typed.out == whole.out);
  }
}

TEST_CASE("without the whole program the light verbs work and the others are refused by its name") {
  const std::string folder = oracle::scratch_folder("light");
  const std::string program = alone_in(folder);
  const std::string job = oracle::gallery("double-mat.xml");
  int light = 0;
  for (const std::string& verb : verbs()) {
    const oracle::Run run = oracle::run({program, verb, "--help"});
    if (run.status == 0) {
      ++light;
      continue;
    }
    INFO(verb);
    CHECK(run.status == 4);
    CHECK(run.out.empty());
    CHECK(run.err.find("cannot start ") != std::string::npos);
    CHECK(run.err.find("mullion-whole: No such file or directory") != std::string::npos);
  }
  CHECK(light == 7);
  CHECK(oracle::run({program, "--version"}).out == oracle::mullion({"--version"}).out);
  CHECK(oracle::run({program, "check", job}).out == oracle::mullion({"check", job}).out);
  const std::string drawn = folder + "/template.pdf";
  CHECK(oracle::run({program, "template", job, "-o", drawn}).status == 4);
  CHECK_FALSE(fs::exists(drawn));
}

TEST_CASE("a link to the program finds the whole one beside the program, not beside the link") {
  const std::string folder = oracle::scratch_folder("linked");
  fs::create_symlink(MULLION_PROGRAM, folder + "/mullion");
  const oracle::Run run = oracle::run({folder + "/mullion", "cutter", "show", "metric-bench"});
  CHECK(run.status == 0);
  CHECK(run.out == oracle::mullion({"cutter", "show", "metric-bench"}).out);
}
