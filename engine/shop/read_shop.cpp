#include <algorithm>
#include <set>
#include <utility>

#include "engine/file/input.h"
#include "engine/job/parts.h"
#include "engine/job/read.h"
#include "engine/shop/shop.h"
#include "engine/xml/root.h"

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

constexpr const char* layer_words[] = {
    "name",        "board",      "colour",       "core",          "ply",    "thickness", "reveal",
    "reveal-left", "reveal-top", "reveal-right", "reveal-bottom", "spacer", "grain"};
constexpr const char* frame_words[] = {"moulding", "colour", "face", "lip"};

template <class Names>
Finish::Words words_in(Element& element, const Names& names) {
  Finish::Words out;
  for (const char* name : names) {
    if (auto value = element.value(name)) out.emplace_back(name, std::move(*value));
  }
  return out;
}

// What a job would refuse is refused here, where it stands.
void read_frame_words(Element& frame, Finish& finish) {
  frame.children({});
  frame.line("moulding");
  Colour colour;
  frame.colour("colour", colour);
  frame.length("face", Least::above_zero);
  frame.length("lip", Least::zero);
  finish.frame = words_in(frame, frame_words);
}

void read_parts(Element& element, Finish& finish) {
  bool framed = false;
  for (const pugi::xml_node& node : element.children({"layer", "frame"})) {
    Element part(element.reading(), node);
    if (part.name() == "frame") {
      if (std::exchange(framed, true)) {
        part.problem("job-repeated-element", "found <frame> twice in <finish>; expected it once");
      }
      read_frame_words(part, finish);
      continue;
    }
    if (framed) {
      part.problem("job-unknown-element",
                   "found <layer> after <frame> in <finish>; expected the layers before it");
    }
    if (finish.layers.size() == most_layers) {
      part.problem("job-too-many",
                   "found more than " + std::to_string(most_layers) + " layers; that is the limit");
      part.ignore_attributes();
      continue;
    }
    read_layer(part, finish.layers.size() + 1);
    finish.layers.push_back(words_in(part, layer_words));
  }
  if (finish.layers.empty()) {
    element.problem("job-missing-element", "found no <layer> in <finish>; expected one or more");
  }
}

Finish read_finish(Element& element, const std::vector<Finish>& others) {
  Finish out;
  out.place = element.place();
  const auto name = element.required("name", "the finish's name");
  if (name && name->empty()) element.unexpected("name", "job-out-of-range", "the finish's name");
  out.name = element.line("name");
  out.unit = element.word<Unit>(
      "unit", {{"in", Unit::inch}, {"mm", Unit::millimetre}, {"cm", Unit::centimetre}}, Unit::inch);
  element.reading().scale.unit = out.unit;
  const bool is_known = std::any_of(others.begin(), others.end(),
                                    [&](const Finish& other) { return other.name == out.name; });
  if (is_known) element.unexpected("name", "job-repeated-id", "a name that no other finish has");
  read_parts(element, out);
  return out;
}

void read_finishes(Element& element, Shop& shop) {
  for (const pugi::xml_node& node : element.children({"finish"})) {
    Element finish(element.reading(), node);
    if (shop.finishes.size() == most_finishes) {
      finish.problem("job-too-many", "found more than " + std::to_string(most_finishes) +
                                         " finishes; that is the limit");
      finish.ignore_attributes();
      return;
    }
    shop.finishes.push_back(read_finish(finish, shop.finishes));
  }
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
  std::set<std::string_view> seen;
  for (const pugi::xml_node& node : root.children({"address", "finishes"})) {
    Element child(root.reading(), node);
    if (!seen.insert(child.name()).second) {
      const std::string tag = "<" + std::string(child.name()) + ">";
      child.problem("job-repeated-element", "found " + tag + " twice in <shop>; expected it once");
    }
    if (child.name() == "address") {
      shop.address = lines_of(child.content(longest_note));
    } else {
      read_finishes(child, shop);
    }
  }
}

}  // namespace

Result<Shop> parse_shop(std::string_view xml, const std::string& file) {
  Shop shop;
  shop.file = file;
  return parse_root(xml, file, "shop", std::move(shop), read_root);
}

Result<Shop> read_shop(const std::string& path) {
  const auto bytes = read_input(path, largest_job_file);
  if (!bytes) return tl::unexpected(bytes.error());
  return parse_shop(*bytes, path);
}

}  // namespace mullion
