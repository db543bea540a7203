#include "engine/edit/edit.h"
#include "engine/edit/markup.h"
#include "engine/job/job_words.h"
#include "engine/job/write.h"

namespace mullion::edit {
namespace {

const Markup* picture_in(const Markup& job, const std::string& id) {
  const Markup* pictures = job.child("pictures");
  if (pictures == nullptr) return nullptr;
  for (const Markup& picture : pictures->children) {
    if (picture.value("id") == id) return &picture;
  }
  return nullptr;
}

std::optional<std::string> stated(const Markup* element, std::string_view attribute) {
  if (element == nullptr || element->find(attribute) == nullptr) return std::nullopt;
  return element->value(attribute);
}

void list_names(const Node& node, const std::string& path, PartNames& names) {
  if (const auto* opening = std::get_if<Opening>(&node.what)) {
    names.openings.push_back("opening." + opening->id);
    return;
  }
  const auto& group = std::get<Group>(node.what);
  const std::string word = std::string(word_for(group.along)) + ".";
  names.groups.push_back(group.id.empty() ? path : word + group.id);
  for (std::size_t i = 0; i < group.children.size(); ++i) {
    list_names(group.children[i], path + "." + std::to_string(i + 1), names);
  }
}

}  // namespace

Edit taking(const Job& job, const Job& suggestion) {
  const std::string old_text = write_job(job), new_text = write_job(suggestion);
  const Markup before = read_markup(old_text), after = read_markup(new_text);
  Several out;
  const auto change = [&](const std::string& what, const Markup* was, const Markup* is,
                          const char* attribute) {
    const auto value = stated(is, attribute);
    if (value == stated(was, attribute)) return;
    out.edits.push_back(State{what + "." + attribute, value});
  };
  for (const Picture& picture : suggestion.pictures) {
    const Markup* was = picture_in(before, picture.id);
    const Markup* is = picture_in(after, picture.id);
    for (const char* attribute : {"width", "height", "pan-x", "pan-y", "turned"}) {
      change("picture." + picture.id, was, is, attribute);
    }
  }
  for (const char* side : {"width", "height"}) {
    change("outer", before.child("outer"), after.child("outer"), side);
  }
  if (const Markup* arrange = after.child("arrange")) {
    out.edits.push_back(
        Arrange{new_text.substr(arrange->all.begin, arrange->all.end - arrange->all.begin)});
  }
  return out;
}

PartNames names_of(const Job& job) {
  PartNames names;
  list_names(job.arrangement, "arrange.1", names);
  return names;
}

}  // namespace mullion::edit
