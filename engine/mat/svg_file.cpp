#include "engine/mat/svg_file.h"

#include <algorithm>
#include <cstring>
#include <pugixml.hpp>

#include "engine/file/file.h"
#include "engine/mat/svg_transform.h"
#include "engine/xml/source_text.h"

namespace mullion {
namespace {

std::string_view local_name(const pugi::xml_node& node) {
  const std::string_view name = node.name();
  return name.substr(name.find(':') + 1);  // none: npos + 1 is the beginning
}

// Every element of that name, in the file's order, without recursion.
std::vector<pugi::xml_node> all_of(std::string_view name, const pugi::xml_document& document) {
  std::vector<pugi::xml_node> out;
  pugi::xml_node node = document.first_child();
  while (node) {
    if (node.type() == pugi::node_element && local_name(node) == name) out.push_back(node);
    if (node.first_child()) {
      node = node.first_child();
      continue;
    }
    while (node && !node.next_sibling()) node = node.parent();
    node = node.next_sibling();
  }
  return out;
}

class Finder {
 public:
  Finder(const std::string& bytes, const std::string& id, const std::string& name)
      : bytes_(bytes), source_(bytes), id_(id), name_(name) {}

  Result<FreePath> find() {
    pugi::xml_document document;
    const pugi::xml_parse_result parsed = document.load_buffer(bytes_.data(), bytes_.size());
    if (!parsed) {
      return problem(static_cast<std::size_t>(std::max<std::ptrdiff_t>(parsed.offset, 0)),
                     "the file is not well-formed XML: " + std::string(parsed.description()));
    }
    const std::vector<pugi::xml_node> paths = all_of("path", document);
    if (const pugi::xml_node text = text_in_place_of(paths, document)) {
      return problem(offset(text),
                     "found letters in a <text>, which have no outline here; expected a <path> "
                     "(a drawing program can turn text into paths; one letter is one opening)");
    }
    if (paths.empty()) return problem(0, "found no <path>; expected the outline of an opening");
    if (id_.empty()) {
      if (paths.size() == 1) return read(paths.front());
      return problem(offset(paths[1]), "found " + std::to_string(paths.size()) +
                                           " paths; expected one, or a path named in the job" +
                                           first_ids(paths));
    }
    for (const pugi::xml_node& path : paths) {
      if (path.attribute("id").value() == id_) return read(path);
    }
    return problem(0, "found no <path> with id \"" + id_ + "\"" + hint(paths));
  }

  // Of the paths that have one; an empty one where the only path has none.
  static std::vector<std::string> ids_in(const std::string& bytes) {
    pugi::xml_document document;
    if (!document.load_buffer(bytes.data(), bytes.size())) return {""};
    const std::vector<pugi::xml_node> paths = all_of("path", document);
    std::vector<std::string> out;
    for (const pugi::xml_node& path : paths) {
      const std::string id = path.attribute("id").value();
      if (!id.empty() || paths.size() == 1) out.push_back(id);
    }
    return out.empty() ? std::vector<std::string>{""} : out;
  }

 private:
  // What the job asks for is a text: by its id, or where there is nothing else.
  pugi::xml_node text_in_place_of(const std::vector<pugi::xml_node>& paths,
                                  const pugi::xml_document& document) const {
    const std::vector<pugi::xml_node> texts = all_of("text", document);
    if (id_.empty()) return paths.empty() && !texts.empty() ? texts.front() : pugi::xml_node();
    const auto asked = [this](const pugi::xml_node& node) {
      return node.attribute("id").value() == id_;
    };
    if (std::any_of(paths.begin(), paths.end(), asked)) return {};
    const auto found = std::find_if(texts.begin(), texts.end(), asked);
    return found == texts.end() ? pugi::xml_node() : *found;
  }

  Result<FreePath> read(const pugi::xml_node& node) const {
    if (!node.attribute("d")) return problem(offset(node), "the <path> has no d attribute");
    Result<Transform> transform = transform_of(node);
    if (!transform) return tl::unexpected(std::move(transform.error()));
    tl::expected<FreePath, PathError> path = parse_path(node.attribute("d").value());
    if (!path) {
      return problem(offset(node), path.error().message + " (character " +
                                       std::to_string(path.error().offset + 1) +
                                       " of the path's d)");
    }
    for (PathCurve& part : *path) {
      for (Vector* v :
           {&part.curve.start, &part.curve.control1, &part.curve.control2, &part.curve.end}) {
        *v = (*transform)(*v);
        if (!(norm(*v) < 1e12)) return problem(offset(node), "the transforms make it too large");
      }
    }
    return std::move(*path);
  }

  Result<Transform> transform_of(const pugi::xml_node& path) const {
    Transform out;
    for (pugi::xml_node node = path; node; node = node.parent()) {
      if (!node.attribute("transform")) continue;
      const auto own = parse_transform(node.attribute("transform").value());
      if (!own) {
        return tl::unexpected(
            Problems{make(offset(node), "the transform attribute is not one of SVG")});
      }
      out = *own * out;
    }
    return out;
  }

  std::string first_ids(const std::vector<pugi::xml_node>& paths) const {
    std::string out;
    for (std::size_t i = 0; i < paths.size() && i < 3; ++i) {
      const char* const id = paths[i].attribute("id").value();
      if (*id != '\0')
        out += (out.empty() ? ", such as path=\"" : " or \"") + std::string(id) + "\"";
    }
    return out;
  }

  std::string hint(const std::vector<pugi::xml_node>& paths) const {
    std::vector<std::string_view> ids;
    ids.reserve(paths.size());
    for (const pugi::xml_node& path : paths) ids.push_back(path.attribute("id").value());
    const std::string_view near = near_name(id_, ids);
    return near.empty() ? first_ids(paths) : "; did you mean \"" + std::string(near) + "\"?";
  }

  // pugixml points at the name; the tag begins one before it.
  static std::size_t offset(const pugi::xml_node& node) {
    return static_cast<std::size_t>(std::max<std::ptrdiff_t>(node.offset_debug(), 1)) - 1;
  }

  Problem make(std::size_t at, std::string message) const {
    return {Severity::error, "mat-outline-file", std::move(message), source_.place(at), name_};
  }
  tl::unexpected<Problems> problem(std::size_t at, std::string message) const {
    return tl::unexpected(Problems{make(at, std::move(message))});
  }

  const std::string& bytes_;
  SourceText source_;
  const std::string& id_;
  const std::string& name_;
};

}  // namespace

Result<FreePath> find_svg_path(const std::string& bytes, const std::string& id,
                               const std::string& name) {
  return Finder(bytes, id, name).find();
}

Result<FreePath> read_svg_path(const std::string& file, const std::string& id) {
  const auto bytes = read_file(file, largest_svg_file);
  if (!bytes) {
    return tl::unexpected(Problems{{Severity::error, "file-read", bytes.error(), {}, file}});
  }
  return find_svg_path(*bytes, id, file);
}

Result<std::vector<std::string>> svg_path_ids(const std::string& bytes, const std::string& name) {
  std::vector<std::string> out;
  Problems first;
  for (const std::string& id : Finder::ids_in(bytes)) {
    const auto path = find_svg_path(bytes, id, name);
    if (path) {
      out.push_back(id);
    } else if (first.empty()) {
      first = path.error();
    }
  }
  if (out.empty()) return tl::unexpected(first);
  return out;
}

}  // namespace mullion
