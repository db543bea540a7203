#include "engine/sheets/inventory/inventory.h"
#include "engine/sheets/inventory/journal.h"
#include "engine/sheets/inventory/ledger.h"
#include "tests/fuzz/fuzz.h"

// A stock file that was read is written and read as the same stock; a journal that was read is
// written as it was.
int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace mullion;
  const std::string_view text = fuzz::text_of(data, size);
  if (const auto journal = parse_journal(text)) fuzz::must(format_journal(*journal) == text);
  const Result<Stock> stock = parse_stock(text, "fuzz.xml");
  if (!stock) {
    fuzz::must(!stock.error().empty());
    return 0;
  }
  const std::string written = write_stock(*stock);
  const Result<Stock> again = parse_stock(written, "fuzz.xml");
  fuzz::must(again.has_value());
  fuzz::must(write_stock(*again) == written);
  fuzz::must(edited_stock(std::string(text), *stock, *stock) == text);
  Stock fewer = *stock;
  for (StockPiece& piece : fewer.pieces) {
    if (piece.on_hand.value_or(0) > 0) --*piece.on_hand;
  }
  std::erase_if(fewer.pieces,
                [](const StockPiece& piece) { return piece.offcut && piece.on_hand == 0; });
  const Result<Stock> edited =
      parse_stock(edited_stock(std::string(text), *stock, fewer), "fuzz.xml");
  fuzz::must(edited && changes_between(edited->pieces, fewer.pieces).empty());
  return 0;
}
