#include "engine/edit/edit_json.h"

#include <algorithm>
#include <array>
#include <nlohmann/json.hpp>

#include "engine/edit/names.h"
#include "engine/xml/reading.h"

namespace mullion::edit {
namespace {

using Json = nlohmann::ordered_json;
using Where = Position::Where;

struct WhereWord {
  Where where;
  std::string_view word;
};
constexpr std::array<WhereWord, 8> where_words{{{Where::before, "before"},
                                                {Where::after, "after"},
                                                {Where::left, "left"},
                                                {Where::right, "right"},
                                                {Where::above, "above"},
                                                {Where::below, "below"},
                                                {Where::first_in, "first_in"},
                                                {Where::last_in, "last_in"}}};

// Thrown within this file alone; the sentence's end.
struct Wrong {
  std::string what;
};

class EditReader {
 public:
  Edit read(const Json& json, std::size_t depth) {
    if (depth > deepest_edits) throw Wrong{"edits within edits too deep"};
    if (++count_ > most_edits) {
      throw Wrong{"more than " + std::to_string(most_edits) + " edits in one"};
    }
    if (!json.is_object()) throw Wrong{"an edit that is no object"};
    const std::string kind = text(json, "kind");
    if (kind == "state") return read_state(json);
    if (kind == "add") return read_add(json);
    if (kind == "remove") {
      allow(json, {"kind", "part"});
      return Remove{text(json, "part")};
    }
    if (kind == "copy") {
      allow(json, {"kind", "part", "id"});
      return Copy{text(json, "part"), json.contains("id") ? text(json, "id") : std::string()};
    }
    if (kind == "move") {
      allow(json, {"kind", "part", "to"});
      return Move{text(json, "part"), position(json, "to")};
    }
    if (kind == "group") return read_group(json);
    if (kind == "turn") {
      allow(json, {"kind", "group"});
      return TurnGroup{text(json, "group")};
    }
    if (kind == "dissolve") {
      allow(json, {"kind", "group"});
      return Dissolve{text(json, "group")};
    }
    if (kind == "arrange") {
      allow(json, {"kind", "text"});
      return Arrange{text(json, "text")};
    }
    if (kind == "change") return read_change(json);
    if (kind == "several") {
      allow(json, {"kind", "edits"});
      Several several;
      for (const Json& one : list(json, "edits")) several.edits.push_back(read(one, depth + 1));
      return several;
    }
    static const std::vector<std::string_view> kinds{"state",   "add",    "remove", "copy",
                                                     "move",    "group",  "turn",   "dissolve",
                                                     "arrange", "change", "several"};
    throw Wrong{"kind " + mullion::quoted(kind) + "; expected " + alternatives(kinds)};
  }

 private:
  static const Json& member(const Json& json, const char* name) {
    const auto found = json.find(name);
    if (found == json.end()) throw Wrong{"no \"" + std::string(name) + "\" in an edit"};
    return *found;
  }

  static std::string text(const Json& json, const char* name) {
    const Json& value = member(json, name);
    if (!value.is_string()) throw Wrong{"a \"" + std::string(name) + "\" that is no text"};
    return value.get<std::string>();
  }

  static const Json& list(const Json& json, const char* name) {
    const Json& value = member(json, name);
    if (!value.is_array()) throw Wrong{"\"" + std::string(name) + "\" that is no list"};
    return value;
  }

  static void allow(const Json& json, const std::vector<std::string_view>& names) {
    for (const auto& [name, value] : json.items()) {
      if (std::find(names.begin(), names.end(), name) != names.end()) continue;
      const std::string_view near = near_name(name, names);
      throw Wrong{"unknown " + mullion::quoted(name) + " in an edit" +
                  (near.empty() ? "; expected " + alternatives(names)
                                : "; did you mean " + mullion::quoted(near) + "?")};
    }
  }

  static Attributes attributes(const Json& json, const char* name) {
    Attributes out;
    if (!json.contains(name)) return out;
    const Json& object = member(json, name);
    if (!object.is_object()) throw Wrong{"\"" + std::string(name) + "\" that is no object"};
    for (const auto& [attribute, value] : object.items()) {
      if (!value.is_string())
        throw Wrong{"a value of " + mullion::quoted(attribute) + " that is no text"};
      out.push_back({attribute, value.get<std::string>()});
    }
    return out;
  }

  static Position position(const Json& json, const char* name) {
    const Json& at = member(json, name);
    if (!at.is_object()) throw Wrong{"\"" + std::string(name) + "\" that is no object"};
    allow(at, {"where", "part"});
    const std::string word = text(at, "where");
    std::vector<std::string_view> words;
    for (const WhereWord& known : where_words) {
      if (known.word == word) return {known.where, text(at, "part")};
      words.push_back(known.word);
    }
    throw Wrong{"where " + mullion::quoted(word) + "; expected " + alternatives(words)};
  }

