#include "shown_page.h"

#include <algorithm>
#include <pugixml.hpp>
#include <regex>
#include <sstream>
#include <stdexcept>

namespace bench_test {
namespace {

bool has_class(const pugi::xml_node& node, const std::string& name) {
  std::istringstream words(node.attribute("class").value());
  for (std::string word; words >> word;) {
    if (word == name) return true;
  }
  return false;
}

std::string first_class(const pugi::xml_node& node) {
  std::istringstream words(node.attribute("class").value());
  std::string word;
  words >> word;
  return word;
}

std::vector<double> numbers_in(const std::string& data) {
  static const std::regex number("-?[0-9]+");
  std::vector<double> out;
  for (std::sregex_iterator at(data.begin(), data.end(), number), end; at != end; ++at) {
    out.push_back(std::stod(at->str()));
  }
  return out;
}

// A picture's paths and texts; what it uses stands elsewhere in the page.
void add_elements(const pugi::xml_node& of, ShownStep& out) {
  for (const auto& element : of.children()) {
    const std::string name = element.name(), names = element.attribute("class").value();
    if (name == "use") {
      const std::string id = std::string(element.attribute("href").as_string("#")).substr(1);
      const pugi::xml_node body = of.root().child("html").child("body");
      add_elements(body.find_node([&](const pugi::xml_node& node) {
        return id == node.attribute("id").value();
      }),
                   out);
    } else if (name == "path") {
      const std::string data = element.attribute("d").value();
      out.paths.push_back({names, numbers_in(data), data});
    } else {
      out.letters.push_back({names, element.text().get(), element.attribute("x").as_double(),
                             element.attribute("y").as_double()});
    }
  }
}

ShownStep step_of(const pugi::xml_node& section) {
  ShownStep out;
  out.kind = first_class(section);
  out.group = section.attribute("data-group").as_int();
  out.pieces = section.attribute("data-pieces").as_int(1);
  out.once = !section.attribute("data-once").empty();
  out.heading = section.child("h2").child("b").text().get();
  for (const auto& span : section.child("h2").children("span")) {
    if (!has_class(span, "piece")) out.where.push_back(span.text().get());
  }
  const pugi::xml_node say = section.child("div");
  for (const auto& dial : say.child("dl").children("div")) {
    out.dials.push_back({dial.child("dt").text().get(), dial.child("dd").text().get(),
                         has_class(dial, "moves"), !has_class(dial, "unset")});
  }
  for (const auto& p : say.children("p")) {
    out.texts.push_back({first_class(p), p.text().get(), has_class(p, "strong")});
  }
  add_elements(section.child("svg"), out);
  return out;
}

template <class Value>
const Value* named(const std::vector<Value>& all, const std::string& name) {
  const auto found =
      std::find_if(all.begin(), all.end(), [&](const Value& one) { return one.name == name; });
  return found == all.end() ? nullptr : &*found;
}

}  // namespace

const ShownDial* ShownStep::dial(const std::string& name) const {
  const ShownDial* found = named(dials, name);
  return found != nullptr ? found : named(dials, name + " stays");
}

const ShownText* ShownStep::text(const std::string& name) const {
  return named(texts, name);
}

const ShownPath* ShownStep::path(const std::string& name) const {
  return named(paths, name);
}

std::vector<ShownStep> shown_steps(const std::string& html) {
  pugi::xml_document page;
  const auto parsed = page.load_buffer(html.data(), html.size());
  if (!parsed) throw std::runtime_error(parsed.description());
  std::vector<ShownStep> out;
  for (const auto& section : page.child("html").child("body").child("main").children("section")) {
    out.push_back(step_of(section));
  }
  return out;
}

}  // namespace bench_test
