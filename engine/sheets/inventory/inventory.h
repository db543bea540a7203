#pragma once

// The stock file: the sheets and off-cuts on hand, as XML described in stock.xsd beside this
// header.
//
// Lengths without a unit are in the file's unit; prices are decimals of its currency with up to two
// places. Problems come with line and column. Refused: what the job file's reader refuses (see
// engine/job/read.h), two pieces with one id, a trim that leaves nothing.

#include <string>
#include <string_view>

#include "engine/sheets/stock/stock.h"

namespace mullion {

inline constexpr std::size_t most_stock_pieces = 20'000;
inline constexpr int most_on_hand = 100'000;
inline constexpr int largest_pack = 10'000;
inline constexpr std::int64_t highest_price = 100'000'000;  // hundredths

Result<Stock> read_stock(const std::string& path);
Result<Stock> parse_stock(std::string_view xml, const std::string& file);

// What parse_stock reads back as the same stock.
std::string write_stock(const Stock& stock);

// The text of a stock file, with the least change that makes it another stock: counts on hand are
// changed, elements of pieces that are gone are taken out, and those of new pieces added at the end
// of their board. Comments and all else stay. Pieces in both stocks differ in their count alone.
// `before` is what parse_stock reads of the text.
std::string edited_stock(const std::string& text, const Stock& before, const Stock& after);

// The element of a piece, as <offcut id="c-1" width="16" height="40"/>.
std::string piece_element(const StockPiece& piece, Unit unit);

// Hundredths of "12", "12.5" or "12.50"; nothing for anything else.
std::optional<std::int64_t> parse_price(std::string_view text);

// "12.50 EUR"; without a currency "12.50".
std::string format_price(std::int64_t hundredths, const std::string& currency);

}  // namespace mullion
