#include "engine/edit/mentions.h"

#include <algorithm>
#include <charconv>
#include <map>
#include <set>

#include "engine/edit/names.h"
#include "engine/edit/part_place.h"
#include "engine/edit/placing.h"
#include "engine/xml/words.h"

namespace mullion::edit {
namespace {

// Of a thing of the text before: what it is called now; nothing where it is gone.
using NewNames = std::map<std::string, std::optional<std::string>, std::less<>>;

struct Called {
  std::size_t begin = 0;
  std::string id;
};

std::vector<Called> parts_called(const Markup& job) {
  std::vector<Called> out;
  for (const NamedPart& part : named_parts(job)) {
    if (!part.id.empty()) out.push_back({part.element->all.begin, part.id});
  }
  return out;
}

std::vector<Called> children_of(const Markup& job, std::string_view section, bool numbered) {
  std::vector<Called> out;
  const Markup* list = job.child(section);
  if (list == nullptr) return out;
  for (const Markup& child : list->children) {
    out.push_back({child.all.begin, numbered ? std::to_string(out.size() + 1) : child.value("id")});
  }
  return out;
}

NewNames changed(const Draft& draft, const std::vector<Called>& before,
                 const std::vector<Called>& now) {
  std::map<std::size_t, std::string> from;
  std::set<std::string> taken;  // by what is new
  for (const Called& one : now) {
    const auto origin = draft.origin(one.begin);
    if (origin) {
      from[*origin] = one.id;
    } else {
      taken.insert(one.id);
    }
  }
  NewNames out;
  for (const Called& one : before) {
    const auto found = from.find(one.begin);
    if (found == from.end()) {
      if (!taken.contains(one.id)) out[one.id] = std::nullopt;
    } else if (found->second != one.id) {
      out[one.id] = found->second;
    }
  }
  return out;
}

// The words of a list under their new names; those that are gone are left out. A measure's part
// after the full stop stays.
struct Renamed {
  std::string text;
  std::size_t count = 0;
  bool changed = false;
};

Renamed renamed(const std::string& list, const NewNames& names) {
  Renamed out;
  const std::string words = tidy(list);
  std::size_t at = 0;
  while (at < words.size()) {
    const std::size_t end = std::min(words.find(' ', at), words.size());
    const std::string word = words.substr(at, end - at);
    at = end + 1;
    const std::size_t stop = std::min(word.rfind('.'), word.size());
    const auto found = names.find(word.substr(0, stop));
    if (found != names.end()) out.changed = true;
    if (found != names.end() && !found->second) continue;
    const std::string name = found == names.end() ? word : *found->second + word.substr(stop);
    out.text += (out.text.empty() ? "" : " ") + name;
    ++out.count;
  }
  return out;
}

// Of the element that begins there. Without a value the attribute goes, without an attribute the
// element.
struct Rewrite {
  std::size_t element = 0;
  std::string attribute;
  std::optional<std::string> value;
};

void apply_rewrites(Draft& draft, const std::vector<Rewrite>& rewrites) {
  // From the end, so that what comes before keeps its place.
  for (auto it = rewrites.rbegin(); it != rewrites.rend(); ++it) {
    const Markup& element = element_at(draft, it->element);
    if (it->value) {
      set_attribute(draft, element, it->attribute, *it->value);
    } else if (it->attribute.empty()) {
      remove(draft, element);
    } else {
      remove_attribute(draft, element, it->attribute);
    }
  }
}

std::size_t fewest(const Markup& rule, std::string_view attribute) {
  const bool several = rule.name == "same-size" || rule.name == "align" || rule.name == "equal";
  return several && attribute == "of" ? 2 : 1;
}

void rename_in_rules(Draft& draft, const NewNames& names) {
  std::vector<Rewrite> rewrites;
  const Markup* rules = draft.job().child("rules");
  if (rules == nullptr) return;
  for (const Markup& rule : rules->children) {
    std::vector<Rewrite> own;
    bool goes = false;
    for (const char* attribute : {"of", "what", "on", "measure"}) {
      const WrittenValue* written = rule.find(attribute);
      if (written == nullptr) continue;
      const Renamed now = renamed(written->text, names);
      if (!now.changed) continue;
      own.push_back({rule.all.begin, attribute, now.text});
      goes = goes || now.count < fewest(rule, attribute);
    }
    if (goes) own = {{rule.all.begin, {}, std::nullopt}};
    rewrites.insert(rewrites.end(), own.begin(), own.end());
  }
  apply_rewrites(draft, rewrites);
  if (!rewrites.empty()) remove_if_empty(draft, "rules");
}

tl::expected<void, Problems> rename_in_layers(Draft& draft, const NewNames& names) {
  std::vector<Rewrite> rewrites;
  const Markup* layers = draft.job().child("layers");
  if (layers == nullptr) return {};
  std::size_t number = 0;
  for (const Markup& layer : layers->children) {
    ++number;
    const WrittenValue* only = layer.find("only");
    if (only == nullptr) continue;
    const Renamed now = renamed(only->text, names);
    if (!now.changed) continue;
    if (now.count == 0) {
      return tl::unexpected(refusal(
          "edit-layer-without-opening",
          "layer " + std::to_string(number) +
              " is cut for this opening alone; change what it is cut for, or take it out first"));
    }
    rewrites.push_back({layer.all.begin, "only", now.text});
  }
  apply_rewrites(draft, rewrites);
  return {};
}

void rename_in_openings(Draft& draft, const NewNames& names) {
  std::vector<Rewrite> rewrites;
  for (const NamedPart& part : named_parts(draft.job())) {
    const WrittenValue* picture = part.element->find("picture");
    if (picture == nullptr) continue;
    const auto found = names.find(tidy(picture->text));
    if (found == names.end() || !found->second) continue;
    rewrites.push_back({part.element->all.begin, "picture", *found->second});
  }
  apply_rewrites(draft, rewrites);
}

void list_layer_numbers(const Markup& element, const NewNames& names,
                        std::vector<Rewrite>& rewrites) {
  const char* attribute = element.name == "reveal" ? "layer" : "window";
  if (const WrittenValue* written = element.find(attribute)) {
    const auto found = names.find(tidy(written->text));
    const bool reveal = element.name == "reveal";
    if (found != names.end()) {
      const bool gone = !found->second || (reveal && *found->second == "1");
      if (!gone) {
        rewrites.push_back({element.all.begin, attribute, *found->second});
      } else {
        rewrites.push_back({element.all.begin, reveal ? "" : attribute, std::nullopt});
      }
    }
  }
  for (const Markup& child : element.children) list_layer_numbers(child, names, rewrites);
}

void renumber_layers(Draft& draft, const NewNames& numbers) {
  std::vector<Rewrite> rewrites;
  if (const Markup* arrange = draft.job().child("arrange")) {
    list_layer_numbers(*arrange, numbers, rewrites);
  }
  apply_rewrites(draft, rewrites);
  const Markup* layers = draft.job().child("layers");
  if (layers == nullptr || layers->children.empty()) return;
  const std::size_t top = layers->children.front().all.begin;
  for (const char* name :
       {"reveal", "reveal-left", "reveal-top", "reveal-right", "reveal-bottom"}) {
    remove_attribute(draft, element_at(draft, top), name);
  }
}

// --- gaps and groups ---------------------------------------------------------------------------

std::set<std::string, std::less<>> mentioned(const Markup& job) {
  std::set<std::string, std::less<>> out;
  const Markup* rules = job.child("rules");
  if (rules == nullptr) return out;
  for (const Markup& rule : rules->children) {
    for (const char* attribute : {"of", "what", "on", "measure"}) {
      const std::string words = rule.value(attribute) + " ";
      for (std::size_t at = 0, end = 0; (end = words.find(' ', at)) != std::string::npos;
           at = end + 1) {
        const std::string word = words.substr(at, end - at);
        out.insert(word.substr(0, word.rfind('.')));
      }
    }
  }
  return out;
}

// How much is lost with a gap.
int worth(const Markup& gap, const std::set<std::string, std::less<>>& known) {
  if (gap.find("id") != nullptr) return known.contains(gap.value("id")) ? 3 : 2;
  return gap.find("size") != nullptr ? 1 : 0;
}

const Markup* stray_gap(const Markup& element, const std::set<std::string, std::less<>>& known) {
  const Markup* gap = nullptr;  // since the last part
  bool part_before = false;
  for (const Markup& child : element.children) {
    if (is_part(child)) {
      if (const Markup* found = stray_gap(child, known)) return found;
      part_before = true;
      gap = nullptr;
    } else if (child.name == "gap") {
      if (!part_before) return &child;
      if (gap != nullptr) return worth(child, known) > worth(*gap, known) ? gap : &child;
      gap = &child;
    }
  }
  return gap;
}

const Markup* empty_group(const Markup& element) {
  for (const Markup& child : element.children) {
    if (!is_part(child)) continue;
    if (const Markup* found = empty_group(child)) return found;
    if (is_group(child) && parts_in(child).empty()) return &child;
  }
  return nullptr;
}

bool says_more_than_gap_and_align(const Markup& group) {
  return std::any_of(group.attributes.begin(), group.attributes.end(), [](const WrittenValue& one) {
    return one.name != "gap" && one.name != "align";
  });
}

// That had several parts before.
const Markup* needless_group(const Draft& draft, const Markup& element,
                             const std::map<std::size_t, std::size_t>& parts_before) {
  for (const Markup& child : element.children) {
    if (!is_part(child)) continue;
    if (const Markup* found = needless_group(draft, child, parts_before)) return found;
    if (!is_line(child) || child.children.size() != 1 || !child.remarks.empty()) continue;
    if (says_more_than_gap_and_align(child)) continue;
    const auto origin = draft.origin(child.all.begin);
    const auto before = origin ? parts_before.find(*origin) : parts_before.end();
    if (before != parts_before.end() && before->second > 1) return &child;
  }
  return nullptr;
}

void count_parts(const Markup& element, std::map<std::size_t, std::size_t>& out) {
  for (const Markup& child : element.children) {
    if (!is_group(child)) continue;
    out[child.all.begin] = parts_in(child).size();
    count_parts(child, out);
  }
}

void replace_by_its_part(Draft& draft, const Markup& group) {
  const Markup& part = group.children.front();
  const std::string outer = lead_of(draft.text(), group), inner = lead_of(draft.text(), part);
  const std::size_t begin = group.all.begin, end = group.all.end;
  draft.move(part.all, end, "", inner, outer);
  draft.remove(element_at(draft, begin).all);
  forget_foreign_place(draft, begin);
}

}  // namespace

tl::expected<void, Problems> follow_names(Draft& draft) {
  const Markup before = read_markup(draft.before());
  const NewNames pictures = changed(draft, children_of(before, "pictures", false),
                                    children_of(draft.job(), "pictures", false));
  if (!pictures.empty()) rename_in_openings(draft, pictures);
  const NewNames parts = changed(draft, parts_called(before), parts_called(draft.job()));
  if (!parts.empty()) {
    rename_in_rules(draft, parts);
    if (const auto done = rename_in_layers(draft, parts); !done) return done;
  }
  const NewNames numbers =
      changed(draft, children_of(before, "layers", true), children_of(draft.job(), "layers", true));
  if (!numbers.empty()) renumber_layers(draft, numbers);
  return {};
}

void tidy_arrangement(Draft& draft) {
  std::map<std::size_t, std::size_t> parts_before;
  const Markup before = read_markup(draft.before());
  if (const Markup* arrange = before.child("arrange")) count_parts(*arrange, parts_before);
  for (;;) {
    const Markup* arrange = draft.job().child("arrange");
    if (arrange == nullptr) return;
    if (const Markup* gap = stray_gap(*arrange, mentioned(draft.job()))) {
      remove(draft, *gap);
    } else if (const Markup* empty = empty_group(*arrange)) {
      remove(draft, *empty);
    } else if (const Markup* needless = needless_group(draft, *arrange, parts_before)) {
      replace_by_its_part(draft, *needless);
    } else {
      return;
    }
  }
}

}  // namespace mullion::edit
