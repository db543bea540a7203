#include <catch2/catch.hpp>
#include <filesystem>

#include "tests/oracle/program.h"
#include "tests/oracle/terminal.h"

namespace {

using Words = std::vector<std::string>;

const std::string& folder() {
  static const std::string path =
      oracle::scratch_folder("cli_messages_" + std::to_string(::getpid()));
  return path;
}

std::string job_with(const std::string& picture_line) {
  static int count = 0;
  const std::string path = folder() + "/job-" + std::to_string(++count) + ".xml";
  oracle::write_file(path, "<job version=\"1\" unit=\"in\"><pictures>\n" + picture_line +
                               "\n</pictures><layers><layer/></layers><borders all=\"3\"/>"
                               "<arrange><opening picture=\"dune\"/></arrange></job>\n");
  return path;
}

std::string errors_of(const std::string& job) {
  return oracle::mullion({"check", job}).err;
}

// The two lines below the message.
std::vector<std::string> excerpt_of(const std::string& job) {
  std::istringstream lines(errors_of(job));
  std::vector<std::string> out;
  for (std::string line; std::getline(lines, line);) out.push_back(line);
  REQUIRE(out.size() >= 3);
  return {out[1], out[2]};
}

Words check(const Words& variables, const std::string& job) {
  Words words = {"env", "-u", "NO_COLOR", "TERM=xterm"};
  words.insert(words.end(), variables.begin(), variables.end());
  words.insert(words.end(), {MULLION_PROGRAM, "check", job});
  return words;
}

bool has_escape(const std::string& text) {
  return text.find('\x1b') != std::string::npos;
}

}  // namespace

TEST_CASE("an error shows the line that it is about with a caret under the place") {
  const auto lines = excerpt_of(job_with(R"(<picture id="dune" width="10" heigth="8"/>)"));
  CHECK(lines[0] == R"(    2 | <picture id="dune" width="10" heigth="8"/>)");
  CHECK(lines[1] == "      | ^~~~~~~~");
  const std::string all = errors_of(job_with(R"(<picture id="dune" width="10" heigth="8"/>)"));
  CHECK(all.find("      |                               ^~~~~~~~~~\n") != std::string::npos);
}

TEST_CASE("tabs before the place are kept under the line, so that any tab width agrees") {
  const auto lines =
      excerpt_of(job_with("\t \t<picture id=\"dune\" width=\"10\" height=\"8\" \twdth=\"1\"/>"));
  const std::size_t at = lines[0].find("wdth");
  REQUIRE(lines[1].find('^') == at);
  for (std::size_t i = 8; i < at; ++i) CHECK((lines[0][i] == '\t') == (lines[1][i] == '\t'));
}

TEST_CASE("the caret counts columns of the terminal, not bytes, past accents and wide characters") {
  // Widths by Unicode Standard Annex 11: U+00FC takes one column, U+753B two, U+0301 none.
  const auto lines = excerpt_of(
      job_with("<picture image=\"\xC3\xBC\xE7\x94\xBB\x65\xCC\x81.png\" id=\"dune\" width=\"1\" "
               "height=\"8\" wdth=\"1\"/>"));
  const std::size_t bytes = lines[0].find("wdth");
  CHECK(lines[1].find('^') == bytes - 1 - 1 - 2);  // 2, 3 and 2 bytes are 1, 2 and 0 columns
}

TEST_CASE("a long line is shown around the place") {
  const std::string filler(5000, ' ');
  const auto lines = excerpt_of(job_with("<picture id=\"dune\" width=\"10\" height=\"8\"" + filler +
                                         "wdth=\"1\"" + filler + "/>"));
  CHECK(lines[0].size() < 130);
  CHECK(lines[0].substr(lines[1].find('^'), 4) == "wdth");
}

TEST_CASE("a byte order mark and DOS line ends do not move the caret") {
  const std::string path = folder() + "/dos.xml";
  oracle::write_file(path, "\xEF\xBB\xBF<job version=\"1\" unit=\"in\" wdth=\"1\">\r\n</job>\r\n");
  const auto lines = excerpt_of(path);
  CHECK(lines[0] == "    1 | <job version=\"1\" unit=\"in\" wdth=\"1\">");
  const std::string all = errors_of(path);
  CHECK(all.find("      |" + std::string(28, ' ') + "^~~~~~~~\n") != std::string::npos);
}

TEST_CASE("a message in a pipe has no colour") {
  CHECK_FALSE(has_escape(errors_of(job_with("<picture/>"))));
}

TEST_CASE("a message on a terminal has colour, unless NO_COLOR or TERM says otherwise") {
  const std::string job = job_with("<picture/>");
  const oracle::Run coloured = oracle::run_on_terminal(check({}, job));
  CHECK(coloured.status == 1);
  CHECK(coloured.out.find("\x1b[1;31merror:\x1b[0m") != std::string::npos);
  CHECK_FALSE(has_escape(oracle::run_on_terminal(check({"NO_COLOR=1"}, job)).out));
  CHECK_FALSE(has_escape(oracle::run_on_terminal(check({"TERM=dumb"}, job)).out));
  CHECK(has_escape(oracle::run_on_terminal(check({"NO_COLOR="}, job)).out));
}

TEST_CASE("nothing in a file or a name can steer the terminal") {
  const std::string path = folder() + "/bell\a\x1b[2J.xml";
  oracle::write_file(path, "<job version=\"1\" unit=\"in\">\n\x1b[31m\xC2\x9B\xFF</job>");
  const std::string all = errors_of(path);
  CHECK_FALSE(has_escape(all));
  CHECK(all.find('\a') == std::string::npos);
  CHECK(all.find("\xC2\x9B") == std::string::npos);
  CHECK(oracle::run({"sh", "-c", "\"$0\" check \"$1\" 2>&1 | iconv -f UTF-8 -t UTF-8",
                     MULLION_PROGRAM, path})
            .err.empty());
}

TEST_CASE("a word that the command line does not know gets a near one") {
  const oracle::Run verb = oracle::mullion({"chek", "job.xml"});
  CHECK(verb.status == 2);
  CHECK(verb.err ==
        "error: found \"chek\", which mullion does not know; did you mean \"check\"? (see mullion "
        "--help)\n");
  CHECK(oracle::mullion({"cuts", "--cuter", "bench", "job.xml"}).err.find("\"--cutter\"") !=
        std::string::npos);
}
