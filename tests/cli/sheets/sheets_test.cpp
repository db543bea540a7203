#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "engine/sheets/inventory/inventory.h"
#include "engine/sheets/inventory/ledger.h"
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
  CHECK(oracle::read_pdf(desk.folder + "/plan.pdf").size() == 2);  // summary and one sheet
  CHECK(oracle::pdf_text(desk.folder + "/labels.pdf").find("W-0101") != std::string::npos);
  const auto json = nlohmann::json::parse(oracle::read_file(desk.folder + "/plan.json"));
  CHECK(json["cost"] == 1250);
  CHECK(oracle::read_file(desk.stock_file) == stock);
}

TEST_CASE("mats of two orders that are cut alike share a kind of the run, in JSON and on paper") {
  const Desk desk("cli_sheets_run");
  const std::string job = oracle::gallery("equal-borders.xml");
  std::string text = oracle::read_file(job);
  text.replace(text.find("W-0101"), 6, "W-0999");
  const std::string other = desk.folder + "/other.xml";
  oracle::write_file(other, text);
  const oracle::Run run =
      oracle::mullion({"sheets", job + "*2", other, "--stock", desk.stock_file, "-o",
                       desk.folder + "/plan.json", "--run-sheet", desk.folder + "/run.pdf"});
  INFO(run.err);
  REQUIRE(run.status == 0);
  const auto json = nlohmann::json::parse(oracle::read_file(desk.folder + "/plan.json"));
  REQUIRE(json["parts"][0]["run"]["kinds"].size() == 1);
  const auto& orders = json["parts"][0]["run"]["kinds"][0]["orders"];
  REQUIRE(orders.size() == 2);
  CHECK(orders[0]["order"] == "W-0101");
  CHECK(orders[0]["quantity"] == 2);
  CHECK(orders[1]["order"] == "W-0999");
  const std::string paper = oracle::pdf_text(desk.folder + "/run.pdf");
  CHECK(paper.find("2 for W-0101") != std::string::npos);
  CHECK(paper.find("1 for W-0999") != std::string::npos);
}

TEST_CASE("a run sheet has every layer of double and triple mats") {
  const Desk desk("cli_sheets_layers");
  const std::string paper = desk.folder + "/run.pdf";
  const oracle::Run run =
      oracle::mullion({"sheets", oracle::gallery("double-mat.xml"),
                       oracle::gallery("triple-mat.xml"), "--run-sheet", paper});
  INFO(run.err);
  REQUIRE(run.status == 0);
  CHECK(oracle::pdf_text(paper).find("Layer 3") != std::string::npos);
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
          oracle::mullion({"sheets", job, "--stock", desk.stock_file, "--commit", "--again"});
      INFO(next.err);
      REQUIRE(next.status == 0);
      REQUIRE(oracle::run({"test", "-e", desk.stock_file + ".journal"}).status == 1);
      // The stock can be made anew from the ledger, which knows every cut: one, or two where the
      // killed run was carried out, the second of which takes the off-cut of the first.
      const auto ledger = mullion::read_ledger(desk.stock_file);
      const auto kept = mullion::read_stock(desk.stock_file);
      REQUIRE(ledger);
      REQUIRE(kept);
      REQUIRE(mullion::changes_between(mullion::stock_of(*ledger).pieces, kept->pieces).empty());
      REQUIRE(kept->pieces.at(0).on_hand == 3);
      const std::size_t cuts = ledger->lines.size() - 1;
      REQUIRE((cuts == 1 || (cuts == 2 && ledger->last.contains("offcut-3"))));
      REQUIRE((left == stock || cuts == 2));
    }
    CHECK(survived);
  }
}

