#include "cli/page/passing_folder.h"

#include <unistd.h>

#include <filesystem>
#include <stdexcept>

namespace mullion::cli::page {

PassingFolder::PassingFolder() {
  std::string name = (std::filesystem::temp_directory_path() / "mullion-XXXXXX").string();
  if (::mkdtemp(name.data()) == nullptr) throw std::runtime_error("cannot make a folder " + name);
  path_ = name;
}

PassingFolder::~PassingFolder() {
  std::error_code ignored;
  std::filesystem::remove_all(path_, ignored);
}

}  // namespace mullion::cli::page
