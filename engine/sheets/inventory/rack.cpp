#include "engine/sheets/inventory/rack.h"

#include <algorithm>

#include "engine/sheets/inventory/inventory.h"
#include "engine/xml/reading.h"
#include "engine/xml/words.h"

namespace mullion {
namespace {

tl::unexpected<Problems> rack_problem(const std::string& code, const std::string& message) {
  return tl::unexpected(Problems{{Severity::error, code, message, {}, {}}});
}

tl::unexpected<Problems> unknown_code(const Stock& stock, const Ledger& ledger,
                                      const std::string& code) {
  std::string message = "found the code " + mullion::quoted(code);
  if (std::count(code.begin(), code.end(), '/') == 2) {
    return rack_problem(
        "rack-unknown-code",
        message + ", which is that of a blank; expected that of a piece on the rack");
  }
  std::vector<std::string_view> ids;
  for (const StockPiece& piece : stock.pieces) ids.push_back(piece.id);
  for (const auto& [id, piece] : ledger.last) ids.push_back(id);
  message += "; expected the id of a piece that is or was in the stock";
  const std::string_view near = near_name(code, ids);
  if (!near.empty()) message += "; did you mean " + mullion::quoted(near) + "?";
  return rack_problem("rack-unknown-code", message);
}

}  // namespace

Result<RackMove> move_piece(const Stock& stock, const Ledger& ledger, const std::string& code,
                            Act act) {
  RackMove move{stock, {}};
  std::vector<StockPiece>& pieces = move.stock.pieces;
  auto piece = std::find_if(pieces.begin(), pieces.end(),
                            [&](const StockPiece& one) { return one.id == code; });
  const bool returns = act == Act::returned;
  if (piece == pieces.end()) {
    const auto last = ledger.last.find(code);
    if (last == ledger.last.end()) return unknown_code(stock, ledger, code);
    if (!returns) {
      return rack_problem("rack-none-left", "none of " + mullion::quoted(code) + " is on the rack");
    }
    pieces.push_back(last->second);
    piece = std::prev(pieces.end());
    piece->on_hand = 0;
  }
  if (!piece->on_hand) {
    return rack_problem("rack-not-counted",
                        "sheets of " + mullion::quoted(code) +
                            " are not counted; expected on-hand beside it in the stock file");
  }
  if (!returns && *piece->on_hand == 0) {
    return rack_problem("rack-none-left", "none of " + mullion::quoted(code) + " is on the rack");
  }
  if (returns && *piece->on_hand == most_on_hand) {
    return rack_problem("rack-too-many", "found more than " + std::to_string(most_on_hand) +
                                             " of " + mullion::quoted(code) +
                                             "; that is the limit");
  }
  *piece->on_hand += returns ? 1 : -1;
  move.piece = *piece;
  if (piece->offcut && *piece->on_hand == 0) pieces.erase(piece);
  return move;
}

}  // namespace mullion
