#include "engine/sheets/inventory/stock_file.h"

#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <ctime>
#include <stdexcept>

#include "engine/file/file.h"
#include "engine/job/read.h"
#include "engine/sheets/inventory/journal.h"

namespace mullion {
namespace {

tl::unexpected<Problems> failure(std::string code, std::string message) {
  return tl::unexpected(Problems{{Severity::error, std::move(code), std::move(message), {}, {}}});
}

std::string journal_path(const std::string& path) {
  return path + ".journal";
}

Result<std::string> ledger_bytes(const std::string& path) {
  const std::string file = ledger_path(path);
  if (::access(file.c_str(), F_OK) != 0) return std::string();
  auto bytes = read_file(file, largest_ledger);
  if (!bytes) return failure("file-read", bytes.error());
  return std::move(*bytes);
}

// Cuts the ledger to so many bytes; one that had none goes.
bool shorten_ledger(const std::string& path, std::uint64_t size) {
  const std::string file = ledger_path(path);
  if (size == 0) return ::unlink(file.c_str()) == 0 || errno == ENOENT;
  return ::truncate(file.c_str(), static_cast<off_t>(size)) == 0;
}

tl::unexpected<Problems> changed_meanwhile(const std::string& file, const std::string& journal) {
  return failure("stock-changed", file + " was changed after a commit that was cut short; " +
                                      journal +
                                      " holds what was to be written: compare both by hand, then "
                                      "remove it");
}

// The lines that the journal adds to the ledger, of which a part may stand there.
Result<void> finish_ledger(const std::string& path, const Journal& journal) {
  const auto present = ledger_bytes(path);
  if (!present) return tl::unexpected(present.error());
  if (present->size() < journal.ledger_size ||
      !journal.ledger_lines.starts_with(present->substr(journal.ledger_size))) {
    return changed_meanwhile(ledger_path(path), journal_path(path));
  }
  const std::size_t there = present->size() - journal.ledger_size;
  if (there == journal.ledger_lines.size()) return {};
  const auto added = append_to_file(ledger_path(path), journal.ledger_lines.substr(there));
  if (!added) return failure("file-write", added.error());
  return {};
}

// Carries out a commit that a crash has cut short.
Result<void> recover(const std::string& path) {
  const std::string journal_file = journal_path(path);
  if (::access(journal_file.c_str(), F_OK) != 0) return {};
  const auto text = read_file(journal_file, 2 * largest_job_file + largest_ledger);
  if (!text) return failure("stock-journal", text.error());
  const auto journal = parse_journal(*text);
  if (!journal) {
    return failure("stock-journal", journal_file + " is damaged; compare it with " + path +
                                        " by hand, then remove it");
  }
  const auto present = read_file(path, largest_job_file);
  if (!present) return failure("file-read", present.error());
  if (*present != journal->after && *present != journal->before) {
    return changed_meanwhile(path, journal_file);
  }
  if (const auto ledger = finish_ledger(path, *journal); !ledger) return ledger;
  if (*present != journal->after) {
    const auto written = replace_file(path, journal->after);
    if (!written) return failure("file-write", written.error());
  }
  ::unlink(journal_file.c_str());
  return {};
}

std::string time_now() {
  const std::time_t now = std::time(nullptr);
  std::tm parts{};
  ::gmtime_r(&now, &parts);
  char text[32];
  std::strftime(text, sizeof text, "%Y-%m-%dT%H:%M:%SZ", &parts);
  return text;
}

StockHead head_of(const Stock& stock) {
  return {stock.unit, stock.currency, stock.offcut_percent};
}

std::vector<StockPiece> pieces_of(const Ledger& ledger) {
  std::vector<StockPiece> pieces;
  for (const auto& [id, piece] : ledger.pieces) pieces.push_back(piece);
  return pieces;
}

// Every id that the ledger knows and the stock has not.
void mark_gone(Stock& stock, const Ledger& ledger) {
  for (const auto& [id, piece] : ledger.last) stock.gone_ids.insert(id);
  for (const StockPiece& piece : stock.pieces) stock.gone_ids.erase(piece.id);
}

}  // namespace

// An advisory lock on PATH.lock, which stays behind, empty. (A lock on the file itself would be
// lost when the file is replaced.)
class StockFile::Lock {
 public:
  static Result<std::unique_ptr<Lock>> take(const std::string& path) {
    const std::string name = path + ".lock";
    const int fd = ::open(name.c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0666);
    if (fd < 0) {
      return failure("stock-lock",
                     "cannot lock " + path + ": " + name + ": " + std::strerror(errno));
    }
    auto lock = std::unique_ptr<Lock>(new Lock(fd));
    if (::flock(fd, LOCK_EX | LOCK_NB) != 0) {
      return failure("stock-in-use",
                     "another run is planning from " + path + "; try again when it has ended");
    }
    return lock;
  }
  Lock(const Lock&) = delete;
  Lock& operator=(const Lock&) = delete;
  ~Lock() { ::close(fd_); }

