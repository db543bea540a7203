#include "engine/sheets/inventory/stock_file.h"

#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <catch2/catch.hpp>
#include <csignal>

#include "engine/sheets/inventory/journal.h"
#include "tests/oracle/program.h"

using namespace mullion;

namespace {

const std::string old_text =
    "<stock><board name=\"Oat\"><sheet id=\"a\" width=\"32\" height=\"40\" on-hand=\"5\"/>"
    "</board></stock>";

std::string new_stock_file(const std::string& name) {
  const std::string path = oracle::scratch_folder(name) + "/stock.xml";
  oracle::write_file(path, old_text);
  return path;
}

int on_hand(const std::string& path) {
  const auto file = StockFile::open(path);
  REQUIRE(file);
  return file->stock().pieces.at(0).on_hand.value();
}

Stock with_one_less(const StockFile& file) {
  Stock next = file.stock();
  --*next.pieces.at(0).on_hand;
  return next;
}

// The stock that the ledger, if there is one, makes anew is the one in the file.
void check_ledger(const std::string& path) {
  const auto ledger = read_ledger(path);
  REQUIRE(ledger);
  if (ledger->lines.empty()) return;
  const auto stock = read_stock(path);
  REQUIRE(stock);
  CHECK(changes_between(stock_of(*ledger).pieces, stock->pieces).empty());
}

bool exists(const std::string& path) {
  return ::access(path.c_str(), F_OK) == 0;
}

// Runs `work` in another process; its exit status, or 128 + the signal that ended it.
template <class Work>
int in_another_process(Work work) {
  const pid_t child = ::fork();
  if (child == 0) {
    work();
    ::_exit(0);
  }
  int status = 0;
  ::waitpid(child, &status, 0);
  return WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
}

}  // namespace

TEST_CASE("a commit replaces the stock and leaves no journal") {
  const std::string path = new_stock_file("stock_commit");
  {
    auto file = StockFile::open(path);
    REQUIRE(file);
    REQUIRE(file->commit(with_one_less(*file)));
    REQUIRE(file->commit(with_one_less(*file)));
  }
  CHECK(on_hand(path) == 3);
  CHECK(!exists(path + ".journal"));
}

TEST_CASE("without a commit the stock file is not touched") {
  const std::string path = new_stock_file("stock_untouched");
  CHECK(on_hand(path) == 5);
  CHECK(oracle::read_file(path) == old_text);
}

TEST_CASE("a crash at any moment of a commit loses nothing and takes nothing twice") {
  const std::pair<CommitMoment, int> moments[] = {{CommitMoment::begin, 5},
                                                  {CommitMoment::journal_written, 4},
                                                  {CommitMoment::ledger_written, 4},
                                                  {CommitMoment::stock_replaced, 4},
                                                  {CommitMoment::journal_removed, 4}};
  for (const auto& [moment, left] : moments) {
    const std::string path = new_stock_file("stock_crash");
    const int status = in_another_process([&, crash = moment] {
      auto file = StockFile::open(path);
      if (!file) ::_exit(1);
      (void)file->commit(with_one_less(*file), {}, [crash](CommitMoment now) {
        if (now == crash) ::raise(SIGKILL);
      });
    });
    REQUIRE(status == 128 + SIGKILL);
    INFO("moment " << static_cast<int>(moment));
    CHECK(on_hand(path) == left);
    CHECK(on_hand(path) == left);  // opening once more carries nothing out a second time
    CHECK(!exists(path + ".journal"));
    check_ledger(path);
  }
}

TEST_CASE("a disk that fills up during a commit leaves the old stock") {
  // A limit on the size of files stands for the full disk: it lets `limit` bytes through.
  for (rlim_t limit = 0; limit < 2000; limit += 50) {
    const std::string path = new_stock_file("stock_full_disk");
    const int status = in_another_process([&] {
      ::signal(SIGXFSZ, SIG_IGN);
      auto file = StockFile::open(path);
      if (!file) ::_exit(1);
      const rlimit full{limit, limit};
      ::setrlimit(RLIMIT_FSIZE, &full);
      ::_exit(file->commit(with_one_less(*file)) ? 0 : 2);
    });
    INFO("limit " << limit);
    REQUIRE((status == 0 || status == 2));
    CHECK(on_hand(path) == (status == 0 ? 4 : 5));
    CHECK(!exists(path + ".journal"));
    CHECK(exists(path + ".ledger") == (status == 0));
    check_ledger(path);
  }
}

TEST_CASE("two runs at once cannot both plan from the same stock") {
  const std::string path = new_stock_file("stock_lock");
  auto first = StockFile::open(path);
  REQUIRE(first);
  const auto second = StockFile::open(path);
  REQUIRE(!second);
  CHECK(second.error().at(0).code == "stock-in-use");
  CHECK(in_another_process([&path] { ::_exit(StockFile::open(path) ? 0 : 7); }) == 7);
  REQUIRE(first->commit(with_one_less(*first)));
  first = tl::unexpected(Problems{});  // the first run ends
  CHECK(on_hand(path) == 4);
}

TEST_CASE("many runs that take a sheet each leave the stock short by as many") {
  const std::string path = new_stock_file("stock_many_runs");
  std::vector<pid_t> children;
  for (int i = 0; i < 5; ++i) {
    const pid_t child = ::fork();
    if (child == 0) {
      for (;;) {
        auto file = StockFile::open(path);
        if (file) ::_exit(file->commit(with_one_less(*file)) ? 0 : 1);
        ::usleep(1000);
      }
    }
    children.push_back(child);
  }
  for (const pid_t child : children) {
    int status = 0;
    ::waitpid(child, &status, 0);
    CHECK(status == 0);
  }
  CHECK(on_hand(path) == 0);
  check_ledger(path);
}

TEST_CASE("a stock file changed by hand during a run is not overwritten") {
  const std::string path = new_stock_file("stock_by_hand");
  auto file = StockFile::open(path);
  REQUIRE(file);
  oracle::write_file(path, old_text + "\n");
  const auto committed = file->commit(with_one_less(*file));
  REQUIRE(!committed);
  CHECK(committed.error().at(0).code == "stock-changed");
  CHECK(oracle::read_file(path) == old_text + "\n");
}

TEST_CASE("a journal left beside a file that was changed by hand is not carried out") {
  const std::string path = new_stock_file("stock_journal");
  oracle::write_file(path + ".journal",
                     format_journal({"what stood there", "what was to stand", 0, ""}));
  const auto file = StockFile::open(path);
  REQUIRE(!file);
  CHECK(file.error().at(0).code == "stock-changed");
  CHECK(oracle::read_file(path) == old_text);
  CHECK(exists(path + ".journal"));
}

TEST_CASE("no part of a journal is taken for a whole one") {
  const std::string whole = format_journal({"before", "after", 7, "line"});
  REQUIRE(parse_journal(whole));
  CHECK(parse_journal(whole)->before == "before");
  CHECK(parse_journal(whole)->after == "after");
  CHECK(parse_journal(whole)->ledger_size == 7);
  CHECK(parse_journal(whole)->ledger_lines == "line");
  for (std::size_t size = 0; size < whole.size(); ++size) {
    CHECK(!parse_journal(std::string_view(whole).substr(0, size)));
  }
  for (std::size_t at = 0; at < whole.size(); ++at) {
    std::string changed = whole;
    changed[at] = static_cast<char>(changed[at] ^ 1);
    const auto journal = parse_journal(changed);
    CHECK(!journal);
  }
}
