#include "engine/file/file.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <vector>

namespace mullion {
namespace {

class Descriptor {
 public:
  explicit Descriptor(int fd) : fd_(fd) {}
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  ~Descriptor() {
    if (fd_ >= 0) ::close(fd_);
  }
  int get() const { return fd_; }
  bool close() {
    const int fd = fd_;
    fd_ = -1;
    return ::close(fd) == 0;
  }

 private:
  int fd_;
};

std::string reason(const char* verb, const std::string& path) {
  return std::string("cannot ") + verb + " " + path + ": " + std::strerror(errno);
}

bool write_all(int fd, std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t n = ::write(fd, bytes.data(), bytes.size());
    if (n < 0 && errno == EINTR) continue;
    if (n < 0) return false;
    bytes.remove_prefix(static_cast<std::size_t>(n));
  }
  return true;
}

mode_t mode_for(const std::string& path) {
  struct stat existing {};
  if (::stat(path.c_str(), &existing) == 0) return existing.st_mode & 0777;
  const mode_t mask = ::umask(0);
  ::umask(mask);
  return 0666 & ~mask;
}

void sync_folder_of(const std::string& path) {
  const std::size_t slash = path.rfind('/');
  const std::string folder = slash == std::string::npos ? "." : path.substr(0, slash + 1);
  const Descriptor fd(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  if (fd.get() >= 0) ::fsync(fd.get());
}

}  // namespace

tl::expected<std::string, std::string> read_file(const std::string& path, std::size_t limit) {
  const Descriptor fd(::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK));
  if (fd.get() < 0) return tl::unexpected(reason("read", path));
  struct stat about {};
  if (::fstat(fd.get(), &about) != 0) return tl::unexpected(reason("read", path));
  if (!S_ISREG(about.st_mode)) return tl::unexpected("cannot read " + path + ": not a file");

  std::string bytes;
  bytes.reserve(std::min(static_cast<std::size_t>(about.st_size), limit));
  std::vector<char> block(1 << 16);
  for (;;) {
    const ssize_t n = ::read(fd.get(), block.data(), block.size());
    if (n < 0 && errno == EINTR) continue;
    if (n < 0) return tl::unexpected(reason("read", path));
    if (n == 0) return bytes;
    if (static_cast<std::size_t>(n) > limit - bytes.size()) {
      return tl::unexpected("cannot read " + path + ": larger than the limit of " +
                            std::to_string(limit) + " bytes");
    }
    bytes.append(block.data(), static_cast<std::size_t>(n));
  }
}

tl::expected<void, std::string> replace_file(const std::string& path, std::string_view bytes) {
  std::string beside = path + ".XXXXXX";
  Descriptor fd(::mkostemp(beside.data(), O_CLOEXEC));
  if (fd.get() < 0) return tl::unexpected(reason("write", path));
  const bool written = write_all(fd.get(), bytes) && ::fchmod(fd.get(), mode_for(path)) == 0 &&
                       ::fsync(fd.get()) == 0 && fd.close() &&
                       ::rename(beside.c_str(), path.c_str()) == 0;
  if (!written) {
    const std::string why = reason("write", path);
    ::unlink(beside.c_str());
    return tl::unexpected(why);
  }
  sync_folder_of(path);
  return {};
}

tl::expected<void, std::string> append_to_file(const std::string& path, std::string_view bytes) {
  Descriptor fd(::open(path.c_str(), O_WRONLY | O_APPEND | O_CREAT | O_CLOEXEC | O_NOFOLLOW, 0666));
  struct stat about {};
  if (fd.get() < 0 || ::fstat(fd.get(), &about) != 0) {
    return tl::unexpected(reason("write", path));
  }
  if (!S_ISREG(about.st_mode)) return tl::unexpected("cannot write " + path + ": not a file");
  if (write_all(fd.get(), bytes) && ::fsync(fd.get()) == 0) {
    if (about.st_size == 0) sync_folder_of(path);
    return {};
  }
  std::string why = reason("write", path);
  if (::ftruncate(fd.get(), about.st_size) != 0) why += "; what it held may be followed by a part";
  return tl::unexpected(why);
}

}  // namespace mullion
