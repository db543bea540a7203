#include "engine/edit/edited_file.h"

#include <algorithm>

#include "engine/edit/names.h"
#include "engine/file/file.h"
#include "engine/file/input.h"
#include "engine/xml/limits.h"

namespace mullion::edit {

EditedFile::EditedFile(std::string path, std::string text)
    : path_(std::move(path)), history_(History::open(path_)) {
  texts_.push_back(std::move(text));
}

Result<EditedFile> EditedFile::open(const std::string& path) {
  auto text = read_input(path, largest_job_file);
  if (!text) return tl::unexpected(text.error());
  return EditedFile(path, std::move(*text));
}

void EditedFile::see(std::string text) {
  texts_.push_back(std::move(text));
  if (texts_.size() > most_texts) texts_.pop_front();
}

Result<bool> EditedFile::reload() {
  auto now = read_input(path_, largest_job_file);
  if (!now) return tl::unexpected(now.error());
  if (*now == text()) return false;
  see(std::move(*now));
  return true;
}

Result<EditedText> EditedFile::preview(const Edit& edit, const std::string& made_on) {
  if (const auto read = reload(); !read) return tl::unexpected(read.error());
  const auto base = std::find_if(texts_.rbegin(), texts_.rend(), [&](const std::string& text) {
    return fingerprint(text) == made_on;
  });
  if (base == texts_.rend()) {
    Problems why = refusal("edit-changed-meanwhile",
                           "the edit was made on a text of the job file that is long gone; look "
                           "at it as it is now");
    why.front().file = path_;
    return tl::unexpected(why);
  }
  return apply_meanwhile(*base, edit, text(), path_);
}

Result<Saved> EditedFile::edit(const Edit& edit, const std::string& made_on) {
  return save(History::Act::edit, preview(edit, made_on));
}

Result<Saved> EditedFile::undo() {
  if (const auto read = reload(); !read) return tl::unexpected(read.error());
  return save(History::Act::undo, history_.undone(text(), path_));
}

Result<Saved> EditedFile::redo() {
  if (const auto read = reload(); !read) return tl::unexpected(read.error());
  return save(History::Act::redo, history_.redone(text(), path_));
}

Result<Saved> EditedFile::save(History::Act act, const Result<EditedText>& edited) {
  if (!edited) return tl::unexpected(edited.error());
  if (edited->changes.empty() && act == History::Act::edit) return Saved{*edited, {}};
  const auto read = reload();
  if (!read) return tl::unexpected(read.error());
  if (*read) {
    Problems why = refusal("edit-changed-meanwhile",
                           "the job file was saved by another program this very moment; make the "
                           "edit again");
    why.front().file = path_;
    return tl::unexpected(why);
  }
  if (const auto written = replace_file(path_, edited->text); !written) {
    return tl::unexpected(Problems{{Severity::error, "file-write", written.error(), {}, {}}});
  }
  Saved out{*edited, {}};
  if (const auto recorded = history_.record(act, text(), *edited); !recorded) {
    out.notes = recorded.error();
    for (Problem& note : out.notes) note.severity = Severity::warning;
  }
  see(edited->text);
  return out;
}

}  // namespace mullion::edit
