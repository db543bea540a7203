#include "render/sheetplan/scan_code.h"

#include <zint.h>

#include <memory>
#include <stdexcept>

namespace mullion {

std::vector<std::vector<bool>> scan_code(const std::string& text) {
  const std::unique_ptr<zint_symbol, void (*)(zint_symbol*)> symbol(ZBarcode_Create(),
                                                                    ZBarcode_Delete);
  if (!symbol) throw std::runtime_error("not enough memory for a code");
  symbol->symbology = BARCODE_QRCODE;
  symbol->input_mode = UNICODE_MODE;
  const int result =
      ZBarcode_Encode(symbol.get(), reinterpret_cast<const unsigned char*>(text.data()),
                      static_cast<int>(text.size()));
  if (result >= ZINT_ERROR) {
    throw std::runtime_error("cannot make a code of \"" + text + "\": " + symbol->errtxt);
  }
  constexpr int bits = 8;
  std::vector<std::vector<bool>> rows(static_cast<std::size_t>(symbol->rows));
  for (int y = 0; y < symbol->rows; ++y) {
    for (int x = 0; x < symbol->width; ++x) {
      const bool dark = (symbol->encoded_data[y][x / bits] >> (x % bits)) & 1;
      rows[static_cast<std::size_t>(y)].push_back(dark);
    }
  }
  return rows;
}

}  // namespace mullion
