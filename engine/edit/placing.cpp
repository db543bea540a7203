#include "engine/edit/placing.h"

#include <algorithm>
#include <array>
#include <stdexcept>

namespace mullion::edit {
namespace {

constexpr std::array<std::string_view, 11> section_order{"customer", "title",   "note",  "wall",
                                                         "pictures", "layers",  "outer", "frame",
                                                         "borders",  "arrange", "rules"};

bool is_space(char c) {
  return c == ' ' || c == '\t';
}

std::size_t behind_spaces(std::string_view text, std::size_t at) {
  while (at < text.size() && is_space(text[at])) ++at;
  return at;
}

bool ends_line(std::string_view text, std::size_t at) {
  return at == text.size() || text[at] == '\n' || text.substr(at).starts_with("\r\n");
}

// Behind the comments that follow on the same line, where the line ends with them.
std::size_t behind_remarks(std::string_view text, std::size_t end) {
  std::size_t at = end;
  for (;;) {
    const std::size_t next = behind_spaces(text, at);
    if (ends_line(text, next)) return at;
    if (!text.substr(next).starts_with("<!--")) return end;
    const std::size_t close = text.find("-->", next);
    if (close == std::string_view::npos) return end;
    const std::string_view remark = text.substr(next, close - next);
    if (remark.find('\n') != std::string_view::npos) return end;
    at = close + 3;
  }
}

const Markup* find_at(const Markup& element, std::size_t begin) {
  if (element.all.begin == begin) return &element;
  for (const Markup& child : element.children) {
    if (child.all.begin <= begin && begin < child.all.end) return find_at(child, begin);
  }
  return nullptr;
}

const Markup* find_from(const Draft& draft, const Markup& element, std::size_t origin) {
  if (draft.origin(element.all.begin) == origin) return &element;
  for (const Markup& child : element.children) {
    if (const Markup* found = find_from(draft, child, origin)) return found;
  }
  return nullptr;
}

std::string written(std::string_view name, std::string_view value) {
  return std::string(name) + "=\"" + escaped_value(value, '"') + "\"";
}

// Blanks before an attribute, and it.
Span with_blanks(std::string_view text, const Span& span) {
  std::size_t begin = span.begin;
  while (begin > 0 && blanks.find(text[begin - 1]) != std::string_view::npos) --begin;
  return {begin, span.end};
}

}  // namespace

std::string lead_of(std::string_view text, const Markup& element) {
  std::size_t begin = element.all.begin;
  while (begin > 0 && is_space(text[begin - 1])) --begin;
  if (begin == 0 || text[begin - 1] != '\n') return {};
  --begin;
  if (begin > 0 && text[begin - 1] == '\r') --begin;
  return std::string(text.substr(begin, element.all.begin - begin));
}

std::string step_of(Draft& draft) {
  const std::string outer = lead_of(draft.text(), draft.job());
  const std::size_t outer_blanks = outer.empty() ? 0 : outer.size() - (outer.find('\n') + 1);
  for (const Markup& child : draft.job().children) {
    const std::string inner = lead_of(draft.text(), child);
    const std::string own = inner.empty() ? inner : inner.substr(inner.find('\n') + 1);
    if (own.size() > outer_blanks) return own.substr(outer_blanks);
  }
  return "  ";
}

Slot slot_after(std::string_view text, const Markup& element) {
  const std::string lead = lead_of(text, element);
  return {lead.empty() ? element.all.end : behind_remarks(text, element.all.end), lead};
}

Slot slot_before(std::string_view text, const Markup& parent, const Markup& element) {
  const auto index = static_cast<std::size_t>(&element - parent.children.data());
  const std::string lead = lead_of(text, element);
  if (index == 0) return {parent.inside.begin, lead};
  return {slot_after(text, parent.children[index - 1]).at, lead};
}

Slot slot_at_end(Draft& draft, const Markup& parent) {
  if (!parent.children.empty()) return slot_after(draft.text(), parent.children.back());
  const std::size_t begin = parent.all.begin;
  const bool is_root = &parent == &draft.job();
  const std::string own = lead_of(draft.text(), parent);
  const std::string lead = own.empty() ? (is_root ? "\n  " : "") : own + step_of(draft);
  if (parent.has_one_tag) {
    std::size_t end = parent.all.end - 2;  // of what stands before "/>"
    while (is_space(draft.text()[end - 1])) --end;
    const std::string close =
        (is_root && own.empty() ? "\n" : own) + "</" + std::string(parent.name) + ">";
    draft.replace({end, parent.all.end}, ">" + close);
    return {end + 1, lead};
  }
  std::size_t at = parent.inside.begin;
  for (const Span& remark : parent.remarks) at = std::max(at, remark.end);
  for (const Span& words : parent.words) at = std::max(at, words.end);
  if (parent.inside.begin == parent.inside.end && !own.empty()) {
    draft.insert(parent.inside.begin, own);
    at = element_at(draft, begin).inside.begin;
  }
  return {at, lead};
}

std::string tag_of(std::string_view name, const Attributes& attributes) {
  std::string out = "<" + std::string(name);
  for (const auto& [attribute, value] : attributes) out += " " + written(attribute, value);
  return out + "/>";
}

void insert(Draft& draft, const Slot& slot, std::string_view element) {
  draft.insert(slot.at, slot.lead + std::string(element));
}

void move(Draft& draft, const Markup& element, const Slot& slot) {
  const std::string& text = draft.text();
  const std::string lead = lead_of(text, element);
  const std::size_t begin = element.all.begin;
  std::size_t end = element.all.end, behind = end, hole = begin;  // what is left of its line
  if (lead.empty()) {
    while (hole > 0 && is_space(text[hole - 1])) --hole;
  } else {
    end = behind_remarks(text, end);
    behind = behind_spaces(text, end);
    if (ends_line(text, behind)) hole -= lead.size();
  }
  if (slot.at >= hole && slot.at <= behind) return;  // it is there
  const std::size_t to = slot.at > behind ? slot.at - (behind - end) : slot.at;
  draft.remove({end, behind});
  const std::size_t size = text.size();
  draft.move({begin, end}, to, slot.lead, lead, slot.lead);
  const std::size_t shift = to < begin ? end - begin + text.size() - size : 0;
  draft.remove({hole + shift, begin + shift});
}

void remove(Draft& draft, const Markup& element) {
  const std::string_view text = draft.text();
  const std::string lead = lead_of(text, element);
  Span span = element.all;
  const std::size_t behind = behind_spaces(text, span.end);
  if (!lead.empty() && ends_line(text, behind)) {
    span = {span.begin - lead.size(), behind};
  } else if (!lead.empty()) {
    span.end = behind;  // what follows on the line begins it now
  } else {
    while (span.begin > 0 && is_space(text[span.begin - 1])) --span.begin;
  }
  draft.remove(span);
}

void remove_if_empty(Draft& draft, std::string_view section) {
  const Markup* found = draft.job().child(section);
  if (found != nullptr && found->holds_nothing()) remove(draft, *found);
}

const Markup& section_of(Draft& draft, std::string_view name, const Attributes& attributes) {
  const Markup& job = draft.job();
  if (const Markup* found = job.child(name)) return *found;
  const auto rank = [](std::string_view section) {
    return std::find(section_order.begin(), section_order.end(), section) - section_order.begin();
  };
  const Markup* before = nullptr;
  for (const Markup& child : job.children) {
    if (rank(child.name) < rank(name)) before = &child;
  }
  const Slot slot = before != nullptr      ? slot_after(draft.text(), *before)
                    : job.children.empty() ? slot_at_end(draft, job)
                                           : slot_before(draft.text(), job, job.children.front());
  insert(draft, slot, tag_of(name, attributes));
  return *draft.job().child(name);
}

void set_attribute(Draft& draft, const Markup& element, std::string_view name,
                   std::string_view value) {
  if (const WrittenValue* old = element.find(name)) {
    const char quote = draft.text()[old->raw.begin - 1];
    draft.replace(old->raw, escaped_value(value, quote));
    return;
  }
  std::size_t at = element.name_span.end;
  std::string between = " ";
  if (!element.attributes.empty()) {
    at = element.attributes.back().whole.end;
    const Span last = with_blanks(draft.text(), element.attributes.back().whole);
    if (element.attributes.size() > 1) {
      between = draft.text().substr(last.begin, element.attributes.back().whole.begin - last.begin);
    }
  }
  draft.insert(at, between + written(name, value));
}

void exchange_attribute(Draft& draft, const WrittenValue& old, const Attributes& attributes) {
  std::string text;
  for (const auto& [name, value] : attributes) {
    text += (text.empty() ? "" : " ") + written(name, value);
  }
  draft.replace(old.whole, text);
}

void remove_attribute(Draft& draft, const Markup& element, std::string_view name) {
  if (const WrittenValue* old = element.find(name)) {
    draft.remove(with_blanks(draft.text(), old->whole));
  }
}

const Markup& element_at(Draft& draft, std::size_t begin) {
  const Markup* found = find_at(draft.job(), begin);
  if (found == nullptr) throw std::logic_error("no element begins there");
  return *found;
}

const Markup* element_from(Draft& draft, std::size_t origin) {
  return find_from(draft, draft.job(), origin);
}

}  // namespace mullion::edit
