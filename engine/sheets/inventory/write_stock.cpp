#include <algorithm>
#include <pugixml.hpp>
#include <sstream>

#include "engine/sheets/inventory/inventory.h"
#include "engine/xml/words.h"
#include "engine/xml/write_element.h"

namespace mullion {
namespace {

void write_trim(ElementWriter& out, const Sides& trim) {
  if (trim.left == trim.top && trim.left == trim.right && trim.left == trim.bottom) {
    out.length_unless("trim", trim.left, Length());
    return;
  }
  out.length_unless("trim-left", trim.left, Length());
  out.length_unless("trim-top", trim.top, Length());
  out.length_unless("trim-right", trim.right, Length());
  out.length_unless("trim-bottom", trim.bottom, Length());
}

void write_piece(ElementWriter out, const StockPiece& piece) {
  out.attribute("id", piece.id);
  out.length("width", piece.width);
  out.length("height", piece.height);
  write_trim(out, piece.trim);
  if (piece.price != 0 || piece.stated_price) out.attribute("price", format_price(piece.price, ""));
  out.text("supplier", piece.supplier);
  out.integer_unless("pack", piece.pack, 1);
  if (piece.on_hand && !(piece.offcut && piece.on_hand == 1)) {
    out.integer("on-hand", *piece.on_hand);
  }
}

}  // namespace

std::string piece_element(const StockPiece& piece, Unit unit) {
  pugi::xml_document document;
  const pugi::xml_node node = document.append_child(piece.offcut ? "offcut" : "sheet");
  write_piece({node, unit}, piece);
  std::ostringstream text;
  document.print(text, "", pugi::format_raw | pugi::format_no_declaration);
  return text.str();
}

std::string write_stock(const Stock& stock) {
  FileWriter file("stock", stock.unit);
  ElementWriter& out = file.root();
  out.integer("version", 1);
  out.text("unit", word_for(stock.unit));
  out.text("currency", stock.currency);
  out.integer_unless("offcut-value", stock.offcut_percent, 0);
  std::vector<Board> written;
  for (const StockPiece& first : stock.pieces) {
    if (std::find(written.begin(), written.end(), first.board) != written.end()) continue;
    written.push_back(first.board);
    ElementWriter board = out.child("board");
    board.attribute("name", first.board.name);
    if (!first.board.any_colour) board.colour("colour", first.board.colour);
    board.measured("thickness", first.board.thickness);
    for (const StockPiece& piece : stock.pieces) {
      if (piece.board == first.board) {
        write_piece(board.child(piece.offcut ? "offcut" : "sheet"), piece);
      }
    }
  }
  return file.text();
}

}  // namespace mullion
