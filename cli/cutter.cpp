#include <cstdio>
#include <memory>

#include "cli/load.h"
#include "cli/verb.h"
#include "engine/cutting/cutter/check.h"
#include "engine/cutting/cutter/profile_file.h"
#include "engine/cutting/sheet/check_text.h"
#include "render/cutsheet/test_sheet.h"

namespace mullion::cli {
namespace {

struct Options {
  std::string cutter = "bench", output, thickness, line, near_end, far_end, mark, corner;
};

int show(const Options& options) {
  const Result<CutterProfile> cutter = find_cutter(options.cutter);
  if (!cutter) return report(cutter.error());
  return write_output(options.output.empty() ? "-" : options.output, write_cutter(*cutter));
}

// The measures that were given; nothing after an error was printed.
std::optional<TestMeasures> measures_of(const Options& options, Unit unit) {
  TestMeasures out;
  bool good = true;
  const auto read = [&](const char* option, const std::string& text, std::optional<Length>& to) {
    if (text.empty()) return;
    const auto length = parse_length(text, unit);
    if (length) {
      to = *length;
      return;
    }
    bad_option(option, length.error());
    good = false;
  };
  std::optional<Length> thickness =
      unit == Unit::inch ? sixty_fourths(4) : Length::from_ticks(2400);
  read("--thickness", options.thickness, thickness);
  read("--line", options.line, out.line);
  read("--near-end", options.near_end, out.near_end);
  read("--far-end", options.far_end, out.far_end);
  read("--mark", options.mark, out.mark);
  read("--corner", options.corner, out.corner);
  if (!good) return std::nullopt;
  out.thickness = *thickness;
  return out;
}

int write_test_cuts(const Options& options, const CutterProfile& cutter, Length thickness) {
  const std::string ending = ending_of(options.output);
  if (ending == "pdf") return write_output(options.output, render_test_sheet(cutter, thickness));
  if (options.output.empty() || options.output == "-" || ending == "txt") {
    return write_output(options.output.empty() ? "-" : options.output,
                        test_cut_text(cutter, thickness));
  }
  std::fprintf(stderr,
               "error: --output: found \"%s\" and nothing measured; expected a file that ends in "
               ".pdf or .txt for the test cuts\n",
               options.output.c_str());
  return bad_usage;
}

int check(const Options& options) {
  const Result<CutterProfile> cutter = find_cutter(options.cutter);
  if (!cutter) return report(cutter.error());
  const auto measures = measures_of(options, cutter->scale.unit);
  if (!measures) return bad_usage;
  const auto measured = measure_up(*cutter, *measures);
  if (!measured) return refuse(bad_usage, measured.error());
  if (measured->corrections.empty()) {
    return write_test_cuts(options, *cutter, measures->thickness);
  }
  std::fputs(corrections_text(*measured).c_str(), stderr);
  return write_output(options.output.empty() ? "-" : options.output,
                      write_cutter(measured->cutter));
}

}  // namespace

void add_cutter(CLI::App& app, Action& action) {
  CLI::App* verb = app.add_subcommand("cutter", "Describe a cutter, and measure it up");
  verb->require_subcommand(1);
  auto options = std::make_shared<Options>();

  CLI::App* shown = verb->add_subcommand("show", "Print a cutter as a file to start from");
  shown->add_option("CUTTER", options->cutter, "bench, plain-bench, metric-bench or a file");
  shown->add_option("-o,--output", options->output, "The cutter file to write");
  shown->callback([&action, options] { action = [options] { return show(*options); }; });

  CLI::App* checked = verb->add_subcommand(
      "check", "Print the test cuts; with what was measured, write the corrected cutter");
  checked->add_option("CUTTER", options->cutter, "bench, plain-bench, metric-bench or a file");
  checked->add_option("-o,--output", options->output,
                      "The test cuts to write, .pdf or .txt; with what was measured, the corrected "
                      "cutter file");
  checked->add_option("--thickness", options->thickness, "Of the board (1/16 in or 1.5 mm)");
  checked->add_option("--line", options->line,
                      "From the edge at the guide to the cut, on the back");
  checked->add_option("--near-end", options->near_end, "From the arm's edge to the cut's near end");
  checked->add_option("--far-end", options->far_end, "From the arm's edge to the cut's far end");
  checked->add_option("--mark", options->mark, "Blade past a line, with the mark on it");
  checked->add_option("--corner", options->corner,
                      "Cut past the corner on the face; short of it: below zero");
  checked->callback([&action, options] { action = [options] { return check(*options); }; });
}

}  // namespace mullion::cli
