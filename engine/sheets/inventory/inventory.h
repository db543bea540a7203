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
inline constexpr std::int64_t highest_price = 100'000'000;  // hundredths

Result<Stock> read_stock(const std::string& path);
Result<Stock> parse_stock(std::string_view xml, const std::string& file);

// What parse_stock reads back as the same stock. Comments of the file it came from are lost.
std::string write_stock(const Stock& stock);

// "12.50 EUR"; without a currency "12.50".
std::string format_price(std::int64_t hundredths, const std::string& currency);

}  // namespace mullion
