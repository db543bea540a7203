#include "cli/page/files.h"

#include <dirent.h>
#include <fcntl.h>
#include <linux/openat2.h>
#include <sys/stat.h>
#include <sys/syscall.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <charconv>
#include <cstring>
#include <filesystem>
#include <memory>
#include <stdexcept>

#include "engine/file/file.h"

namespace mullion::cli::page {
namespace {

class Descriptor {
 public:
  explicit Descriptor(int number) : number_(number) {}
  ~Descriptor() {
    if (number_ >= 0) ::close(number_);
  }
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;

  explicit operator bool() const { return number_ >= 0; }
  int operator*() const { return number_; }
  int release() { return std::exchange(number_, -1); }

 private:
  int number_;
};

Stamp stamp_of(const struct stat& status) {
  return {status.st_dev, status.st_ino, status.st_size, status.st_mtim.tv_sec,
          status.st_mtim.tv_nsec};
}

// What RESOLVE_BENEATH gives where a name leads out, and O_NOFOLLOW or a loop of links.
bool leads_out(int wrong) {
  return wrong == EXDEV || wrong == ELOOP;
}

std::string parent_of(std::string_view name) {
  const std::size_t slash = name.rfind('/');
  return slash == name.npos ? "." : std::string(name.substr(0, slash));
}

bool write_all(int to, std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t wrote = ::write(to, bytes.data(), bytes.size());
    if (wrote < 0 && errno == EINTR) continue;
    if (wrote <= 0) return false;
    bytes.remove_prefix(static_cast<std::size_t>(wrote));
  }
  return ::fsync(to) == 0;
}

using Folder = std::unique_ptr<DIR, int (*)(DIR*)>;

void list_into(std::vector<Files::Listed>& out, int parent, const char* at,
               const std::string& before, std::string_view ending, int deepest, std::size_t most) {
  Descriptor opened(::openat(parent, at, O_RDONLY | O_DIRECTORY | O_NOFOLLOW | O_CLOEXEC));
  if (!opened) return;
  const Folder folder(::fdopendir(opened.release()), ::closedir);
  if (!folder) return;
  const int here = ::dirfd(folder.get());
  while (const dirent* entry = ::readdir(folder.get())) {
    const std::string name = entry->d_name;
    if (name.starts_with('.') || out.size() >= most) continue;
    struct stat status {};
    if (::fstatat(here, entry->d_name, &status, AT_SYMLINK_NOFOLLOW) != 0) continue;
    if (S_ISDIR(status.st_mode) && deepest > 0) {
      list_into(out, here, entry->d_name, before + name + "/", ending, deepest - 1, most);
    } else if (S_ISREG(status.st_mode) && name.ends_with(ending)) {
      out.push_back({before + name, stamp_of(status)});
    }
  }
}

}  // namespace

std::string text_of(const Stamp& stamp) {
  const std::uint64_t mixed = static_cast<std::uint64_t>(stamp.seconds) * 1'000'000'007 ^
                              static_cast<std::uint64_t>(stamp.nanoseconds) ^ (stamp.inode << 20) ^
                              static_cast<std::uint64_t>(stamp.size);
  char text[16];
  const auto end = std::to_chars(text, text + sizeof text, mixed, 16);
  return {text, end.ptr};
}

Stamp stamp_of_path(const std::string& path) {
  struct stat status {};
  return !path.empty() && ::stat(path.c_str(), &status) == 0 ? stamp_of(status) : Stamp{};
}

Files::Files(const std::string& folder) : folder_(folder) {
  root_ = ::open(folder.c_str(), O_PATH | O_DIRECTORY | O_CLOEXEC);
  if (root_ < 0) throw std::runtime_error("cannot open the folder " + folder);
}

Files::~Files() {
  ::close(root_);
}

std::string Files::path_of(std::string_view name) const {
  return (std::filesystem::path(folder_) / name).string();
}