  static State read_state(const Json& json) {
    allow(json, {"kind", "name", "value"});
    State state{text(json, "name"), std::nullopt};
    if (!member(json, "value").is_null()) state.value = text(json, "value");
    return state;
  }

  static Add read_add(const Json& json) {
    allow(json, {"kind", "element", "attributes", "opening", "at"});
    Add add{text(json, "element"), attributes(json, "attributes"), attributes(json, "opening"), {}};
    if (json.contains("at")) add.at = position(json, "at");
    return add;
  }

  static MakeGroup read_group(const Json& json) {
    allow(json, {"kind", "along", "parts", "attributes"});
    const std::string along = text(json, "along");
    if (along != "row" && along != "column") {
      throw Wrong{"along " + mullion::quoted(along) + "; expected \"row\" or \"column\""};
    }
    MakeGroup group{
        along == "row" ? Along::row : Along::column, {}, attributes(json, "attributes")};
    for (const Json& part : list(json, "parts")) {
      if (!part.is_string()) throw Wrong{"a part that is no text"};
      group.parts.push_back(part.get<std::string>());
    }
    return group;
  }

  static Change read_change(const Json& json) {
    allow(json, {"kind", "changes"});
    Change change;
    for (const Json& one : list(json, "changes")) {
      if (!one.is_object()) throw Wrong{"a change that is no object"};
      allow(one, {"offset", "removed", "inserted"});
      const Json& offset = member(one, "offset");
      if (!offset.is_number_unsigned()) throw Wrong{"an offset that is no whole number"};
      change.changes.push_back(
          {offset.get<std::size_t>(), text(one, "removed"), text(one, "inserted")});
    }
    return change;
  }

  std::size_t count_ = 0;
};

Json json_of(const Attributes& attributes) {
  Json out = Json::object();
  for (const auto& [name, value] : attributes) out[name] = value;
  return out;
}

Json json_of(const Position& position) {
  for (const WhereWord& known : where_words) {
    if (known.where == position.where) return {{"where", known.word}, {"part", position.part}};
  }
  return {};
}

struct EditWriter {
  Json operator()(const State& edit) const {
    return {
        {"kind", "state"}, {"name", edit.name}, {"value", edit.value ? Json(*edit.value) : Json()}};
  }
  Json operator()(const Add& edit) const {
    Json out{{"kind", "add"}, {"element", edit.element}};
    if (!edit.attributes.empty()) out["attributes"] = json_of(edit.attributes);
    if (!edit.opening.empty()) out["opening"] = json_of(edit.opening);
    if (edit.at) out["at"] = json_of(*edit.at);
    return out;
  }
  Json operator()(const Remove& edit) const { return {{"kind", "remove"}, {"part", edit.part}}; }
  Json operator()(const Copy& edit) const {
    Json out{{"kind", "copy"}, {"part", edit.part}};
    if (!edit.id.empty()) out["id"] = edit.id;
    return out;
  }
  Json operator()(const Move& edit) const {
    return {{"kind", "move"}, {"part", edit.part}, {"to", json_of(edit.to)}};
  }
  Json operator()(const MakeGroup& edit) const {
    Json out{{"kind", "group"},
             {"along", edit.along == Along::row ? "row" : "column"},
             {"parts", edit.parts}};
    if (!edit.attributes.empty()) out["attributes"] = json_of(edit.attributes);
    return out;
  }
  Json operator()(const TurnGroup& edit) const { return {{"kind", "turn"}, {"group", edit.group}}; }
  Json operator()(const Dissolve& edit) const {
    return {{"kind", "dissolve"}, {"group", edit.group}};
  }
  Json operator()(const Arrange& edit) const { return {{"kind", "arrange"}, {"text", edit.text}}; }
  Json operator()(const Change& edit) const {
    Json changes = Json::array();
    for (const TextChange& one : edit.changes) {
      changes.push_back(
          {{"offset", one.offset}, {"removed", one.removed}, {"inserted", one.inserted}});
    }
    return {{"kind", "change"}, {"changes", changes}};
  }
  Json operator()(const Several& edit) const {
    Json edits = Json::array();
    for (const Edit& one : edit.edits) edits.push_back(std::visit(*this, one));
    return {{"kind", "several"}, {"edits", edits}};
  }
};

}  // namespace

Result<Edit> edit_from_json(std::string_view text) {
  const Json json = Json::parse(text, nullptr, false);
  if (json.is_discarded()) return tl::unexpected(refusal("edit-json", "found no JSON"));
  try {
    return EditReader().read(json, 1);
  } catch (const Wrong& wrong) {
    return tl::unexpected(refusal("edit-json", "found " + wrong.what));
  }
}

std::string edit_to_json(const Edit& edit) {
  return std::visit(EditWriter(), edit).dump(-1, ' ', false, Json::error_handler_t::replace);
}

}  // namespace mullion::edit