 private:
  explicit Lock(int fd) : fd_(fd) {}
  int fd_;
};

StockFile::StockFile(std::string path, std::unique_ptr<Lock> lock)
    : path_(std::move(path)), lock_(std::move(lock)) {}
StockFile::StockFile(StockFile&&) noexcept = default;
StockFile& StockFile::operator=(StockFile&&) noexcept = default;
StockFile::~StockFile() = default;

Result<StockFile> StockFile::open(const std::string& path) {
  auto bytes = read_file(path, largest_job_file);
  if (!bytes) return failure("file-read", bytes.error());
  auto lock = Lock::take(path);
  if (!lock) return tl::unexpected(lock.error());
  StockFile file(path, std::move(*lock));
  if (const auto recovered = recover(path); !recovered) return tl::unexpected(recovered.error());
  bytes = read_file(path, largest_job_file);
  if (!bytes) return failure("file-read", bytes.error());
  file.bytes_ = std::move(*bytes);
  auto stock = parse_stock(file.bytes_, path);
  if (!stock) return tl::unexpected(stock.error());
  file.stock_ = std::move(*stock);
  const auto ledger_text = ledger_bytes(path);
  if (!ledger_text) return tl::unexpected(ledger_text.error());
  auto ledger = parse_ledger(*ledger_text, ledger_path(path));
  if (!ledger) return tl::unexpected(ledger.error());
  file.ledger_ = std::move(*ledger);
  file.ledger_size_ = ledger_text->size();
  mark_gone(file.stock_, file.ledger_);
  return file;
}

Result<void> StockFile::commit(const Stock& next, const Deed& deed,
                               const std::function<void(CommitMoment)>& moment) {
  const auto at = [&moment](CommitMoment now) {
    if (moment) moment(now);
  };
  const auto present = read_file(path_, largest_job_file);
  if (!present) return failure("file-read", present.error());
  if (*present != bytes_) {
    return failure("stock-changed", path_ + " was changed while the plan was made; plan again");
  }
  const std::string after = edited_stock(bytes_, stock_, next);
  auto again = parse_stock(after, path_);
  if (!again) return tl::unexpected(again.error());
  if (!changes_between(again->pieces, next.pieces).empty()) {
    throw std::logic_error("the stock file would not hold what was done");
  }
  Ledger ledger = ledger_;
  const std::string lines = add_lines(ledger, next, deed);
  at(CommitMoment::begin);
  const auto noted =
      replace_file(journal_path(path_), format_journal({bytes_, after, ledger_size_, lines}));
  if (!noted) return failure("file-write", noted.error());
  at(CommitMoment::journal_written);
  const auto added = append_to_file(ledger_path(path_), lines);
  if (added) at(CommitMoment::ledger_written);
  const auto written = added ? replace_file(path_, after) : added;
  if (!written) {
    // A journal that stays is carried out by the next run.
    if (shorten_ledger(path_, ledger_size_)) ::unlink(journal_path(path_).c_str());
    return failure("file-write", written.error());
  }
  at(CommitMoment::stock_replaced);
  ::unlink(journal_path(path_).c_str());
  at(CommitMoment::journal_removed);
  bytes_ = after;
  stock_ = std::move(*again);
  ledger_ = std::move(ledger);
  ledger_size_ += lines.size();
  mark_gone(stock_, ledger_);
  return {};
}

// The line of the deed, and before it what leads from the ledger to the stock file as it stands.
std::string StockFile::add_lines(Ledger& ledger, const Stock& next, const Deed& deed) const {
  const std::string time = deed.time.empty() ? time_now() : deed.time;
  std::string text;
  const auto add = [&](LedgerLine line) {
    line.number = static_cast<int>(ledger.lines.size()) + 1;
    line.time = time;
    text += format_line(line);
    add_line(ledger, std::move(line));
  };
  const StockHead head = head_of(stock_);
  LedgerLine found;
  found.changes = changes_between(pieces_of(ledger), stock_.pieces);
  if (ledger.lines.empty() || ledger.head != head) found.stock = head;
  found.act = ledger.lines.empty() ? Act::opened : Act::corrected;
  if (found.stock || !found.changes.empty()) add(std::move(found));
  LedgerLine done;
  done.act = deed.act;
  done.orders = deed.orders;
  done.bought = deed.bought;
  done.undoes = deed.undoes;
  done.changes = changes_between(stock_.pieces, next.pieces);
  add(std::move(done));
  return text;
}

Result<LedgerLine> StockFile::undo(const std::string& time) {
  const LedgerLine* last = last_to_undo(ledger_);
  if (last == nullptr) {
    return failure("stock-nothing-to-undo", "there is nothing to undo in the ledger of " + path_);
  }
  LedgerLine line = *last;
  const Result<Stock> before = without_act(stock_, line);
  if (!before) return tl::unexpected(before.error());
  Deed deed;
  deed.act = Act::undone;
  deed.undoes = line.number;
  deed.time = time;
  if (const auto done = commit(*before, deed); !done) return tl::unexpected(done.error());
  return line;
}

Result<Stock> look_at_stock(const std::string& path) {
  Result<Stock> stock = read_stock(path);
  if (!stock) return stock;
  const Result<Ledger> ledger = read_ledger(path);
  if (!ledger) return tl::unexpected(ledger.error());
  mark_gone(*stock, *ledger);
  return stock;
}

}  // namespace mullion