int Files::open_below(std::string_view name, int flags, unsigned mode) const {
  open_how how{};
  how.flags = static_cast<unsigned>(flags) | O_CLOEXEC;
  how.mode = mode;
  how.resolve = RESOLVE_BENEATH | RESOLVE_NO_MAGICLINKS;
  const std::string text(name);
  return static_cast<int>(::syscall(SYS_openat2, root_, text.c_str(), &how, sizeof how));
}

bool Files::leads_inside(std::string_view name) const {
  const Descriptor file(open_below(name, O_PATH));
  return static_cast<bool>(file);
}

bool Files::is_outside(std::string_view name) const {
  const Descriptor file(open_below(name, O_PATH));
  return !file && leads_out(errno);
}

Files::Expected<std::string> Files::read(std::string_view name, std::size_t limit) const {
  const Descriptor file(open_below(name, O_RDONLY | O_NONBLOCK | O_NOCTTY));
  if (!file) {
    return tl::unexpected(leads_out(errno)                      ? Fault::outside
                          : errno == ENOENT || errno == ENOTDIR ? Fault::missing
                                                                : Fault::unreadable);
  }
  struct stat status {};
  if (::fstat(*file, &status) != 0 || !S_ISREG(status.st_mode)) {
    return tl::unexpected(Fault::unreadable);
  }
  std::string out;
  out.resize(std::min(static_cast<std::size_t>(status.st_size), limit) + 1);
  std::size_t size = 0;
  for (;;) {
    if (size == out.size()) out.resize(std::min(2 * size, limit + 1));
    const ssize_t got = ::read(*file, out.data() + size, out.size() - size);
    if (got < 0 && errno == EINTR) continue;
    if (got < 0) return tl::unexpected(Fault::unreadable);
    size += static_cast<std::size_t>(got);
    if (size > limit) return tl::unexpected(Fault::too_large);
    if (got == 0) break;
  }
  out.resize(size);
  return out;
}

Stamp Files::stamp(std::string_view name) const {
  const Descriptor file(open_below(name, O_PATH));
  struct stat status {};
  return file && ::fstat(*file, &status) == 0 ? stamp_of(status) : Stamp{};
}

tl::expected<void, std::string> Files::replace(std::string_view name,
                                               std::string_view bytes) const {
  if (!leads_inside(parent_of(name))) {
    return tl::unexpected(std::string(name) + ": there is no such folder here");
  }
  return replace_file(path_of(name), bytes);
}

tl::expected<void, std::string> Files::create(std::string_view name, std::string_view bytes) const {
  const std::string text(name), parent = parent_of(name);
  if (!leads_inside(parent)) {
    const Descriptor above(open_below(parent_of(parent), O_PATH | O_DIRECTORY));
    const std::string last = std::filesystem::path(parent).filename().string();
    if (!above || ::mkdirat(*above, last.c_str(), 0777) != 0) {
      return tl::unexpected("cannot make the folder " + parent);
    }
  }
  const Descriptor folder(open_below(parent, O_PATH | O_DIRECTORY));
  if (!folder) return tl::unexpected(text + ": there is no such folder here");
  const std::string last = std::filesystem::path(text).filename().string();
  const Descriptor file(
      ::openat(*folder, last.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW | O_CLOEXEC, 0666));
  if (!file) {
    return tl::unexpected(text + (errno == EEXIST ? ": there is such a file already"
                                                  : std::string(": ") + std::strerror(errno)));
  }
  if (write_all(*file, bytes)) return {};
  const std::string why = std::strerror(errno);
  ::unlinkat(*folder, last.c_str(), 0);
  return tl::unexpected(text + ": cannot be written: " + why);
}

std::vector<Files::Listed> Files::list(std::string_view ending, int deepest,
                                       std::size_t most) const {
  std::vector<Listed> out;
  list_into(out, root_, ".", "", ending, deepest, most);
  std::sort(out.begin(), out.end(),
            [](const Listed& a, const Listed& b) { return a.name < b.name; });
  return out;
}

}  // namespace mullion::cli::page
