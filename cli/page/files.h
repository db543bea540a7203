#pragma once

// The files below the opened folder, and no others: names that lead out of it, by ".." or by a
// symbolic link, are refused (openat2 with RESOLVE_BENEATH, Linux 5.6).

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <vector>

namespace mullion::cli::page {

// What tells that a file has changed. Zeros where it is not there.
struct Stamp {
  std::uint64_t device = 0, inode = 0;
  std::int64_t size = 0, seconds = 0, nanoseconds = 0;

  friend bool operator==(const Stamp&, const Stamp&) = default;
};

std::string text_of(const Stamp& stamp);       // short; for addresses
Stamp stamp_of_path(const std::string& path);  // of a file anywhere

class Files {
 public:
  enum class Fault { missing, outside, too_large, unreadable, exists };
  template <class T>
  using Expected = tl::expected<T, Fault>;

  // Throws std::runtime_error where the folder cannot be opened.
  explicit Files(const std::string& folder);
  ~Files();
  Files(const Files&) = delete;
  Files& operator=(const Files&) = delete;

  const std::string& folder() const { return folder_; }
  // For what opens files by itself; look first whether it `leads_inside`.
  std::string path_of(std::string_view name) const;
  bool leads_inside(std::string_view name) const;  // and is there
  bool is_outside(std::string_view name) const;    // whether it is there or not

  Expected<std::string> read(std::string_view name, std::size_t limit) const;
  Stamp stamp(std::string_view name) const;

  // Replaces a file; whatever fails, what stood there stays. `text` of the error: one sentence.
  tl::expected<void, std::string> replace(std::string_view name, std::string_view bytes) const;
  // A new file, in a folder that is made where there is none; never over another one.
  tl::expected<void, std::string> create(std::string_view name, std::string_view bytes) const;

  // Regular files below the folder by name, sorted; neither hidden ones nor those of links.
  struct Listed {
    std::string name;
    Stamp stamp;
  };
  std::vector<Listed> list(std::string_view ending, int deepest, std::size_t most) const;

 private:
  int open_below(std::string_view name, int flags, unsigned mode = 0) const;

  std::string folder_;
  int root_ = -1;
};

}  // namespace mullion::cli::page
