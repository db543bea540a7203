#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "tests/oracle/pdf.h"
#include "tests/oracle/program.h"

namespace {

const char* const stock =
    "<stock currency=\"EUR\">\n"
    "<board name=\"Oat\" colour=\"#ece5d4\">"
    "<sheet id=\"oat\" width=\"32\" height=\"40\" price=\"12.50\" on-hand=\"4\"/></board>\n"
    "</stock>\n";

struct Desk {
  std::string folder, stock_file;
  explicit Desk(const std::string& name)
      : folder(oracle::scratch_folder(name)), stock_file(folder + "/stock.xml") {
    oracle::write_file(stock_file, stock);
  }
};

}  // namespace

TEST_CASE("sheets plans several jobs at once and prints the summary") {
  const oracle::Run run = oracle::mullion(
      {"sheets", oracle::gallery("equal-borders.xml"), oracle::gallery("double-mat.xml")});
  INFO(run.err);
  CHECK(run.status == 0);
  CHECK(run.out.find("W-0101") != std::string::npos);
  CHECK(run.out.find("W-0103") != std::string::npos);
  CHECK(run.out.find("Mats that run together") != std::string::npos);
}

TEST_CASE("sheets writes pages, JSON and labels in one run") {
  const Desk desk("cli_sheets_outputs");
  const oracle::Run run = oracle::mullion(
      {"sheets", oracle::gallery("equal-borders.xml"), "-o", desk.folder + "/plan.pdf", "-o",
       desk.folder + "/plan.json", "-o", desk.folder + "/plan.txt", "--labels",
       desk.folder + "/labels.pdf", "--stock", desk.stock_file});
  INFO(run.err);
  REQUIRE(run.status == 0);
  CHECK(run.out.empty());
  CHECK(oracle::read_pdf(desk.folder + "/plan.pdf").size() == 1);
  CHECK(oracle::pdf_text(desk.folder + "/labels.pdf").find("W-0101") != std::string::npos);
  const auto json = nlohmann::json::parse(oracle::read_file(desk.folder + "/plan.json"));
  CHECK(json["cost"] == 1250);
  CHECK(oracle::read_file(desk.stock_file) == stock);
}

TEST_CASE("only --commit changes the stock file") {
  const Desk desk("cli_sheets_commit");
  const std::vector<std::string> words = {"sheets", oracle::gallery("equal-borders.xml"), "--stock",
                                          desk.stock_file};
  REQUIRE(oracle::mullion(words).status == 0);
  CHECK(oracle::read_file(desk.stock_file) == stock);
  std::vector<std::string> commit = words;
  commit.emplace_back("--commit");
  REQUIRE(oracle::mullion(commit).status == 0);
  const std::string after = oracle::read_file(desk.stock_file);
  CHECK(after.find("on-hand=\"3\"") != std::string::npos);
  CHECK(after.find("<offcut id=\"offcut-1\"") != std::string::npos);
}

TEST_CASE("a run that is killed at any system call leaves the stock whole, old or new") {
  const Desk clean("cli_sheets_not_killed");
  const std::string job = oracle::gallery("equal-borders.xml");
  REQUIRE(oracle::mullion({"sheets", job, "--stock", clean.stock_file, "--commit"}).status == 0);
  const std::string committed = oracle::read_file(clean.stock_file);
  // strace ends the program at its n-th call of each of these. (The leak checker of a sanitizer
  // cannot work under strace.)
  for (const char* call : {"write", "fsync", "rename", "unlink", "fchmod", "flock"}) {
    bool survived = false;
    for (int n = 1; n <= 20 && !survived; ++n) {
      const Desk desk("cli_sheets_killed");
      const oracle::Run run =
          oracle::run({"env", "ASAN_OPTIONS=detect_leaks=0", "strace", "-f", "-o", "/dev/null",
                       "-e", std::string("trace=") + call, "-e",
                       std::string("inject=") + call + ":signal=KILL:when=" + std::to_string(n),
                       MULLION_PROGRAM, "sheets", job, "--stock", desk.stock_file, "--commit", "-o",
                       desk.folder + "/plan.txt"});
      survived = run.status == 0;
      if (survived) break;
      INFO(call << " " << n << ": " << run.err);
      const std::string left = oracle::read_file(desk.stock_file);
      REQUIRE((left == stock || left == committed));
      // The next run carries out what was begun, and then finds nothing left to carry out.
      const oracle::Run next =
          oracle::mullion({"sheets", job, "--stock", desk.stock_file, "--commit"});
      INFO(next.err);
      REQUIRE(next.status == 0);
      REQUIRE(oracle::run({"test", "-e", desk.stock_file + ".journal"}).status == 1);
    }
    CHECK(survived);
  }
}

TEST_CASE("what is wrong with the command line is said with status 2") {
  const std::string job = oracle::gallery("equal-borders.xml");
  CHECK(oracle::mullion({"sheets", job, "-o", "plan.doc"}).status == 2);
  CHECK(oracle::mullion({"sheets", job, "--commit"}).status == 2);
  CHECK(oracle::mullion({"sheets", job, "--kerf", "thin"}).status == 2);
  CHECK(oracle::mullion({"sheets", job, "--label-sheet", "a9-99"}).status == 2);
  CHECK(oracle::mullion({"sheets"}).status == 2);
}

TEST_CASE("a board that the stock file does not list is an error of the job") {
  const Desk desk("cli_sheets_no_board");
  const oracle::Run run =
      oracle::mullion({"sheets", oracle::gallery("double-mat.xml"), "--stock", desk.stock_file});
  CHECK(run.status == 1);
  CHECK(run.err.find("order W-0103, Top mat: found no sheet of Chalk") != std::string::npos);
}

TEST_CASE("two jobs with one reference are refused, since their labels would be the same") {
  const std::string job = oracle::gallery("equal-borders.xml");
  const oracle::Run run = oracle::mullion({"sheets", job, job});
  CHECK(run.status == 1);
  CHECK(run.err.find("W-0101 again") != std::string::npos);
}
