#include "engine/edit/finish.h"

#include <pugixml.hpp>
#include <sstream>

#include "engine/job/read.h"
#include "engine/xml/document.h"
#include "engine/xml/element.h"

namespace mullion::edit {
namespace {

constexpr const char* layer_words[] = {
    "name",        "board",      "colour",       "core",          "ply",    "thickness", "reveal",
    "reveal-left", "reveal-top", "reveal-right", "reveal-bottom", "spacer", "grain"};
constexpr const char* frame_words[] = {"moulding", "colour", "face", "lip"};

template <class Words>
Attributes read_words(Element& element, const Words& words) {
  Attributes out;
  for (const char* word : words) {
    if (const auto value = element.value(word)) out.emplace_back(word, *value);
  }
  element.children({});
  return out;
}

Finish read_finish(Element& element) {
  Finish out;
  element.required("name", "the finish's name");
  out.name = element.line("name");
  for (const pugi::xml_node& node : element.children({"layer", "frame"})) {
    Element child(element.reading(), node);
    if (child.name() == "frame") {
      out.frame = read_words(child, frame_words);
    } else if (out.layers.size() < most_layers) {
      out.layers.push_back(read_words(child, layer_words));
    }
  }
  if (out.layers.empty()) {
    element.problem("job-missing-element", "found no <layer> in <finish>; expected one or more");
  }
  return out;
}

void append(pugi::xml_node parent, const char* name, const Attributes& attributes) {
  pugi::xml_node node = parent.append_child(name);
  for (const auto& [word, value] : attributes) {
    node.append_attribute(word.c_str()) = value.c_str();
  }
}

const std::string* find_in(const Attributes& attributes, std::string_view word) {
  for (const auto& [name, value] : attributes) {
    if (name == word) return &value;
  }
  return nullptr;
}

constexpr const char* plain_job =
    "<job version=\"1\" unit=\"in\">\n<pictures><picture id=\"p\" width=\"8\" height=\"10\"/>"
    "</pictures>\n<layers>\n<layer/>\n</layers>\n<frame rabbet-width=\"14\" "
    "rabbet-height=\"16\"/>\n"
    "<arrange><opening picture=\"p\"/></arrange>\n</job>\n";

}  // namespace

Result<std::vector<Finish>> parse_finishes(std::string_view xml, const std::string& file) {
  Reading reading(xml, file, "finishes");
  pugi::xml_document document;
  std::vector<Finish> out;
  if (const pugi::xml_node node = load_document(reading, document)) {
    Element root(reading, node);
    root.required("version", "version=\"1\"");
    root.integer("version", 1, 1, 1);
    for (const pugi::xml_node& child : root.children({"finish"})) {
      Element element(reading, child);
      out.push_back(read_finish(element));
    }
  }
  if (!reading.good()) return tl::unexpected(reading.problems());
  return out;
}

std::string write_finishes(const std::vector<Finish>& finishes) {
  pugi::xml_document document;
  pugi::xml_node root = document.append_child("finishes");
  root.append_attribute("version") = "1";
  for (const Finish& finish : finishes) {
    pugi::xml_node node = root.append_child("finish");
    node.append_attribute("name") = finish.name.c_str();
    for (const Attributes& layer : finish.layers) append(node, "layer", layer);
    if (!finish.frame.empty()) append(node, "frame", finish.frame);
  }
  std::ostringstream out;
  document.save(out, "  ", pugi::format_default, pugi::encoding_utf8);
  return out.str();
}

Edit taking(const Finish& finish, const Job& job) {
  Several out;
  for (std::size_t i = 0; i < finish.layers.size(); ++i) {
    const Attributes& layer = finish.layers[i];
    if (i >= job.layers.size()) {
      out.edits.push_back(Add{"layer", layer, {}, std::nullopt});
      continue;
    }
    const std::string name = "layer." + std::to_string(i + 1) + ".";
    for (const char* word : layer_words) {
      const std::string* value = find_in(layer, word);
      out.edits.push_back(
          State{name + word, value == nullptr ? std::nullopt : std::optional<std::string>(*value)});
    }
  }
  for (std::size_t i = job.layers.size(); i > finish.layers.size(); --i) {
    out.edits.push_back(Remove{"layer." + std::to_string(i)});
  }
  if (!job.frame) return out;
  for (const auto& [word, value] : finish.frame) out.edits.push_back(State{"frame." + word, value});
  return out;
}

Problems faults_of(const Finish& finish) {
  const auto job = parse_job(plain_job, "");
  if (!job) return job.error();
  const auto edited = edit::apply(plain_job, taking(finish, *job));
  return edited ? Problems{} : edited.error();
}

}  // namespace mullion::edit
