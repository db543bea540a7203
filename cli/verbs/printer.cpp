#include <memory>

#include "cli/answer.h"
#include "cli/language.h"
#include "cli/verb.h"
#include "engine/shop/printer_profile.h"
#include "render/template/calibration_page.h"

namespace mullion::cli {
namespace {

struct Options {
  std::string output, name = "printer", unit = "in";
  std::string across, down, falling, rising;
  Locale locale;
  Answer answer{"printer"};
};

int make_profile(const Options& options, Unit unit) {
  PrinterProfile profile;
  profile.name = options.name;
  profile.unit = unit;
  const CalibrationSides sides = calibration_sides(unit);
  profile.across = sides.across;
  profile.down = sides.down;
  struct Reading {
    const char* option;
    const std::string& text;
    Length& length;
  };
  const Reading readings[] = {{"--across", options.across, profile.measured.across},
                              {"--down", options.down, profile.measured.down},
                              {"--falling", options.falling, profile.measured.falling},
                              {"--rising", options.rising, profile.measured.rising}};
  for (const Reading& reading : readings) {
    if (reading.text.empty())
      return options.answer.fail_option(reading.option, "a profile needs all four lengths");
    const auto length = parse_reading(reading.text, unit);
    if (!length) return options.answer.fail_option(reading.option, length.error());
    reading.length = *length;
  }
  const auto correction =
      correction_from(nominal_reading(profile.across, profile.down), profile.measured);
  if (!correction) return options.answer.fail_job("printer-reading", correction.error());
  profile.correction = *correction;
  const int written = options.answer.save(options.output, write_printer(profile));
  if (written != success || !options.answer.is_json()) return written;
  return write_output("-", printer_json(profile));
}

int printer(const Options& options) {
  const Unit unit = options.unit == "in" ? Unit::inch : Unit::millimetre;
  const std::string ending = ending_of(options.output);
  if (ending == "xml") return make_profile(options, unit);
  if (ending == "pdf") {
    const int written =
        options.answer.save(options.output, render_calibration(unit, options.locale));
    if (written != success || !options.answer.is_json()) return written;
    return write_output("-", outcome_json("printer", {}));
  }
  return options.answer.fail_option(
      "--output", "found the ending \"" + ending +
                      "\"; expected .pdf for the calibration page or .xml for the profile");
}

}  // namespace

void add_printer(CommandLine& program) {
  const Verb verb = program.verb(
      "printer", "Measure a printer: a calibration page (.pdf), then its profile (.xml)");
  auto options = std::make_shared<Options>();
  verb.option("-o,--output", Takes::file, options->output,
              "The calibration page, a .pdf; or the profile, an .xml")
      .required();
  verb.option("--unit", Takes::word, options->unit, "Unit of the page and the readings: in or mm")
      .among({"in", "mm"});
  verb.option("--name", Takes::name, options->name,
              "The printer's name, which every template will say");
  verb.option("--across", Takes::length, options->across, "Measured from A to B");
  verb.option("--down", Takes::length, options->down, "Measured from A to C");
  verb.option("--falling", Takes::length, options->falling, "Measured from A to D");
  verb.option("--rising", Takes::length, options->rising, "Measured from C to B");
  add_language_option(verb, options->locale);
  options->answer.add_option(verb);
  verb.runs([options] { return printer(*options); });
}

}  // namespace mullion::cli
