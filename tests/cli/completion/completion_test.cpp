#include <algorithm>
#include <catch2/catch.hpp>
#include <sstream>

#include "tests/oracle/program.h"

// The scripts run in the shells that they are for. fish is asked by `complete -C`, its own question
// what a line may go on with; bash is given the variables that its manual lists under "Programmable
// Completion"; zsh only reads its script.

namespace {

std::string script_for(const std::string& shell) {
  const oracle::Run run = oracle::mullion({"completion", shell});
  REQUIRE(run.status == 0);
  return run.out;
}

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> out;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) out.push_back(line.substr(0, line.find('\t')));
  std::sort(out.begin(), out.end());
  return out;
}

bool has(const std::vector<std::string>& words, const std::string& word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

std::string folder_of_files() {
  const std::string folder = oracle::scratch_folder("completion");
  for (const char* name : {"/dune.xml", "/dune.png", "/two words.xml"}) {
    oracle::write_file(folder + name, "");
  }
  return folder;
}

// What bash offers for the last word of the line.
std::vector<std::string> in_bash(const std::string& words) {
  const std::string folder = folder_of_files();
  oracle::write_file(folder + "/.script", script_for("bash"));
  const oracle::Run run = oracle::run({"bash", "--norc", "-c",
                                       "cd '" + folder + "'; source .script; COMP_WORDS=(" + words +
                                           "); COMP_CWORD=$((${#COMP_WORDS[@]} - 1)); _mullion; "
                                           "printf '%s\\n' \"${COMPREPLY[@]}\""});
  INFO(run.err);
  CHECK(run.status == 0);
  CHECK(run.err.empty());
  return lines_of(run.out);
}

std::vector<std::string> in_fish(const std::string& line) {
  const std::string folder = folder_of_files();
  oracle::write_file(folder + "/.script", script_for("fish"));
  const oracle::Run run =
      oracle::run({"env", "HOME=" + folder, "fish", "--no-config", "-c",
                   "cd '" + folder + "'; source .script; complete -C '" + line + "'"});
  INFO(run.err);
  CHECK(run.status == 0);
  CHECK(run.err.empty());
  return lines_of(run.out);
}

}  // namespace

TEST_CASE("bash completes the verbs, and the verbs of a verb") {
  CHECK(in_bash("mullion templ") == std::vector<std::string>{"template"});
  CHECK(in_bash("mullion cutter ''") == std::vector<std::string>{"check", "show"});
  CHECK(has(in_bash("mullion ''"), "sheets"));
}

TEST_CASE("bash completes the options of the verb that was typed") {
  CHECK(in_bash("mullion template job.xml --pa") == std::vector<std::string>{"--paper"});
  CHECK(has(in_bash("mullion cutter check --"), "--far-end"));
  CHECK_FALSE(has(in_bash("mullion cutter show --"), "--far-end"));
}

TEST_CASE("bash completes papers, cutters and ways of cutting by name") {
  CHECK(in_bash("mullion template --paper tab") == std::vector<std::string>{"tabloid"});
  CHECK(in_bash("mullion template --paper = tab") == std::vector<std::string>{"tabloid"});
  CHECK(has(in_bash("mullion template --paper ="), "a4"));
  CHECK(has(in_bash("mullion cuts --cutter ''"), "metric-bench"));
  CHECK(has(in_bash("mullion open --language ''"), "de"));
  CHECK(in_bash("mullion cuts --way two") == std::vector<std::string>{"two-stops"});
}

TEST_CASE(
    "bash offers job files for a job, any file for others, and none for a length, a size or a "
    "name") {
  CHECK(in_bash("mullion check ''") == std::vector<std::string>{"dune.xml", "two words.xml"});
  CHECK(has(in_bash("mullion proof -o ''"), "dune.png"));
  CHECK_FALSE(has(in_bash("mullion proof --glare ''"), "dune.png"));
  for (const char* line : {"template --kerf ''", "sheets --widest-board ''", "new --size ''",
                           "new --customer ''", "explain ''"}) {
    CHECK(in_bash("mullion " + std::string(line)) == std::vector<std::string>{""});
  }
}

TEST_CASE("fish completes verbs, options, words and files") {
  CHECK(in_fish("mullion templ") == std::vector<std::string>{"template"});
  CHECK(in_fish("mullion cutter ") == std::vector<std::string>{"check", "show"});
  CHECK(in_fish("mullion template job.xml --pa") == std::vector<std::string>{"--paper"});
  CHECK(has(in_fish("mullion cutter check --"), "--far-end"));
  CHECK_FALSE(has(in_fish("mullion check --"), "--far-end"));
  CHECK(in_fish("mullion template --paper tab") == std::vector<std::string>{"tabloid"});
  CHECK(in_fish("mullion cuts --way two") == std::vector<std::string>{"two-stops"});
  CHECK(has(in_fish("mullion check du"), "dune.xml"));
  CHECK(has(in_fish("mullion proof -o du"), "dune.png"));
}

TEST_CASE("zsh reads its script, with a function for every verb") {
  const std::string folder = oracle::scratch_folder("zsh");
  const std::string script = script_for("zsh");
  CHECK(script.rfind("#compdef mullion\n", 0) == 0);      // by which compinit knows the file
  CHECK(script.find("'*--size=[") != std::string::npos);  // given once for each picture
  oracle::write_file(folder + "/_mullion", script);
  const oracle::Run run = oracle::run({"zsh", "-f", "-n", folder + "/_mullion"});
  CHECK(run.status == 0);
  CHECK(run.err.empty());
  const oracle::Run loaded =
      oracle::run({"zsh", "-f", "-c",
                   "fpath=(" + folder +
                       " $fpath); autoload -Uz compinit; compinit -u -D; print $_comps[mullion]; "
                       "compdef() { :; }; source " +
                       folder + "/_mullion; print ${+functions[_mullion_cutter_check]}"});
  CHECK(loaded.out == "_mullion\n1\n");
  CHECK(loaded.err.empty());
}
