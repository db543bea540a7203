#include <memory>

#include "cli/answer.h"
#include "cli/language.h"
#include "cli/verb.h"
#include "cli/verbs/paper_names.h"
#include "engine/shop/printer_profile.h"
#include "render/template/calibration_page.h"

namespace mullion::cli {
namespace {

struct Options {
  std::string output, name = "printer", unit = "in", paper, from, assembled;
  std::vector<std::string> across, down, falling, rising;
  bool turned = false;
  Locale locale;
  Answer answer{"printer"};
};

// The readings that were given of each length, the first of each in the first; a problem where a
// length has not as many as it should.
Result<std::vector<CalibrationReading>> readings_of(const Options& options, Unit unit,
                                                    std::size_t least, std::size_t most) {
  struct Named {
    const char* option;
    const std::vector<std::string>& texts;
    Length CalibrationReading::*length;
  };
  std::vector<CalibrationReading> readings(options.across.size());
  for (const Named& named : {Named{"--across", options.across, &CalibrationReading::across},
                             Named{"--down", options.down, &CalibrationReading::down},
                             Named{"--falling", options.falling, &CalibrationReading::falling},
                             Named{"--rising", options.rising, &CalibrationReading::rising}}) {
    const std::size_t count = named.texts.size();
    if (count < least || count > most || count != readings.size()) {
      return tl::unexpected(Problems{option_problem(
          named.option, most == 1 ? "expected all four lengths, measured on the template"
                                  : "expected all four lengths, each measured twice, as in "
                                    "--across 7.01 7.02")});
    }
    for (std::size_t i = 0; i < count; ++i) {
      const auto length = parse_reading(named.texts[i], unit);
      if (!length) return tl::unexpected(Problems{option_problem(named.option, length.error())});
      readings[i].*named.length = *length;
    }
  }
  return readings;
}

int save(const Options& options, PrinterProfile profile) {
  const auto correction = correction_of(profile);
  if (!correction) return options.answer.fail_job("printer-reading", correction.error());
  profile.correction = *correction;
  const int written = options.answer.save(options.output, write_printer(profile));
  if (written != success) return written;
  if (options.answer.is_json()) return write_output("-", printer_json(profile));
  if (options.output == "-") return success;
  return write_output("-", "wrote " + options.output + ": " + profile.name + " prints " +
                               words_for(profile.correction) + "\n");
}

int make_profile(const Options& options, const paper::SheetSize& paper, Unit unit) {
  PrinterProfile profile;
  profile.name = options.name;
  profile.paper = paper.name;
  profile.unit = unit;
  const CalibrationSides sides = calibration_sides(paper, unit);
  profile.across = sides.across;
  profile.down = sides.down;
  auto readings = readings_of(options, unit, 2, 2);
  if (!readings) return options.answer.fail(readings.error());
  profile.measured = std::move(*readings);
  return save(options, std::move(profile));
}

// "40 x 60": a template of that size was measured.
int feed_back(const Options& options) {
  if (options.from.empty()) {
    return options.answer.fail_option("--assembled",
                                      "expected --from too, the profile it was printed with");
  }
  auto profile = read_printer(options.from);
  if (!profile) return options.answer.fail(profile.error());
  const auto size = paper::parse_sheet_size(options.assembled, profile->unit);
  if (!size || size->roll) {
    return options.answer.fail_option(
        "--assembled", "found \"" + options.assembled +
                           "\"; expected the size of the outline as drawn, such as \"40 x 60\"");
  }
  const auto readings = readings_of(options, profile->unit, 1, 1);
  if (!readings) return options.answer.fail(readings.error());
  profile->assembled.push_back({size->width, size->height, readings->front(), options.turned});
  return save(options, std::move(*profile));
}

int draw_page(const Options& options, const paper::SheetSize& paper, Unit unit) {
  const auto page = render_calibration(paper, unit, options.locale);
  if (!page) return options.answer.fail_option("--paper", page.error());
  const int written = options.answer.save(options.output, *page);
  if (written != success || !options.answer.is_json()) return written;
  return write_output("-", outcome_json("printer", {}));
}

int printer(const Options& options) {
  const Unit unit = options.unit == "in" ? Unit::inch : Unit::millimetre;
  const std::string ending = ending_of(options.output);
  if (ending == "xml" && !options.assembled.empty()) return feed_back(options);
  const auto paper = options.paper.empty() ? calibration_paper(unit)
                                           : paper::parse_sheet_size(options.paper, unit);
  if (!paper) return options.answer.fail_option("--paper", paper.error());
  if (ending == "xml") return make_profile(options, *paper, unit);
  if (ending == "pdf") return draw_page(options, *paper, unit);
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
  verb.option("--paper", Takes::word, options->paper,
              "The paper that is measured, as template has them (letter, or a4 for mm)")
      .known(paper_names());
  verb.option("--across", Takes::length, options->across, "Measured from A to B, twice");
  verb.option("--down", Takes::length, options->down, "Measured from A to C, twice");
  verb.option("--falling", Takes::length, options->falling, "Measured from A to D, twice");
  verb.option("--rising", Takes::length, options->rising, "Measured from C to B, twice");
  verb.option("--from", Takes::file, options->from,
              "A profile that is made finer by an assembled template");
  verb.option("--assembled", Takes::word, options->assembled,
              "The outline's size of a template that was printed with that profile and put "
              "together, such as \"40 x 60\"; with its four lengths as measured, once");
  verb.flag("--turned", options->turned, "Its sheets lay across");
  add_language_option(verb, options->locale);
  options->answer.add_option(verb);
  verb.runs([options] { return printer(*options); });
}

}  // namespace mullion::cli
