#pragma once

// The stock file while a run plans from it and changes it.
//
// Opening takes a lock, so that two runs cannot both take the same sheet; it is released when the
// object goes, and by the system when the program dies. A commit first writes a journal beside the
// file (PATH.journal: the new file and what it replaces, and the lines that the ledger is to have
// more), then adds those lines (PATH.ledger), then replaces the file, then removes the journal.
// Whenever the program dies, the file is whole, old or new; and a journal that was left is carried
// out, or found to be carried out, when the file is next opened, so that file and ledger agree.
// What somebody has edited in the file since the last act is a line of its own, "corrected".

#include <cstdint>
#include <functional>
#include <memory>
#include <string>

#include "engine/sheets/inventory/inventory.h"
#include "engine/sheets/inventory/ledger.h"

namespace mullion {

// The moments of a commit between which a crash makes a difference.
enum class CommitMoment { begin, journal_written, ledger_written, stock_replaced, journal_removed };

// What a commit is for: a line of the ledger without its number and its changes.
struct Deed {
  Act act = Act::cut;
  std::vector<CutMats> orders = {};
  std::vector<Bought> bought = {};
  int undoes = 0;
  std::string time = {};  // as in the ledger; empty: now
};

class StockFile {
 public:
  // Locks, carries out a journal that was left, and reads. Errors: another run holds the file; the
  // file or the journal cannot be read; the file was changed by hand after an unfinished commit.
  static Result<StockFile> open(const std::string& path);

  StockFile(StockFile&&) noexcept;
  StockFile& operator=(StockFile&&) noexcept;
  ~StockFile();

  // With the ids that are gone, by the ledger.
  const Stock& stock() const { return stock_; }
  const Ledger& ledger() const { return ledger_; }

  // Replaces the stock. Refuses when somebody has changed the file since it was opened. `moment` is
  // for tests.
  Result<void> commit(const Stock& next, const Deed& deed = {},
                      const std::function<void(CommitMoment)>& moment = {});

  // Undoes the last act that is not undone yet. Errors besides those of commit:
  // "stock-nothing-to-undo", "stock-cannot-undo". Gives the line that was undone.
  Result<LedgerLine> undo(const std::string& time = {});

 private:
  class Lock;
  StockFile(std::string path, std::unique_ptr<Lock> lock);
  std::string add_lines(Ledger& ledger, const Stock& next, const Deed& deed) const;

  std::string path_;
  std::unique_ptr<Lock> lock_;
  std::string bytes_;
  Stock stock_;
  Ledger ledger_;
  std::uint64_t ledger_size_ = 0;
};

// The stock file and its ledger as they stand, without a lock, for a run that changes nothing.
Result<Stock> look_at_stock(const std::string& path);

}  // namespace mullion
