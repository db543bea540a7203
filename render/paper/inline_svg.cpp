#include "render/paper/inline_svg.h"

#include <pugixml.hpp>
#include <sstream>
#include <string_view>

namespace mullion::paper {
namespace {

std::string with_prefixed_links(std::string value, const std::string& prefix) {
  for (std::size_t at = 0; (at = value.find("url(#", at)) != value.npos; at += 5) {
    value.insert(at + 5, prefix);
  }
  return value;
}

void make_inline(pugi::xml_node node, const std::string& prefix) {
  std::istringstream style(node.attribute("style").value());
  node.remove_attribute("style");
  for (pugi::xml_attribute attribute : node.attributes()) {
    std::string value = attribute.value();
    if (std::string_view(attribute.name()) == "xlink:href") attribute.set_name("href");
    if (std::string_view(attribute.name()) == "id") {
      value = prefix + value;
    } else if (value.starts_with("#") && std::string_view(attribute.name()).ends_with("href")) {
      value.insert(1, prefix);
    }
    attribute.set_value(with_prefixed_links(value, prefix).c_str());
  }
  for (std::string one; std::getline(style, one, ';');) {
    const std::size_t colon = one.find(':');
    if (colon == one.npos) continue;
    node.append_attribute(one.substr(0, colon).c_str()) =
        with_prefixed_links(one.substr(colon + 1), prefix).c_str();
  }
  for (pugi::xml_node child : node.children()) make_inline(child, prefix);
}

}  // namespace

std::string inline_elements(const std::string& svg, const std::string& prefix) {
  pugi::xml_document document;
  if (!document.load_buffer(svg.data(), svg.size())) return {};
  std::ostringstream out;
  for (pugi::xml_node child : document.document_element().children()) {
    make_inline(child, prefix);
    child.print(out, "", pugi::format_raw);
  }
  return out.str();
}

}  // namespace mullion::paper
