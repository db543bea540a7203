#pragma once

// The stock file while a run plans from it and changes it.
//
// Opening takes a lock, so that two runs cannot both take the same sheet; it is released when the
// object goes, and by the system when the program dies. A commit first writes a journal beside the
// file (PATH.journal: the new file and what it replaces), then replaces the file, then removes the
// journal. Whenever the program dies, the file is whole, old or new; and a journal that was left is
// carried out, or found to be carried out, when the file is next opened.

#include <functional>
#include <memory>
#include <string>

#include "engine/sheets/inventory/inventory.h"

namespace mullion {

// The moments of a commit between which a crash makes a difference.
enum class CommitMoment { begin, journal_written, stock_replaced, journal_removed };

class StockFile {
 public:
  // Locks, carries out a journal that was left, and reads. Errors: another run holds the file; the
  // file or the journal cannot be read; the file was changed by hand after an unfinished commit.
  static Result<StockFile> open(const std::string& path);

  StockFile(StockFile&&) noexcept;
  StockFile& operator=(StockFile&&) noexcept;
  ~StockFile();

  const Stock& stock() const { return stock_; }

  // Replaces the stock. Refuses when somebody has changed the file since it was opened. `moment` is
  // for tests.
  Result<void> commit(const Stock& next, const std::function<void(CommitMoment)>& moment = {});

 private:
  class Lock;
  StockFile(std::string path, std::unique_ptr<Lock> lock);

  std::string path_;
  std::unique_ptr<Lock> lock_;
  std::string bytes_;
  Stock stock_;
};

}  // namespace mullion
