#include "engine/length/format.h"
#include "tests/fuzz/fuzz.h"

// A length that was read is within the range, and is read back from how it is written.
int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace mullion;
  for (const Unit unit : {Unit::inch, Unit::millimetre, Unit::centimetre}) {
    const auto length = parse_length(fuzz::text_of(data, size), unit);
    if (!length) {
      fuzz::must(!length.error().empty());
      continue;
    }
    fuzz::must(-longest_input <= *length && *length <= longest_input);
    fuzz::must(parse_length(format_exact(*length, unit), unit) == *length);
  }
  return 0;
}
