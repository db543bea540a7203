#include "engine/edit/names.h"

#include <algorithm>
#include <charconv>

#include "engine/job/parts.h"
#include "engine/xml/reading.h"

namespace mullion::edit {
namespace {

const std::vector<std::string_view> sections{"customer", "title",   "note",  "wall",
                                             "pictures", "layers",  "outer", "frame",
                                             "borders",  "arrange", "rules"};
const std::vector<std::string_view> job_attributes{"reference", "revision", "date",
                                                   "quantity",  "unit",     "increment"};
const std::vector<std::string_view> numbered{"picture", "layer", "rule",   "opening", "row",
                                             "column",  "ring",  "places", "gap"};

bool contains(const std::vector<std::string_view>& words, std::string_view word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

std::string hint(std::string_view found, const std::vector<std::string_view>& known) {
  constexpr std::size_t few = 24;
  const std::string_view near = near_name(found, known);
  if (!near.empty()) return "; did you mean " + mullion::quoted(near) + "?";
  if (known.empty() || known.size() > few) return {};
  return "; expected " + alternatives(known);
}

// From 1; zero where it is no number.
std::size_t number_of(std::string_view text) {
  std::size_t number = 0;
  const auto [stopped, error] = std::from_chars(text.data(), text.data() + text.size(), number);
  const bool whole = error == std::errc() && stopped == text.data() + text.size();
  return whole && !text.starts_with('0') ? number : 0;
}

std::vector<const Markup*> children_called(const Markup& element, std::string_view name) {
  std::vector<const Markup*> out;
  for (const Markup& child : element.children) {
    if (child.name == name) out.push_back(&child);
  }
  return out;
}

void list_parts(const Markup& element, const Markup& parent, std::size_t& openings,
                std::vector<NamedPart>& out) {
  if (element.name == "opening") {
    const std::string id = element.value("id");
    ++openings;
    out.push_back({&element, &parent,
                   element.find("id") != nullptr
                       ? id
                       : usual_opening_id(element.value("picture"), openings)});
  } else if (element.name == "gap") {
    out.push_back({&element, &parent, element.value("id")});
  } else if (is_group(element)) {
    out.push_back({&element, &parent, element.value("id")});
    for (const Markup& child : element.children) list_parts(child, element, openings, out);
  }
}

class Resolver {
 public:
  Resolver(const Markup& job, std::string_view name) : job_(job), name_(name) {
    std::size_t at = 0;
    while (at <= name.size()) {
      const std::size_t end = std::min(name.find('.', at), name.size());
      steps_.push_back(name.substr(at, end - at));
      at = end + 1;
    }
  }

  Result<Target> resolve() {
    Target target;
    if (!begin(target)) return tl::unexpected(why_);
    while (at_ < steps_.size()) {
      if (!step(target)) return tl::unexpected(why_);
    }
    return target;
  }

 private:
  bool last() const { return at_ + 1 == steps_.size(); }
  bool more() const { return at_ < steps_.size(); }

  bool refuse(std::string message) {
    why_ = refusal("edit-unknown-name", std::move(message));
    return false;
  }

  bool begin(Target& target) {
    std::string_view first = steps_[at_];
    if (first == "job") return take_job(target);
    if (contains(job_attributes, first)) {
      target = {&job_, nullptr, "job", nullptr, {}, std::string(first)};
      return ++at_ == steps_.size() || refuse("found no " + mullion::quoted(name_));
    }
    if (first == "border") first = "borders";
    if (contains(sections, first)) {
      ++at_;
      target = {job_.child(first), &job_, std::string(first), nullptr, {}, {}};
      return true;
    }
    if (contains(numbered, first)) return begin_listed(target, first);
    return begin_id(target, first, {"opening", "row", "column", "ring", "places", "gap"}, false);
  }

  bool take_job(Target& target) {
    ++at_;
    target = {&job_, nullptr, "job", nullptr, {}, {}};
    return true;
  }

  bool begin_listed(Target& target, std::string_view first) {
    ++at_;
    if (!more()) {
      return refuse("found " + mullion::quoted(name_) + " alone; expected " +
                    (first == "layer" || first == "rule" ? "its number" : "its name") +
                    " after a full stop");
    }
    if (first == "picture") return begin_picture(target);
    if (first == "layer") return begin_numbered(target, "layers", "layer");
    if (first == "rule") return begin_numbered(target, "rules", "rule");
    return begin_id(target, steps_[at_], {first}, true);
  }

  bool begin_picture(Target& target) {
    const Markup* pictures = job_.child("pictures");
    std::vector<std::string> ids;
    if (pictures != nullptr) {
      for (const Markup* picture : children_called(*pictures, "picture")) {
        ids.push_back(picture->value("id"));
        if (ids.back() != steps_[at_]) continue;
        ++at_;
        target = {picture, pictures, "picture", nullptr, {}, {}};
        return true;
      }
    }
    return refuse("found no picture " + mullion::quoted(steps_[at_]) +
                  hint(steps_[at_], {ids.begin(), ids.end()}));
  }

  bool begin_numbered(Target& target, std::string_view section, std::string_view what) {
    const Markup* list = job_.child(section);
    const std::size_t count = list == nullptr ? 0 : list->children.size();
    const std::size_t number = number_of(steps_[at_]);
    if (number == 0 || number > count) {
      return refuse("found no " + std::string(what) + " " + mullion::quoted(steps_[at_]) +
                    "; the job has " + std::to_string(count));
    }
    const Markup& element = list->children[number - 1];
    target = {&element, list, std::string(element.name), nullptr, {}, {}};
    ++at_;
    return true;
  }

  bool begin_id(Target& target, std::string_view id, const std::vector<std::string_view>& kinds,
                bool is_said) {
    const std::vector<NamedPart> parts = named_parts(job_);
    std::vector<std::string_view> known;
    for (const NamedPart& part : parts) {
      if (part.id.empty() || !contains(kinds, part.element->name)) continue;
      known.push_back(part.id);
      if (part.id != id) continue;
      target = {part.element, part.parent, std::string(part.element->name), nullptr, {}, {}};
      ++at_;
      return true;
    }
    if (is_said) {
      return refuse("found no " + std::string(kinds.front()) + " " + mullion::quoted(id) +
                    hint(id, known));
    }
    for (const auto* words : {&sections, &job_attributes, &numbered}) {
      known.insert(known.end(), words->begin(), words->end());
    }
    known.push_back("border");
    return refuse("found nothing called " + mullion::quoted(id) + hint(id, known));
  }

  // A part of the element, something in it, or its attribute.
  bool step(Target& target) {
    const Markup* element = target.element;
    const bool holds_parts =
        element != nullptr && (is_group(*element) || element->name == "arrange");
    if (holds_parts && number_of(steps_[at_]) > 0) return step_part(target);
    const bool is_numbered = at_ + 1 < steps_.size() && number_of(steps_[at_ + 1]) > 0;
    if (is_numbered && element != nullptr) {
      if (steps_[at_] == "groove") return step_groove(target);
      if (steps_[at_] == "gap" && is_line(*element)) return step_gap(target);
      if (steps_[at_] == "reveal" && element->name == "opening") return step_reveal(target);
    }
    if (!last()) return refuse("found nothing called " + mullion::quoted(name_));
    target.attribute = steps_[at_++];
    if (!target.attribute.empty()) return true;
    return refuse("found " + mullion::quoted(name_) + "; expected a name after the full stop");
  }

  bool step_part(Target& target) {
    const std::vector<const Markup*> parts = parts_in(*target.element);
    const std::size_t number = number_of(steps_[at_]);
    if (number > parts.size()) {
      return refuse("found no part " + std::string(steps_[at_]) + " for " + mullion::quoted(name_) +
                    "; there are " + std::to_string(parts.size()));
    }
    const Markup* part = parts[number - 1];
    target = {part, target.element, std::string(part->name), nullptr, {}, {}};
    ++at_;
    return true;
  }

  bool step_groove(Target& target) {
    const auto grooves = children_called(*target.element, "groove");
    const std::size_t number = number_of(steps_[at_ + 1]);
    if (number > grooves.size()) {
      return refuse("found no groove for " + mullion::quoted(name_) + "; there are " +
                    std::to_string(grooves.size()));
    }
    target = {grooves[number - 1], target.element, "groove", nullptr, {}, {}};
    at_ += 2;
    return true;
  }

  bool step_gap(Target& target) {
    const Markup& group = *target.element;
    const std::vector<const Markup*> parts = parts_in(group);
    const std::size_t number = number_of(steps_[at_ + 1]);
    if (number + 1 > parts.size()) {
      return refuse("found no gap for " + mullion::quoted(name_) + "; there are " +
                    std::to_string(parts.empty() ? 0 : parts.size() - 1));
    }
    const Markup* own = nullptr;
    for (const Markup* gap : children_called(group, "gap")) {
      if (gap->all.begin > parts[number - 1]->all.begin && gap->all.end < parts[number]->all.end) {
        own = gap;
      }
    }
    target = {own, &group, "gap", parts[number - 1], {}, {}};
    at_ += 2;
    return true;
  }

  bool step_reveal(Target& target) {
    const std::string layer(steps_[at_ + 1]);
    const Markup* own = nullptr;
    for (const Markup* reveal : children_called(*target.element, "reveal")) {
      if (reveal->value("layer") == layer) own = reveal;
    }
    target = {own, target.element, "reveal", nullptr, layer, {}};
    at_ += 2;
    return true;
  }

  const Markup& job_;
  std::string_view name_;
  std::vector<std::string_view> steps_;
  std::size_t at_ = 0;
  Problems why_;
};

}  // namespace

std::vector<NamedPart> named_parts(const Markup& job) {
  std::vector<NamedPart> out;
  std::size_t openings = 0;
  if (const Markup* arrange = job.child("arrange")) {
    for (const Markup& child : arrange->children) list_parts(child, *arrange, openings, out);
  }
  return out;
}

bool is_line(const Markup& element) {
  return element.name == "row" || element.name == "column";
}

bool is_group(const Markup& element) {
  return is_line(element) || element.name == "ring" || element.name == "places";
}

bool is_part(const Markup& element) {
  return element.name == "opening" || is_group(element);
}

std::vector<const Markup*> parts_in(const Markup& group) {
  std::vector<const Markup*> out;
  for (const Markup& child : group.children) {
    if (is_part(child)) out.push_back(&child);
  }
  return out;
}

Result<Target> target_of(const Markup& job, std::string_view name) {
  return Resolver(job, name).resolve();
}

Result<const Markup*> element_of(const Markup& job, std::string_view name) {
  const Result<Target> target = target_of(job, name);
  if (!target) return tl::unexpected(target.error());
  if (target->element != nullptr && target->attribute.empty()) return target->element;
  return tl::unexpected(
      refusal("edit-unknown-name",
              "found no " +
                  (target->attribute.empty() ? target->element_name : std::string("part called")) +
                  " " + mullion::quoted(name) + " in the job"));
}

Problems refusal(std::string code, std::string message) {
  return {{Severity::error, std::move(code), std::move(message), {}, {}}};
}

}  // namespace mullion::edit
