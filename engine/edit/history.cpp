#include "engine/edit/history.h"

#include <sys/stat.h>

#include <algorithm>
#include <array>
#include <cstdio>
#include <nlohmann/json.hpp>

#include "engine/edit/names.h"
#include "engine/file/file.h"

namespace mullion::edit {
namespace {

using Json = nlohmann::ordered_json;
using Act = History::Act;

constexpr std::string_view first_line = "mullion history 1\n";
constexpr std::size_t checksum_length = 16;

struct ActWord {
  Act act;
  std::string_view word;
};
constexpr std::array<ActWord, 3> act_words{
    {{Act::edit, "edit"}, {Act::undo, "undo"}, {Act::redo, "redo"}}};
constexpr std::string_view pass_over_word = "pass-over";

std::string line_of(std::string_view word, const Hunks& hunks) {
  Json list = Json::array();
  for (const Hunk& hunk : hunks) {
    list.push_back({{"offset", hunk.change.offset},
                    {"before", hunk.before},
                    {"removed", hunk.change.removed},
                    {"inserted", hunk.change.inserted},
                    {"after", hunk.after}});
  }
  const Json line{{"do", word}, {"hunks", list}};
  const std::string text = line.dump(-1, ' ', false, Json::error_handler_t::replace);
  return fingerprint(text) + " " + text + "\n";
}

struct HistoryLine {
  std::string word;
  Hunks hunks;
};

std::optional<HistoryLine> read_line(std::string_view line) {
  if (line.size() <= checksum_length || line[checksum_length] != ' ') return std::nullopt;
  const std::string_view text = line.substr(checksum_length + 1);
  if (fingerprint(text) != line.substr(0, checksum_length)) return std::nullopt;
  const Json json = Json::parse(text, nullptr, false);
  if (!json.is_object()) return std::nullopt;
  HistoryLine out;
  out.word = json.value("do", "");
  const auto hunks = json.find("hunks");
  if (hunks == json.end() || !hunks->is_array()) return std::nullopt;
  for (const Json& one : *hunks) {
    const auto offset = one.find("offset");
    if (!one.is_object() || offset == one.end() || !offset->is_number_unsigned()) {
      return std::nullopt;
    }
    const auto text_in = [&](const char* name) {
      const auto found = one.find(name);
      return found != one.end() && found->is_string() ? found->get<std::string>() : std::string();
    };
    out.hunks.push_back({{offset->get<std::size_t>(), text_in("removed"), text_in("inserted")},
                         text_in("before"),
                         text_in("after")});
  }
  return out;
}

bool is_there(const std::string& path) {
  struct stat about {};
  return ::lstat(path.c_str(), &about) == 0;
}

Problems cannot_write(const std::string& why) {
  return {{Severity::error, "file-write", why, {}, {}}};
}

Result<EditedText> made(const std::vector<Hunks>& stack, const char* what, const std::string& text,
                        const std::string& file) {
  if (stack.empty()) {
    Problems why = refusal("edit-nothing-to-undo", std::string("there is nothing to ") + what);
    why.front().file = file;
    return tl::unexpected(why);
  }
  if (const auto changes = placed(stack.back(), text)) return apply(text, Change{*changes}, file);
  Problems why = refusal("edit-changed-meanwhile",
                         "the job file was changed meanwhile where this edit had its words");
  why.front().file = file;
  return tl::unexpected(why);
}

}  // namespace

std::string history_path(const std::string& job_path) {
  const std::size_t slash = job_path.rfind('/');
  const std::size_t name = slash == std::string::npos ? 0 : slash + 1;
  return job_path.substr(0, name) + "." + job_path.substr(name) + ".history";
}

History History::open(const std::string& job_path) {
  History out;
  out.path_ = history_path(job_path);
  if (!is_there(out.path_)) return out;
  const auto bytes = read_file(out.path_, largest_history);
  if (bytes && out.read(*bytes)) return out;
  out.undo_.clear();
  out.redo_.clear();
  out.begun_ = false;
  out.damaged_ = true;
  out.notes_.push_back({Severity::warning,
                        "edit-history",
                        bytes ? "the history of edits " + out.path_ +
                                    " is damaged; what was done before cannot be undone, and it "
                                    "is set aside at the next edit"
                              : bytes.error(),
                        {},
                        {}});
  return out;
}

// False where it is damaged. A last line without its end was interrupted.
bool History::read(std::string_view bytes) {
  begun_ = bytes.starts_with(first_line);
  if (!begun_) return first_line.starts_with(bytes);
  std::size_t at = first_line.size();
  while (at < bytes.size()) {
    const std::size_t end = bytes.find('\n', at);
    if (end == std::string_view::npos) {
      // Cut off there, so that the next line does not follow it.
      begun_ = replace_file(path_, bytes.substr(0, at)).has_value();
      return begun_;
    }
    auto line = read_line(bytes.substr(at, end - at));
    if (!line) return false;
    at = end + 1;
    if (line->word == pass_over_word) {
      if (undo_.empty()) return false;
      undo_.pop_back();
      continue;
    }
    const auto known = std::find_if(act_words.begin(), act_words.end(),
                                    [&](const ActWord& one) { return one.word == line->word; });
    if (known == act_words.end()) return false;
    if (known->act == Act::undo && undo_.empty()) return false;
    if (known->act == Act::redo && redo_.empty()) return false;
    take(known->act, std::move(line->hunks));
  }
  return true;
}

void History::take(Act act, Hunks hunks) {
  Hunks back = inverse(hunks);
  switch (act) {
    case Act::edit:
      redo_.clear();
      undo_.push_back(std::move(back));
      return;
    case Act::undo:
      undo_.pop_back();
      redo_.push_back(std::move(back));
      return;
    case Act::redo:
      redo_.pop_back();
      undo_.push_back(std::move(back));
      return;
  }
}

Result<EditedText> History::undone(const std::string& text, const std::string& file) const {
  return made(undo_, "undo", text, file);
}

Result<EditedText> History::redone(const std::string& text, const std::string& file) const {
  return made(redo_, "do again", text, file);
}

std::optional<std::string> History::earlier(
    std::string text, const std::function<bool(const std::string&)>& is_wanted,
    std::size_t most) const {
  for (auto hunks = undo_.rbegin(); hunks != undo_.rend() && most > 0; ++hunks, --most) {
    const auto changes = placed(*hunks, text);
    auto before = changes ? with_changes(text, *changes) : std::nullopt;
    if (!before) return std::nullopt;
    text = std::move(*before);
    if (is_wanted(text)) return text;
  }
  return std::nullopt;
}

tl::expected<void, Problems> History::record(Act act, const std::string& text,
                                             const EditedText& edited) {
  const Hunks hunks = hunks_of(text, edited.changes);
  const auto word = std::find_if(act_words.begin(), act_words.end(),
                                 [&](const ActWord& one) { return one.act == act; });
  take(act, hunks);
  return write(line_of(word->word, hunks));
}

tl::expected<void, Problems> History::pass_over() {
  if (undo_.empty()) {
    return tl::unexpected(refusal("edit-nothing-to-undo", "there is nothing to undo"));
  }
  undo_.pop_back();
  return write(line_of(pass_over_word, {}));
}

tl::expected<void, Problems> History::write(const std::string& line) {
  if (damaged_) {
    const std::string aside = path_ + ".damaged";
    if (std::rename(path_.c_str(), aside.c_str()) != 0) {
      return tl::unexpected(cannot_write("cannot set " + path_ + " aside"));
    }
    damaged_ = false;
  }
  const bool begins = !begun_ || !is_there(path_);
  const auto written =
      begins ? replace_file(path_, std::string(first_line) + line) : append_to_file(path_, line);
  if (!written) return tl::unexpected(cannot_write(written.error()));
  begun_ = true;
  return {};
}

}  // namespace mullion::edit
