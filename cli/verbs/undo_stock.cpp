#include "cli/verbs/undo_stock.h"

#include "engine/sheets/inventory/ledger_text.h"
#include "engine/sheets/inventory/stock_file.h"

namespace mullion::cli {

int undo_last(const std::string& stock, std::string_view verb, const Answer& answer) {
  Result<StockFile> file = StockFile::open(stock);
  if (!file) return answer.fail(file.error());
  const Result<LedgerLine> undone = file->undo();
  if (!undone) return answer.fail(undone.error());
  return answer.give([&] { return "undone: " + line_text(*undone, file->stock().unit) + "\n"; },
                     [&] {
                       return rack_json(verb, file->stock(), {*undone}, {success, {}});
                     });
}

}  // namespace mullion::cli