TEST_CASE("sheets are cut by the cutter's profile, and an option replaces what it says") {
  const Desk desk("cli_sheets_cutter");
  const std::string file = desk.folder + "/cutter.xml";
  std::string profile = oracle::mullion({"cutter", "show", "bench"}).out;
  const auto set = [&profile](const std::string& from, const std::string& to) {
    const std::size_t at = profile.find(from);
    REQUIRE(at != std::string::npos);
    profile.replace(at, from.size(), to);
  };
  set("longest-cut=\"48\"", "longest-cut=\"20\"");
  oracle::write_file(file, profile);
  const std::vector<std::string> words = {
      "sheets", oracle::gallery("equal-borders.xml"), "--stock", desk.stock_file, "--cutter", file};
  const oracle::Run too_small = oracle::mullion(words);
  CHECK(too_small.status == 1);
  CHECK(too_small.err.find("cannot be cut from any sheet") != std::string::npos);
  std::vector<std::string> replaced = words;
  replaced.insert(replaced.end(), {"--longest-cut", "40"});
  CHECK(oracle::mullion(replaced).status == 0);
  CHECK(oracle::mullion({"sheets", words[1], "--cutter", desk.folder + "/none.xml"}).status == 3);
}

TEST_CASE("sheets without any price in the stock are planned by area") {
  const Desk desk("cli_sheets_no_price");
  std::string text = stock;
  text.replace(text.find(" price=\"12.50\""), 14, "");
  oracle::write_file(desk.stock_file, text);
  const oracle::Run run = oracle::mullion(
      {"sheets", oracle::gallery("equal-borders.xml"), "--stock", desk.stock_file, "--commit"});
  INFO(run.err);
  REQUIRE(run.status == 0);
  CHECK(run.out.find("cost 1280 sq in") != std::string::npos);
  CHECK(oracle::read_file(desk.stock_file).find("price") == std::string::npos);
}

namespace {

// A job that can be improved for as long as it is let.
std::vector<std::string> long_search(const Desk& desk) {
  std::vector<std::string> words = {"sheets"};
  for (int i = 0; i < 30; ++i) {
    const std::string path = desk.folder + "/job-" + std::to_string(i) + ".xml";
    const std::string width = std::to_string(7 + i * 5 % 11),
                      height = std::to_string(8 + i * 7 % 13);
    oracle::write_file(path, "<job version=\"1\" unit=\"in\" reference=\"L-" + std::to_string(i) +
                                 "\" quantity=\"7\"><pictures><picture id=\"p\" width=\"" + width +
                                 "\" height=\"" + height +
                                 "\"/></pictures><layers><layer name=\"Top mat\" board=\"Oat\"/>"
                                 "</layers><borders all=\"2 1/4\"/><arrange><opening "
                                 "picture=\"p\"/></arrange></job>");
    words.push_back(path);
  }
  words.insert(words.end(), {"--effort", "1000", "-o", desk.folder + "/plan.txt"});
  return words;
}

// In the foreground `timeout` signals the program alone; else it signals the group after it, and a
// second Ctrl-C ends the program at once.
std::vector<std::string> interrupted_after_a_second(std::vector<std::string> words) {
  words.insert(words.begin(),
               {"timeout", "--foreground", "--preserve-status", "-s", "INT", "1", MULLION_PROGRAM});
  return words;
}

}  // namespace

// The search would go on for a minute, and a program that a signal ends has no status of 0.
TEST_CASE("Ctrl-C ends the search early and writes the best plan so far, in silence when piped") {
  const Desk desk("cli_sheets_interrupted");
  const oracle::Run run = oracle::run(interrupted_after_a_second(long_search(desk)));
  INFO(run.err);
  CHECK(run.status == 0);
  CHECK(run.err.empty());
  const std::string plan = oracle::read_file(desk.folder + "/plan.txt");
  CHECK(plan.find("210 blanks from") != std::string::npos);
}

