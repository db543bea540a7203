#include <algorithm>
#include <map>
#include <pugixml.hpp>
#include <sstream>
#include <stdexcept>

#include "engine/edit/markup.h"
#include "engine/edit/text_change.h"
#include "engine/sheets/inventory/inventory.h"
#include "engine/xml/words.h"
#include "engine/xml/write_element.h"

namespace mullion {
namespace {

using edit::Markup;
using edit::Span;
using edit::TextChange;

class StockText {
 public:
  StockText(const std::string& text, const Stock& before)
      : text_(text), before_(before), root_(edit::read_markup(text)), were_(by_id(before)) {}

  std::string with(const Stock& after) {
    are_ = by_id(after);
    for (const Markup& board : root_.children) {
      for (const Markup& piece : board.children) change(piece);
    }
    add_new(after);
    std::stable_sort(changes_.begin(), changes_.end(),
                     [](const TextChange& a, const TextChange& b) { return a.offset < b.offset; });
    auto text = edit::with_changes(text_, changes_);
    if (!text) throw std::logic_error("the changes of a stock file overlap");
    return std::move(*text);
  }

 private:
  using Pieces = std::map<std::string, const StockPiece*>;

  static Pieces by_id(const Stock& stock) {
    Pieces pieces;
    for (const StockPiece& piece : stock.pieces) pieces[piece.id] = &piece;
    return pieces;
  }

  static const StockPiece* found(const Pieces& pieces, const std::string& id) {
    const auto at = pieces.find(id);
    return at == pieces.end() ? nullptr : at->second;
  }

  void replace(Span span, std::string with) {
    changes_.push_back(
        {span.begin, text_.substr(span.begin, span.end - span.begin), std::move(with)});
  }

  void change(const Markup& element) {
    const StockPiece* was = found(were_, element.value("id"));
    const StockPiece* is = found(are_, element.value("id"));
    if (was == nullptr) return;
    if (is == nullptr) {
      replace(whole_line(element.all), "");
      return;
    }
    if (was->on_hand == is->on_hand || !is->on_hand) return;
    const std::string count = std::to_string(*is->on_hand);
    if (const edit::WrittenValue* stated = element.find("on-hand")) {
      replace(stated->raw, count);
    } else {
      const std::size_t end = element.attributes.back().whole.end;
      replace({end, end}, " on-hand=\"" + count + "\"");
    }
  }

  // With the line's end before it and the blanks, where nothing else stands before it on its line.
  Span whole_line(Span element) const {
    const std::size_t begin = text_.find_last_not_of(" \t", element.begin - 1);
    if (begin == std::string::npos || text_[begin] != '\n') return element;
    const bool with_return = begin > 0 && text_[begin - 1] == '\r';
    return {begin - (with_return ? 1 : 0), element.end};
  }

  // The line's end and the blanks before an element; of the usual depth where it begins no line.
  std::string lead_of(Span element, int depth) const {
    const std::size_t begin = whole_line(element).begin;
    if (begin < element.begin) return text_.substr(begin, element.begin - begin);
    return "\n" + std::string(static_cast<std::size_t>(2 * depth), ' ');
  }

  void add_new(const Stock& after) {
    std::map<Board, std::vector<const StockPiece*>> by_board;
    for (const StockPiece& piece : after.pieces) {
      if (found(were_, piece.id) == nullptr) by_board[piece.board].push_back(&piece);
    }
    std::string boards;
    for (const auto& [board, pieces] : by_board) {
      if (const Markup* element = element_of(board)) {
        add_to(*element, pieces);
      } else {
        boards += new_board(board, pieces);
      }
    }
    if (boards.empty()) return;
    add_inside(root_, "stock", boards, root_.children.empty() ? 0 : -1);
  }

  void add_to(const Markup& board, const std::vector<const StockPiece*>& pieces) {
    const std::string lead = board.children.empty() ? lead_of(board.all, 1) + "  "
                                                    : lead_of(board.children.back().all, 2);
    std::string added;
    for (const StockPiece* piece : pieces) added += lead + piece_element(*piece, before_.unit);
    add_inside(board, "board", added, board.children.empty() ? 1 : -1);
  }

  // Behind the last child; where there is none, `depth` is that of the closing tag.
  void add_inside(const Markup& element, const std::string& name, const std::string& added,
                  int depth) {
    if (!element.children.empty()) {
      const std::size_t end = element.children.back().all.end;
      replace({end, end}, added);
    } else if (element.has_one_tag) {
      const std::size_t slash = text_.rfind('/', element.all.end - 1);
      replace({slash, element.all.end},
              ">" + added + lead_of(element.all, depth) + "</" + name + ">");
    } else {
      const std::size_t last = text_.find_last_not_of(edit::blanks, element.inside.end - 1) + 1;
      const std::size_t at = std::max(last, element.inside.begin);
      replace({at, at}, at == element.inside.end ? added + lead_of(element.all, depth) : added);
    }
  }

  std::string new_board(const Board& board, const std::vector<const StockPiece*>& pieces) const {
    pugi::xml_document document;
    ElementWriter out(document.append_child("board"), before_.unit);
    out.attribute("name", board.name);
    if (!board.any_colour) out.colour("colour", board.colour);
    out.length("thickness", board.thickness);
    std::ostringstream text;
    document.print(text, "", pugi::format_raw | pugi::format_no_declaration);
    std::string tag = text.str();
    const std::string lead =
        root_.children.empty() ? "\n  " : lead_of(root_.children.back().all, 1);
    tag.replace(tag.rfind("/>"), 2, ">");
    std::string out_text = lead + tag;
    for (const StockPiece* piece : pieces) {
      out_text += lead + "  " + piece_element(*piece, before_.unit);
    }
    return out_text + lead + "</board>";
  }

  const Markup* element_of(const Board& board) const {
    for (const Markup& element : root_.children) {
      if (element.name == "board" && board_in(element) == board) return &element;
    }
    return nullptr;
  }

  Board board_in(const Markup& element) const {
    Board board;
    board.name = element.value("name");
    board.colour = Layer{}.colour;
    board.any_colour = element.find("colour") == nullptr;
    if (const auto colour = parse_colour(element.value("colour"))) board.colour = *colour;
    board.thickness = Layer{}.thickness;
    if (const auto thickness = parse_length(element.value("thickness"), before_.unit)) {
      board.thickness = *thickness;
    }
    return board;
  }

  const std::string& text_;
  const Stock& before_;
  Markup root_;
  Pieces were_, are_;
  edit::TextChanges changes_;
};

}  // namespace

std::string edited_stock(const std::string& text, const Stock& before, const Stock& after) {
  return StockText(text, before).with(after);
}

}  // namespace mullion
