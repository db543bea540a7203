#pragma once

// A text while it is edited: what is kept of the text before, what moved within it, and what is
// new. Offsets are those of the text as it is now.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/edit/markup.h"
#include "engine/edit/text_change.h"

namespace mullion::edit {

class Draft {
 public:
  explicit Draft(std::string text);
  Draft(const Draft&) = delete;
  Draft& operator=(const Draft&) = delete;

  const std::string& before() const { return before_; }
  const std::string& text() const { return text_; }
  // Good until the next change.
  const Markup& job();

  void replace(Span span, std::string_view with);
  void insert(std::size_t at, std::string_view text) { replace({at, at}, text); }
  void remove(Span span) { replace(span, {}); }
  // `to` is not within `from`. `ahead` comes before it. Its lines are indented as in reindent.
  void move(Span from, std::size_t to, std::string_view ahead, std::string_view old_lead,
            std::string_view new_lead);
  // In the lines of the span `old_lead` (a line's end and the blanks after it) becomes `new_lead`,
  // where neither is empty.
  void reindent(Span span, std::string_view old_lead, std::string_view new_lead);

  // Where the byte stood in the text before; nothing if it is new.
  std::optional<std::size_t> origin(std::size_t offset) const;

  TextChanges changes() const;

 private:
  struct Piece {
    std::size_t length = 0;
    std::optional<std::size_t> origin;
    bool moved = false;
  };
  using Pieces = std::vector<Piece>;

  std::size_t split(std::size_t at);  // index of the piece that begins there
  Pieces cut(Span span);
  void put(std::size_t at, const Pieces& pieces, std::string_view text);

  std::string before_, text_;
  Pieces pieces_;
  std::optional<Markup> job_;
};

}  // namespace mullion::edit
