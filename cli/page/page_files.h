#pragma once

// The page's own files, compiled into the program: those of cli/page/web, and Preact's modules
// below preact/. The build writes the list (CMakeLists.txt beside this header).

#include <string_view>
#include <vector>

namespace mullion::cli::page {

struct PageFile {
  std::string_view name, text;
};
const std::vector<PageFile>& page_files();

// Empty where there is no file of that name, such as "main.js".
std::string_view page_file(std::string_view name);

// By the ending of a name.
const char* type_of(std::string_view name);

}  // namespace mullion::cli::page
