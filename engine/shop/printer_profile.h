#pragma once

// A printer's profile: the calibration page that it printed, and what was measured on it. Kept as
// XML:
//
//     <printer version="1" name="Shop laser" unit="in" across="7" down="9">
//       <measured across="6.98" down="8 63/64" falling="11.38" rising="11.4"/>
//     </printer>
//
// Lengths without a unit are in the file's unit; what was measured may have decimals. Refused: what
// the job file's reader refuses (see engine/job/read.h), and readings that no printer gives (see
// engine/shop/printer_correction.h).

#include <string>
#include <string_view>

#include "engine/length/format.h"
#include "engine/shop/printer_correction.h"
#include "engine/xml/problem.h"

namespace mullion {

struct PrinterProfile {
  std::string name;
  Unit unit = Unit::inch;
  Length across, down;  // of the rectangle on the calibration page, as drawn
  CalibrationReading measured;
  Correction correction;  // follows from the measures
};

// The rectangle of the calibration page: fits both Letter and A4.
struct CalibrationSides {
  Length across, down;
};
CalibrationSides calibration_sides(Unit unit);

// A length read off a rule: like parse_length, but a decimal that is not a whole number of ticks is
// rounded. The error is one sentence.
tl::expected<Length, std::string> parse_reading(std::string_view text, Unit unit);

Result<PrinterProfile> read_printer_text(std::string_view text, const std::string& file);
Result<PrinterProfile> read_printer(const std::string& path);
std::string write_printer(const PrinterProfile& profile);

}  // namespace mullion
