#include "engine/job/reference/schema.h"

#include <algorithm>
#include <pugixml.hpp>
#include <sstream>
#include <stdexcept>

namespace mullion::reference {
namespace {

using Node = pugi::xml_node;

std::string one_line(const char* text) {
  std::istringstream words(text);
  std::string out, word;
  while (words >> word) out += (out.empty() ? "" : " ") + word;
  return out;
}

std::string annotation(Node node) {
  return one_line(node.child("xs:annotation").child_value("xs:documentation"));
}

// Takes the sentence that begins with "Left out:" out of the text.
std::string take_left_out(std::string& text) {
  static constexpr std::string_view start = "Left out: ";
  const std::size_t at = text.find(start);
  if (at == std::string::npos) return {};
  const std::size_t end = std::min(text.find(". ", at), text.size() - 1);
  const std::string out = text.substr(at + start.size(), end - at - start.size());
  std::string rest = text.substr(std::min(end + 2, text.size()));
  text.erase(at);
  text += rest;
  if (rest.empty() && !text.empty()) text.pop_back();
  return out;
}

class Reader {
 public:
  explicit Reader(Node schema) : schema_(schema) {}

  Schema read() {
    out_.text = annotation(schema_);
    add(schema_.child("xs:element"));
    for (const Node type : schema_.children("xs:simpleType")) out_.types.push_back(value(type));
    return std::move(out_);
  }

 private:
  void add(Node declared) {
    const std::string name = declared.attribute("name").value();
    const auto same = [&](const Element& element) { return element.name == name; };
    if (std::any_of(out_.elements.begin(), out_.elements.end(), same)) return;
    Element element{name, annotation(declared), false, declared.attribute("type").value(), {}, {}};
    const Node type = named("xs:complexType", element.type);
    element.holds_text = !type;
    add_attributes(type, element.attributes);
    std::vector<Node> below;
    collect(type, {{}, {}, true}, below, element.children);
    out_.elements.push_back(std::move(element));
    for (const Node child : below) add(child);
  }

  // Its own, and those that it shares with others.
  void add_attributes(Node type, std::vector<Attribute>& out) const {
    for (const Node child : type.children()) {
      if (child.name() == std::string_view("xs:attribute")) out.push_back(read_attribute(child));
      if (child.name() != std::string_view("xs:attributeGroup")) continue;
      add_attributes(named("xs:attributeGroup", child.attribute("ref").value()), out);
    }
  }

  // The elements that may stand in `node`, through groups, choices and sequences.
  void collect(Node node, const Child& place, std::vector<Node>& declared,
               std::vector<Child>& children) const {
    for (const Node child : node.children()) {
      const std::string kind = child.name();
      Child here = place;
      here.needed = place.needed && child.attribute("minOccurs").as_int(1) > 0;
      here.repeated |= child.attribute("maxOccurs").as_string("1") != std::string("1");
      if (kind == "xs:element") {
        const std::string name = child.attribute("name").value();
        const auto same = [&](const Child& known) { return known.name == name; };
        if (std::any_of(children.begin(), children.end(), same)) continue;
        declared.push_back(child);
        here.name = name;
        here.text = annotation(child);
        children.push_back(here);
      } else if (kind == "xs:group") {
        collect(named("xs:group", child.attribute("ref").value()), here, declared, children);
      } else if (kind == "xs:choice") {
        here.one_of = !here.repeated;
        here.needed = false;
        collect(child, here, declared, children);
      } else if (kind == "xs:all" || kind == "xs:sequence") {
        collect(child, here, declared, children);
      }
    }
  }

  static Attribute read_attribute(Node node) {
    Attribute out{node.attribute("name").value(),
                  node.attribute("type").value(),
                  node.attribute("use").as_string() == std::string("required"),
                  annotation(node),
                  {}};
    out.left_out = take_left_out(out.text);
    return out;
  }

  static ValueType value(Node node) {
    ValueType out{node.attribute("name").value(), annotation(node), {}, {}, 0};
    const Node restriction = node.child("xs:restriction");
    for (const Node word : restriction.children("xs:enumeration")) {
      out.words.push_back(word.attribute("value").value());
    }
    out.longest = restriction.child("xs:maxLength").attribute("value").as_int();
    std::istringstream members(node.child("xs:union").attribute("memberTypes").value());
    for (std::string member; members >> member;) out.members.push_back(member);
    return out;
  }

  Node named(const char* kind, const std::string& name) const {
    return schema_.find_child_by_attribute(kind, "name", name.c_str());
  }

  Node schema_;
  Schema out_;
};

}  // namespace

const ValueType* Schema::type(std::string_view name) const {
  const auto found = std::find_if(types.begin(), types.end(),
                                  [&](const ValueType& type) { return type.name == name; });
  return found == types.end() ? nullptr : &*found;
}

Schema read_schema(std::string_view xsd) {
  pugi::xml_document document;
  const pugi::xml_parse_result parsed = document.load_buffer(xsd.data(), xsd.size());
  if (!parsed || !document.child("xs:schema")) throw std::runtime_error("job.xsd is no schema");
  return Reader(document.child("xs:schema")).read();
}

}  // namespace mullion::reference
