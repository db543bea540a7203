#include "engine/edit/finish.h"

#include <algorithm>

#include "engine/edit/draft.h"
#include "engine/edit/placing.h"
#include "engine/edit/state.h"
#include "engine/xml/words.h"

namespace mullion::edit {
namespace {

constexpr const char* layer_words[] = {
    "name",        "board",      "colour",       "core",          "ply",    "thickness", "reveal",
    "reveal-left", "reveal-top", "reveal-right", "reveal-bottom", "spacer", "grain"};

// In a job of another unit a length names its own.
Attributes words_for(const Job& job, const Finish& finish, std::string_view element,
                     const Attributes& words) {
  Attributes out = words;
  if (finish.unit == job.scale.unit) return out;
  for (auto& [word, value] : out) {
    const bool number =
        !value.empty() &&
        (value.back() == '.' || std::isdigit(static_cast<unsigned char>(value.back())) != 0);
    if (number && is_length(element, word)) value += std::string(" ") + word_for(finish.unit);
  }
  return out;
}

const std::string* find_in(const Attributes& attributes, std::string_view word) {
  for (const auto& [name, value] : attributes) {
    if (name == word) return &value;
  }
  return nullptr;
}

Attributes head_of(const Finish& finish) {
  Attributes out{{"name", finish.name}};
  if (finish.unit != Unit::inch) out.emplace_back("unit", word_for(finish.unit));
  return out;
}

std::string opened(std::string_view name, const Attributes& attributes) {
  std::string tag = tag_of(name, attributes);
  return tag.replace(tag.size() - 2, 2, ">");
}

// Lines that begin with `lead`, one thing a line.
std::string text_of(const Finish& finish, const std::string& lead, const std::string& step) {
  const std::string inner = lead.empty() ? lead : lead + step;
  std::string out = opened("finish", head_of(finish));
  for (const Attributes& layer : finish.layers) out += inner + tag_of("layer", layer);
  if (!finish.frame.empty()) out += inner + tag_of("frame", finish.frame);
  return out + lead + "</finish>";
}

}  // namespace

Edit taking(const Finish& finish, const Job& job) {
  Several out;
  for (std::size_t i = 0; i < finish.layers.size(); ++i) {
    const Attributes layer = words_for(job, finish, "layer", finish.layers[i]);
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
  for (const auto& [word, value] : words_for(job, finish, "frame", finish.frame)) {
    out.edits.push_back(State{"frame." + word, value});
  }
  return out;
}

Result<EditedText> keeping(const Finish& finish, const std::string& shop, const std::string& file) {
  if (const auto before = parse_shop(shop, file); !before) return tl::unexpected(before.error());
  Draft draft(shop);
  const std::string step = step_of(draft);
  if (draft.job().child("finishes") == nullptr) {
    insert(draft, slot_at_end(draft, draft.job()), "<finishes/>");
  }
  const Markup& section = *draft.job().child("finishes");
  const auto same =
      std::find_if(section.children.begin(), section.children.end(),
                   [&](const Markup& one) { return one.value("name") == finish.name; });
  if (same != section.children.end()) {
    draft.replace(same->all, text_of(finish, lead_of(draft.text(), *same), step));
  } else {
    const Slot slot = slot_at_end(draft, section);
    insert(draft, slot, text_of(finish, slot.lead, step));
  }
  if (const auto after = parse_shop(draft.text(), file); !after)
    return tl::unexpected(after.error());
  return EditedText{draft.text(), draft.changes()};
}

std::string new_shop(const std::string& name) {
  return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n" +
         tag_of("shop", {{"version", "1"}, {"name", name}}) + "\n";
}

}  // namespace mullion::edit
