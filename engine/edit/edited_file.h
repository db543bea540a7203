#pragma once

// A job file that is edited where it stands, with its history beside it: what a page or another
// program that stays open needs. The file is the truth: it is read again before each edit, and
// written as safely as outputs are. What others save between that reading and the writing, a moment
// of some milliseconds, is looked for once more before the file is replaced.

#include <deque>
#include <string>

#include "engine/edit/history.h"

namespace mullion::edit {

struct Saved {
  EditedText edited;
  Problems notes;  // warnings: the job was saved, its history was not
};

class EditedFile {
 public:
  static Result<EditedFile> open(const std::string& path);

  const std::string& path() const { return path_; }
  const std::string& text() const { return texts_.back(); }
  const History& history() const { return history_; }

  // Reads what others saved. True where the text is another one now.
  Result<bool> reload();

  // Of an edit that was made on the text with that fingerprint: one of the last texts seen.
  Result<Saved> edit(const Edit& edit, const std::string& made_on);
  // The same without writing anything.
  Result<EditedText> preview(const Edit& edit, const std::string& made_on);
  Result<Saved> undo();
  Result<Saved> redo();
  // Forgets the last edit, whose words others changed, so that those before it can be undone.
  tl::expected<void, Problems> pass_over() { return history_.pass_over(); }

 private:
  EditedFile(std::string path, std::string text);
  void see(std::string text);
  Result<Saved> save(History::Act act, const Result<EditedText>& edited);

  static constexpr std::size_t most_texts = 64;

  std::string path_;
  std::deque<std::string> texts_;  // the last ones, the newest at the end
  History history_;
};

}  // namespace mullion::edit
