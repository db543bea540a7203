#include "engine/edit/draft.h"

#include <algorithm>
#include <iterator>

namespace mullion::edit {

Draft::Draft(std::string text) : before_(std::move(text)), text_(before_) {
  if (!text_.empty()) pieces_.push_back({text_.size(), 0, false});
}

const Markup& Draft::job() {
  if (!job_) job_ = read_markup(text_);
  return *job_;
}

std::size_t Draft::split(std::size_t at) {
  std::size_t begin = 0, index = 0;
  while (index < pieces_.size() && begin + pieces_[index].length <= at) {
    begin += pieces_[index++].length;
  }
  if (begin == at || index == pieces_.size()) return index;
  Piece head = pieces_[index];
  Piece& tail = pieces_[index];
  head.length = at - begin;
  tail.length -= head.length;
  if (tail.origin) *tail.origin += head.length;
  pieces_.insert(pieces_.begin() + static_cast<std::ptrdiff_t>(index), head);
  return index + 1;
}

Draft::Pieces Draft::cut(Span span) {
  const auto first = static_cast<std::ptrdiff_t>(split(span.begin));
  const auto last = static_cast<std::ptrdiff_t>(split(span.end));
  Pieces out(pieces_.begin() + first, pieces_.begin() + last);
  pieces_.erase(pieces_.begin() + first, pieces_.begin() + last);
  text_.erase(span.begin, span.end - span.begin);
  return out;
}

void Draft::put(std::size_t at, const Pieces& pieces, std::string_view text) {
  const std::size_t index = split(at);
  pieces_.insert(pieces_.begin() + static_cast<std::ptrdiff_t>(index), pieces.begin(),
                 pieces.end());
  text_.insert(at, text);
}

void Draft::replace(Span span, std::string_view with) {
  const std::string text(with);  // it may be a view into what goes
  if (std::string_view(text_).substr(span.begin, span.end - span.begin) == text) return;
  job_.reset();
  cut(span);
  if (!text.empty()) put(span.begin, {{text.size(), std::nullopt, false}}, text);
}

void Draft::move(Span from, std::size_t to, std::string_view ahead, std::string_view old_lead,
                 std::string_view new_lead) {
  const std::string first(ahead);
  const std::string moved = text_.substr(from.begin, from.end - from.begin);
  job_.reset();
  Pieces pieces = cut(from);
  for (Piece& piece : pieces) piece.moved = true;
  std::size_t at = to <= from.begin ? to : to - moved.size();
  const std::size_t begin = at + first.size();
  if (!first.empty()) {
    put(at, {{first.size(), std::nullopt, false}}, first);
  }
  put(begin, pieces, moved);
  reindent({begin, begin + moved.size()}, old_lead, new_lead);
}

void Draft::reindent(Span span, std::string_view old_lead, std::string_view new_lead) {
  const std::string lead(old_lead), other(new_lead);
  if (lead.empty() || other.empty() || lead == other) return;
  std::size_t end = span.end;
  for (std::size_t line = text_.find(lead, span.begin); line < end; line = text_.find(lead, line)) {
    replace({line, line + lead.size()}, other);
    line += other.size();
    end = end + other.size() - lead.size();
  }
}

std::optional<std::size_t> Draft::origin(std::size_t offset) const {
  std::size_t begin = 0;
  for (const Piece& piece : pieces_) {
    if (offset < begin + piece.length) {
      return piece.origin ? std::optional(*piece.origin + offset - begin) : std::nullopt;
    }
    begin += piece.length;
  }
  return std::nullopt;
}

TextChanges Draft::changes() const {
  TextChanges out;
  std::size_t taken = 0, at = 0;  // in the text before, in the text
  std::string inserted;
  const auto flush = [&](std::size_t until) {
    std::string removed = before_.substr(taken, until - taken);
    if (removed != inserted) out.push_back({taken, std::move(removed), inserted});
    inserted.clear();
  };
  for (const Piece& piece : pieces_) {
    if (piece.origin && !piece.moved) {
      flush(*piece.origin);
      taken = *piece.origin + piece.length;
    } else {
      inserted += text_.substr(at, piece.length);
    }
    at += piece.length;
  }
  flush(before_.size());
  return out;
}

}  // namespace mullion::edit
