#include "engine/explain/explain.h"

#include <algorithm>
#include <array>
#include <string>

#include "engine/explain/families.h"
#include "engine/mat/checks.h"

namespace mullion {
namespace {

// Outermost elements of the files that the job reader's code reads.
constexpr std::array<std::string_view, 5> other_roots{"cutter", "prices", "printer", "shop",
                                                      "stock"};

const Explanation* find(std::string_view code) {
  const auto& all = explanations();
  const auto found = std::find_if(all.begin(), all.end(),
                                  [&](const Explanation& entry) { return entry.code == code; });
  return found == all.end() ? nullptr : &*found;
}

}  // namespace

const std::vector<Explanation>& explanations() {
  static const std::vector<Explanation> all = [] {
    std::vector<Explanation> out = explain::file_codes();
    for (const auto& family :
         {explain::job_codes(), explain::edit_codes(), explain::picture_codes(),
          explain::mat_codes(), check_table(), explain::suggest_codes(), explain::cutting_codes(),
          explain::sheet_codes(), explain::output_codes(), explain::page_codes()}) {
      out.insert(out.end(), family.begin(), family.end());
    }
    return out;
  }();
  return all;
}

const Explanation* explanation_of(std::string_view code) {
  if (const Explanation* own = find(code)) return own;
  for (const std::string_view root : other_roots) {
    if (!code.starts_with(root) || code.substr(root.size(), 1) != "-") continue;
    return find("job" + std::string(code.substr(root.size())));
  }
  return nullptr;
}

}  // namespace mullion
