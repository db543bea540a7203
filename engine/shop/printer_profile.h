#pragma once

// A printer's profile: the calibration page that it printed, and what was measured on it. Kept as
// XML:
//
//     <printer version="1" name="Shop laser" paper="letter" unit="in" across="7" down="9">
//       <measured across="6.98" down="8 63/64" falling="11.38" rising="11.4"/>
//       <measured across="6.98" down="8.985" falling="11.38" rising="11.4"/>
//       <assembled width="40" height="60" across="39 15/16" down="60 1/16" falling="72.1"
//                  rising="72.12" turned="yes"/>
//     </printer>
//
// Each length is measured twice; older profiles have one reading. "assembled" tells of the outline of
// a template that was printed with the profile as it stands above it, put together and measured:
// over so long a way a rule reads finer. Its `falling` diagonal runs from the upper left corner.
// Turned: its sheets lay across.
//
// Lengths without a unit are in the file's unit; what was measured may have decimals. Refused: what
// the job file's reader refuses (see engine/job/read.h), and readings that no printer gives (see
// engine/shop/printer_correction.h).

#include <string>
#include <string_view>
#include <vector>

#include "engine/length/format.h"
#include "engine/shop/printer_correction.h"
#include "engine/xml/problem.h"

namespace mullion {

struct AssembledTemplate {
  Length width, height;  // of the outline, as drawn
  CalibrationReading measured;
  bool turned = false;
};

struct PrinterProfile {
  std::string name;
  std::string paper;  // its name; empty: not said
  Unit unit = Unit::inch;
  Length across, down;                       // of the rectangle on the calibration page, as drawn
  std::vector<CalibrationReading> measured;  // one or two
  std::vector<AssembledTemplate> assembled;
  Correction correction;  // follows from the measures
};

// What follows from a profile's measures. The error is one sentence with advice.
tl::expected<Correction, std::string> correction_of(const PrinterProfile& profile);

// The rectangle of the calibration page on paper of that size: whole inches, or centimetres, with
// room around it. 7 x 9 in on Letter, 170 x 230 mm on A4.
struct CalibrationSides {
  Length across, down;
};
CalibrationSides calibration_sides(Length paper_width, Length paper_height, Unit unit);

// A length read off a rule: like parse_length, but a decimal that is not a whole number of ticks is
// rounded. The error is one sentence.
tl::expected<Length, std::string> parse_reading(std::string_view text, Unit unit);

Result<PrinterProfile> read_printer_text(std::string_view text, const std::string& file);
Result<PrinterProfile> read_printer(const std::string& path);
std::string write_printer(const PrinterProfile& profile);

}  // namespace mullion
