#pragma once

// Which of our XML files a file is.

#include <string>

namespace mullion::cli {

// "job", "stock", "shop", "prices", "cutter" or "printer", by the name of its first element; empty
// for any other file, and for one that cannot be read.
std::string kind_of_file(const std::string& path);

}  // namespace mullion::cli
