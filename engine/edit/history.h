#pragma once

// What was done to a job file, so that it can be undone and done again, without a limit and after
// any time.
//
// It stands in a file beside the job: ".wedding.xml.history" for "wedding.xml". Each line is a
// checksum and a JSON object, {"do": "edit" | "undo" | "redo", "hunks": [{"offset", "before",
// "removed", "inserted", "after"}]}: what was changed in the text, with what stands around it.
// Lines are only added, so that an interrupted write spoils at most the last one, which is then
// passed over. A file that is damaged otherwise is set aside when the next line is written.
//
// What an editor changed meanwhile stays: undoing takes back its own words alone, wherever they
// stand now, and is refused where they are no longer as it left them.

#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/edit/edit.h"

namespace mullion::edit {

inline constexpr std::size_t largest_history = 1u << 30;  // bytes

std::string history_path(const std::string& job_path);

class History {
 public:
  enum class Act { edit, undo, redo };

  // Of the job file at that path; empty where it has none. What is damaged is a warning in `notes`
  // ("edit-history"), and the history is empty.
  static History open(const std::string& job_path);

  bool can_undo() const { return !undo_.empty(); }
  bool can_redo() const { return !redo_.empty(); }
  const Problems& notes() const { return notes_; }

  // What the text is without the last edit that was not undone, or with the last one that was.
  // Refused where there is none ("edit-nothing-to-undo") or where others changed those words
  // ("edit-changed-meanwhile"). Nothing is written: `record` does that once the job is saved.
  Result<EditedText> undone(const std::string& text, const std::string& file = {}) const;
  Result<EditedText> redone(const std::string& text, const std::string& file = {}) const;

  // What the text was before the last edits, the newest first, until one `is_wanted`. Nothing where
  // none is, where others changed the words of an edit, or after so many.
  std::optional<std::string> earlier(std::string text,
                                     const std::function<bool(const std::string& text)>& is_wanted,
                                     std::size_t most) const;

  // That it was done to the text. After an edit nothing is left to be done again. Where it cannot
  // be written the history in memory goes on; the problem is "file-write".
  tl::expected<void, Problems> record(Act act, const std::string& text, const EditedText& edited);

  // Forgets the last edit that was not undone, so that those before it can be: for one whose words
  // others changed.
  tl::expected<void, Problems> pass_over();

 private:
  void take(Act act, Hunks hunks);
  bool read(std::string_view bytes);
  tl::expected<void, Problems> write(const std::string& line);

  std::string path_;
  std::vector<Hunks> undo_, redo_;  // what to do to the text, the next one last
  Problems notes_;
  bool begun_ = false;    // the file is there and whole
  bool damaged_ = false;  // the file is there and is to be set aside
};

}  // namespace mullion::edit
