#include "engine/sheets/inventory/stock_file.h"

#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>

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

// Carries out a commit that a crash has cut short.
Result<void> recover(const std::string& path) {
  const std::string journal_file = journal_path(path);
  if (::access(journal_file.c_str(), F_OK) != 0) return {};
  const auto text = read_file(journal_file, 2 * largest_job_file + longest_journal_head);
  if (!text) return failure("stock-journal", text.error());
  const auto journal = parse_journal(*text);
  if (!journal) {
    return failure("stock-journal", journal_file + " is damaged; compare it with " + path +
                                        " by hand, then remove it");
  }
  const auto present = read_file(path, largest_job_file);
  if (!present) return failure("file-read", present.error());
  if (*present != journal->after) {
    if (*present != journal->before) {
      return failure("stock-changed", path + " was changed after a commit that was cut short; " +
                                          journal_file +
                                          " holds what was to be written: compare both by hand, "
                                          "then remove it");
    }
    const auto written = replace_file(path, journal->after);
    if (!written) return failure("file-write", written.error());
  }
  ::unlink(journal_file.c_str());
  return {};
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
  return file;
}

Result<void> StockFile::commit(const Stock& next, const std::function<void(CommitMoment)>& moment) {
  const auto at = [&moment](CommitMoment now) {
    if (moment) moment(now);
  };
  const auto present = read_file(path_, largest_job_file);
  if (!present) return failure("file-read", present.error());
  if (*present != bytes_) {
    return failure("stock-changed", path_ + " was changed while the plan was made; plan again");
  }
  const std::string after = write_stock(next);
  at(CommitMoment::begin);
  const auto noted = replace_file(journal_path(path_), format_journal({bytes_, after}));
  if (!noted) return failure("file-write", noted.error());
  at(CommitMoment::journal_written);
  const auto written = replace_file(path_, after);
  if (!written) {
    ::unlink(journal_path(path_).c_str());
    return failure("file-write", written.error());
  }
  at(CommitMoment::stock_replaced);
  ::unlink(journal_path(path_).c_str());
  at(CommitMoment::journal_removed);
  bytes_ = after;
  stock_ = next;
  return {};
}

}  // namespace mullion
