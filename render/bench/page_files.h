#pragma once

// page.css and page.js, compiled into the library (embed.cmake).

#include <string_view>
#include <vector>

namespace mullion::bench {

struct PageFile {
  std::string_view name, text;
};
const std::vector<PageFile>& page_files();

}  // namespace mullion::bench
