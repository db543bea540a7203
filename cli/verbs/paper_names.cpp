#include "cli/verbs/paper_names.h"

#include "render/paper/sheet_size.h"

namespace mullion::cli {

std::vector<std::string> paper_names() {
  std::vector<std::string> out{"board"};
  for (const paper::SheetSize& size : paper::sheet_sizes()) out.push_back(size.name);
  return out;
}

}  // namespace mullion::cli
