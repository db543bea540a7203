#include <cstdio>
#include <memory>

#include "cli/answer.h"
#include "cli/known_words.h"
#include "cli/language.h"
#include "cli/verb.h"
#include "engine/cuts/cutter/check.h"
#include "engine/cuts/cutter/profile_file.h"
#include "engine/cuts/sheet/check_text.h"
#include "engine/job/usual.h"
#include "render/cutsheet/test_sheet.h"

namespace mullion::cli {
namespace {

// What can be measured on the test cuts.
struct Measured {
  const char* option;
  std::optional<Length> TestMeasures::*to;
  const char* help;
};
constexpr Measured measured[] = {
    {"--line", &TestMeasures::line, "From the edge at the guide to the cut, at its near end"},
    {"--line-far", &TestMeasures::line_far, "The same at its far end"},
    {"--near-end", &TestMeasures::near_end, "From the arm's edge to the cut's near end"},
    {"--far-end", &TestMeasures::far_end, "From the arm's edge to the cut's far end"},
    {"--mark", &TestMeasures::mark, "Blade past a line where a cut ends, with the mark on it"},
    {"--start-mark", &TestMeasures::start_mark, "The same where a cut starts"},
    {"--corner", &TestMeasures::corner,
     "Cut past the corner on the face where it ends; short of it: below zero"},
    {"--start-corner", &TestMeasures::start_corner, "The same where a cut starts"},
    {"--rail", &TestMeasures::rail,
     "From a line along the rail's edge to the cut, away from the guide; toward it: below zero"},
    {"--piece", &TestMeasures::piece, "Width of the piece cut off at the squaring arm's stop"},
    {"--diagonal-ab", &TestMeasures::diagonal_ab,
     "Of a square cut on this machine, from its corner at edges A and B"},
    {"--diagonal-bc", &TestMeasures::diagonal_bc, "Its other diagonal"},
};

struct Options {
  Locale locale;  // of the test cuts as a PDF
  std::string cutter = "bench", output, thickness;
  std::vector<std::string> measures = std::vector<std::string>(std::size(measured));
  Answer show_answer{"cutter show"}, check_answer{"cutter check"};
};

// The cutter file goes where the user says, else to standard output unless JSON does.
int give_cutter(const Options& options, const CutterProfile& cutter, const Answer& answer,
                const std::string& json) {
  const bool named = !options.output.empty() && options.output != "-";
  if (named) {
    const int written = answer.save(options.output, write_cutter(cutter));
    if (written != success || !answer.is_json()) return written;
  }
  return write_output("-", answer.is_json() ? json : write_cutter(cutter));
}

int show(const Options& options) {
  const Answer& answer = options.show_answer;
  const Result<CutterProfile> cutter = find_cutter(options.cutter);
  if (!cutter) return answer.fail(cutter.error());
  return give_cutter(options, *cutter, answer, cutter_json("cutter show", *cutter));
}

Result<TestMeasures> measures_of(const Options& options, Unit unit) {
  TestMeasures out;
  Problems problems;
  const auto read = [&](const char* option, const std::string& text, std::optional<Length>& to) {
    if (text.empty()) return;
    if (const auto length = parse_length(text, unit)) {
      to = *length;
    } else {
      problems.push_back(option_problem(option, length.error()));
    }
  };
  out.thickness = thickness_of(4, unit);
  if (!options.thickness.empty()) {
    if (const auto read_off = parse_measured(options.thickness, unit)) {
      out.thickness = read_off->length;
    } else {
      problems.push_back(option_problem("--thickness", read_off.error()));
    }
  }
  for (std::size_t i = 0; i < std::size(measured); ++i) {
    read(measured[i].option, options.measures[i], out.*measured[i].to);
  }
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  return out;
}

// The test cuts go where the user says, else to standard output unless JSON does.
int give_test_cuts(const Options& options, const CutterProfile& cutter, Length thickness) {
  const Answer& answer = options.check_answer;
  const bool named = !options.output.empty() && options.output != "-";
  if (named) {
    const std::string ending = ending_of(options.output);
    if (ending != "pdf" && ending != "txt") {
      return answer.fail_option("--output",
                                "found \"" + options.output +
                                    "\" and nothing measured; expected a file that ends "
                                    "in .pdf or .txt for the test cuts");
    }
    const int written = answer.save(
        options.output, ending == "pdf" ? render_test_sheet(cutter, thickness, options.locale)
                                        : test_cut_text(cutter, thickness));
    if (written != success || !answer.is_json()) return written;
  }
  return answer.give([&] { return test_cut_text(cutter, thickness); },
                     [&] { return test_cut_json(cutter, thickness); });
}

int check(const Options& options) {
  const Answer& answer = options.check_answer;
  const Result<CutterProfile> cutter = find_cutter(options.cutter);
  if (!cutter) return answer.fail(cutter.error());
  const Result<TestMeasures> measures = measures_of(options, cutter->scale.unit);
  if (!measures) return answer.fail(measures.error());
  const auto found = measure_up(*cutter, *measures);
  if (!found) {
    return answer.fail(Problem{Severity::error, "usage", found.error(), {}, ""});
  }
  if (found->corrections.empty() && found->turn.empty()) {
    return give_test_cuts(options, *cutter, measures->thickness);
  }
  if (!answer.is_json()) std::fputs(corrections_text(*found).c_str(), stderr);
  return give_cutter(options, found->cutter, answer, corrections_json(*found));
}

}  // namespace

void add_cutter(CommandLine& program) {
  const Verb verb = program.verb("cutter", "Describe a cutter, and measure it up");
  auto options = std::make_shared<Options>();

  const Verb shown = verb.verb("show", "Print a cutter as a file to start from");
  shown
      .argument("CUTTER", Takes::file, options->cutter,
                "bench, plain-bench, metric-bench or a file")
      .known(cutter_names());
  shown.option("-o,--output", Takes::file, options->output, "The cutter file to write");
  options->show_answer.add_option(shown);
  shown.runs([options] { return show(*options); });

  const Verb checked =
      verb.verb("check", "Print the test cuts; with what was measured, write the corrected cutter");
  checked
      .argument("CUTTER", Takes::file, options->cutter,
                "bench, plain-bench, metric-bench or a file")
      .known(cutter_names());
  checked.option("-o,--output", Takes::file, options->output,
                 "The test cuts to write, .pdf or .txt; with what was measured, the corrected "
                 "cutter file");
  checked.option("--thickness", Takes::length, options->thickness,
                 "Of the board (1/16 in or 1.5 mm)");
  for (std::size_t i = 0; i < std::size(measured); ++i) {
    checked.option(measured[i].option, Takes::length, options->measures[i], measured[i].help);
  }
  add_language_option(checked, options->locale);
  options->check_answer.add_option(checked);
  checked.runs([options] { return check(*options); });
}

}  // namespace mullion::cli
