#include "render/paper/svg_finish.h"

#include <algorithm>
#include <cctype>
#include <map>
#include <string_view>

namespace mullion::paper {
namespace {

// The length of a name such as "surface61" at the start of the text without its digits; zero where
// there is none.
std::size_t numbered_name(std::string_view text) {
  for (const std::string_view name : {"surface", "image"}) {
    if (text.starts_with(name) && text.size() > name.size() &&
        std::isdigit(static_cast<unsigned char>(text[name.size()])) != 0) {
      return name.size();
    }
  }
  return 0;
}

}  // namespace

std::string finish_svg(const std::string& svg) {
  std::map<std::string, std::size_t, std::less<>> numbers;
  std::string out;
  std::size_t copied = 0;
  for (std::size_t at = svg.find_first_of("\"#"); at != std::string::npos;
       at = svg.find_first_of("\"#", at + 1)) {
    const std::size_t start = at + 1;
    const std::size_t name = numbered_name(std::string_view(svg).substr(start));
    if (name == 0) continue;
    const std::size_t digits = start + name;
    const std::size_t end = std::min(svg.size(), svg.find_first_not_of("0123456789", digits));
    const auto known = numbers.emplace(svg.substr(start, end - start), numbers.size() + 1);
    out.append(svg, copied, digits - copied).append(std::to_string(known.first->second));
    copied = end;
  }
  return out.append(svg, copied);
}

}  // namespace mullion::paper