TEST_CASE("a terminal is shown the progress, board by board") {
  const Desk desk("cli_sheets_progress");
  std::string line;
  for (const std::string& word : interrupted_after_a_second(long_search(desk))) {
    line += "'" + word + "' ";
  }
  const oracle::Run run = oracle::run({"script", "-q", "-e", "-c", line, "/dev/null"});
  CHECK(run.status == 0);
  CHECK(run.out.find("board 1 of 1, Oat: ") != std::string::npos);
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

namespace {

// A stock of so many sheets of the board of equal-borders.xml, of which four mats come of a sheet.
void write_rack(const Desk& desk, int sheets) {
  oracle::write_file(desk.stock_file,
                     "<stock currency=\"EUR\"><!-- ours -->\n<board name=\"Oat\" "
                     "colour=\"#ece5d4\"><sheet id=\"oat\" width=\"32\" height=\"40\" "
                     "price=\"12.50\" on-hand=\"" +
                         std::to_string(sheets) + "\"/></board>\n</stock>\n");
}

std::string on_hand(const Desk& desk) {
  const std::string text = oracle::read_file(desk.stock_file);
  const std::size_t at = text.find("on-hand=\"") + 9;
  return text.substr(at, text.find('"', at) - at);
}

oracle::Run scanned(const Desk& desk, const std::string& lines, const std::string& how) {
  oracle::write_file(desk.folder + "/codes.txt", lines);
  return oracle::run({"sh", "-c", "\"$0\" rack \"$1\" " + how + " < \"$2\"", MULLION_PROGRAM,
                      desk.stock_file, desk.folder + "/codes.txt"});
}

}  // namespace

TEST_CASE(
    "a plan that the stock does not suffice for fails, and takes nothing unless it is told to") {
  const Desk desk("cli_sheets_incomplete");
  write_rack(desk, 1);
  const std::string job = oracle::gallery("equal-borders.xml");
  std::vector<std::string> words = {"sheets", job + "*6", "--stock", desk.stock_file, "--commit"};
  const oracle::Run refused = oracle::mullion(words);
  CHECK(refused.status == 1);
  CHECK(refused.err.find("not made: order W-0101: 2 of 6 mats (from copy 5 on), short of Oat") !=
        std::string::npos);
  CHECK(refused.err.find("--incomplete takes what is cut") != std::string::npos);
  CHECK(refused.out.find("Buy\n  1 of oat, Oat, 32 x 40 in: 12.50 EUR\n") != std::string::npos);
  CHECK(on_hand(desk) == "1");
  words.emplace_back("--incomplete");
  CHECK(oracle::mullion(words).status == 1);
  CHECK(on_hand(desk) == "0");
  // The rest of the order is no second time.
  write_rack(desk, 1);
  CHECK(oracle::mullion({"sheets", job + "*3", "--stock", desk.stock_file, "--commit"}).status ==
        1);
  CHECK(on_hand(desk) == "1");
  CHECK(oracle::mullion({"sheets", job + "*2", "--stock", desk.stock_file, "--commit"}).status ==
        0);
  CHECK(on_hand(desk) == "0");
}

TEST_CASE("a board with none on hand is said to be short, and is to be bought") {
  const Desk desk("cli_sheets_none_on_hand");
  write_rack(desk, 0);
  const oracle::Run run = oracle::mullion(
      {"sheets", oracle::gallery("equal-borders.xml"), "--stock", desk.stock_file, "--json"});
  CHECK(run.status == 1);
  const auto json = nlohmann::json::parse(run.out);
  CHECK(json["status"] == 1);
  CHECK(json["problems"][0]["code"] == "sheets-incomplete");
  CHECK(json["problems"][0]["message"].get<std::string>().find("did you mean") ==
        std::string::npos);
  CHECK(json["plan"]["leftOut"][0]["order"] == "W-0101");
  CHECK(json["plan"]["pull"][0]["buy"] == 1);
}

TEST_CASE("an order is committed once, again when that is said, and undone act by act") {
  const Desk desk("cli_sheets_twice");
  write_rack(desk, 4);
  const std::string before = oracle::read_file(desk.stock_file);
  std::vector<std::string> words = {"sheets", oracle::gallery("equal-borders.xml"), "--stock",
                                    desk.stock_file, "--commit"};
  CHECK(oracle::mullion(words).status == 0);
  CHECK(oracle::read_file(desk.stock_file).find("<!-- ours -->") != std::string::npos);
  const oracle::Run twice = oracle::mullion(words);
  CHECK(twice.status == 1);
  CHECK(twice.err.find("order W-0101 was cut before: 1 of 1 on ") != std::string::npos);
  CHECK(on_hand(desk) == "3");
  words.emplace_back("--spoiled");
  CHECK(oracle::mullion(words).status == 0);
  const oracle::Run ledger = oracle::mullion({"rack", desk.stock_file, "--ledger"});
  CHECK(ledger.out.find("spoiled: W-0101 (1 of 1)") != std::string::npos);
  for (int i = 0; i < 2; ++i) {
    CHECK(oracle::mullion({"sheets", "--undo", "--stock", desk.stock_file}).status == 0);
  }
  CHECK(oracle::read_file(desk.stock_file) == before);
  CHECK(oracle::mullion({"sheets", "--undo", "--stock", desk.stock_file}).status == 1);
  CHECK(oracle::mullion({"sheets", "--undo"}).status == 2);
}

TEST_CASE("pieces are taken out and put back by the codes of their labels") {
  const Desk desk("cli_sheets_scanner");
  REQUIRE(oracle::mullion({"sheets", oracle::gallery("equal-borders.xml"), "--stock",
                           desk.stock_file, "--commit"})
              .status == 0);
  const std::string committed = oracle::read_file(desk.stock_file);
  const oracle::Run run =
      scanned(desk, "offcut-1\r\noat\r\n\r\nundo\r\noffcut-9\r\nreturn\r\noffcut-1\r\n", "--take");
  CHECK(run.status == 1);
  CHECK(run.out.find("offcut-1 taken: Oat, ") == 0);
  CHECK(run.out.find("oat taken: Oat, 32 x 40 in; 2 on the rack\nundone: ") != std::string::npos);
  CHECK(run.out.find("offcut-1 returned: ") != std::string::npos);
  CHECK(run.err.find("found the code \"offcut-9\"") != std::string::npos);
  CHECK(scanned(desk, "oat\n", "--lost --json").out.find("\"act\": \"lost\"") != std::string::npos);
  CHECK(oracle::mullion({"rack", desk.stock_file, "--undo"}).status == 0);
  const oracle::Run list = oracle::mullion({"rack", desk.stock_file});
  CHECK(list.out.find("3 of oat, 32 x 40 in\n") != std::string::npos);
  CHECK(list.out.find("1 of offcut-1, ") != std::string::npos);
  const std::string again = desk.folder + "/again.xml";
  REQUIRE(oracle::mullion({"rack", desk.stock_file, "--rebuild", again}).status == 0);
  CHECK(mullion::changes_between(mullion::read_stock(again)->pieces,
                                 mullion::read_stock(desk.stock_file)->pieces)
            .empty());
  const std::string labels = desk.folder + "/rack.pdf";
  REQUIRE(oracle::mullion({"rack", desk.stock_file, "--labels", labels}).status == 0);
  CHECK(oracle::pdf_text(labels).find("offcut-1") != std::string::npos);
  CHECK(oracle::mullion({"rack", desk.stock_file, "--take", "--lost"}).status == 2);
}

TEST_CASE("the shop's own files among the jobs are left out") {
  const Desk desk("cli_sheets_pattern");
  const std::string job = desk.folder + "/job.xml";
  oracle::write_file(job, oracle::read_file(oracle::gallery("equal-borders.xml")));
  const oracle::Run with = oracle::mullion({"sheets", job, desk.stock_file, "--stock",
                                            desk.stock_file, "-o", desk.folder + "/plan.txt"});
  CHECK(with.status == 0);
  CHECK(with.err.empty());
  const oracle::Run without = oracle::mullion({"sheets", job, desk.stock_file});
  CHECK(without.status == 0);
  CHECK(without.err.find("is a stock file, not a job: left out; --stock ") != std::string::npos);
  CHECK(oracle::mullion({"sheets", desk.stock_file}).status == 2);
}
