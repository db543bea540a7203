#include <algorithm>
#include <utility>

#include "engine/file/input.h"
#include "engine/job/read.h"
#include "engine/shop/shop.h"
#include "engine/xml/document.h"
#include "engine/xml/element.h"

namespace mullion {
namespace {

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> out;
  std::size_t at = 0;
  while (at < text.size()) {
    const std::size_t end = std::min(text.find('\n', at), text.size());
    if (std::string line = tidy(text.substr(at, end - at)); !line.empty()) out.push_back(line);
    at = end + 1;
  }
  return out;
}

void read_root(Element& root, Shop& shop) {
  root.required("version", "version=\"1\"");
  root.integer("version", 1, 1, 1);
  const auto name = root.required("name", "the shop's name");
  if (name && name->empty()) root.unexpected("name", "job-out-of-range", "the shop's name");
  shop.name = root.line("name");
  shop.phone = root.line("phone");
  shop.email = root.email("email");
  shop.logo = root.path("logo");
  shop.logo_place = root.place();
  bool addressed = false;
  for (const pugi::xml_node& node : root.children({"address"})) {
    Element address(root.reading(), node);
    if (std::exchange(addressed, true)) {
      address.problem("job-repeated-element", "found <address> twice in <shop>; expected it once");
    }
    shop.address = lines_of(address.content(longest_note));
  }
}

}  // namespace

Result<Shop> parse_shop(std::string_view xml, const std::string& file) {
  Reading reading(xml, file, "shop");
  pugi::xml_document document;
  Shop shop;
  shop.file = file;
  if (const pugi::xml_node node = load_document(reading, document)) {
    Element root(reading, node);
    read_root(root, shop);
  }
  if (!reading.good()) return tl::unexpected(reading.problems());
  return shop;
}

Result<Shop> read_shop(const std::string& path) {
  const auto bytes = read_input(path, largest_job_file);
  if (!bytes) return tl::unexpected(bytes.error());
  return parse_shop(*bytes, path);
}

}  // namespace mullion
