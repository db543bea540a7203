#include <cstdio>
#include <memory>

#include "cli/answer.h"
#include "cli/known_words.h"
#include "cli/language.h"
#include "cli/verb.h"
#include "engine/cuts/cutter/check.h"
#include "engine/cuts/cutter/profile_file.h"
#include "engine/cuts/sheet/check_text.h"
#include "render/cutsheet/test_sheet.h"

namespace mullion::cli {
namespace {

struct Options {
  Locale locale;  // of the test cuts as a PDF
  std::string cutter = "bench", output, thickness, line, near_end, far_end, mark, corner;
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
  std::optional<Length> thickness =
      unit == Unit::inch ? sixty_fourths(4) : Length::from_ticks(2400);
  read("--thickness", options.thickness, thickness);
  read("--line", options.line, out.line);
  read("--near-end", options.near_end, out.near_end);
  read("--far-end", options.far_end, out.far_end);
  read("--mark", options.mark, out.mark);
  read("--corner", options.corner, out.corner);
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  out.thickness = *thickness;
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
  const auto measured = measure_up(*cutter, *measures);
  if (!measured) {
    return answer.fail(Problem{Severity::error, "usage", measured.error(), {}, ""});
  }
  if (measured->corrections.empty()) {
    return give_test_cuts(options, *cutter, measures->thickness);
  }
  if (!answer.is_json()) std::fputs(corrections_text(*measured).c_str(), stderr);
  return give_cutter(options, measured->cutter, answer, corrections_json(*measured));
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
  checked.option("--line", Takes::length, options->line,
                 "From the edge at the guide to the cut, on the back");
  checked.option("--near-end", Takes::length, options->near_end,
                 "From the arm's edge to the cut's near end");
  checked.option("--far-end", Takes::length, options->far_end,
                 "From the arm's edge to the cut's far end");
  checked.option("--mark", Takes::length, options->mark, "Blade past a line, with the mark on it");
  checked.option("--corner", Takes::length, options->corner,
                 "Cut past the corner on the face; short of it: below zero");
  add_language_option(checked, options->locale);
  options->check_answer.add_option(checked);
  checked.runs([options] { return check(*options); });
}

}  // namespace mullion::cli
