#include "render/template/template.h"

#include <cstdio>
#include <memory>

#include "cli/known_words.h"
#include "cli/language.h"
#include "cli/load.h"
#include "cli/under_mats.h"
#include "cli/verb.h"
#include "cli/verbs/paper_names.h"

namespace mullion::cli {
namespace {

struct Options {
  std::string job, output, paper = "board", unprintable, printer, kerf, cutter;
  UnderMats under_mats;
  TemplateOptions drawing;
};

// The options that need the job's unit, or a file.
int complete(Options& options, const Scale& scale) {
  TemplateOptions& drawing = options.drawing;
  if (options.paper != "board") {
    const auto sheet = paper::parse_sheet_size(options.paper, scale.unit);
    if (!sheet) return bad_option("--paper", sheet.error());
    drawing.sheet = *sheet;
  }
  if (!options.unprintable.empty()) {
    const auto margin = parse_length(options.unprintable, scale.unit);
    if (!margin) return bad_option("--unprintable", margin.error());
    if (*margin < Length() || *margin > inches(4)) {
      return bad_option("--unprintable", "expected 0 to 4 in");
    }
    drawing.unprintable = *margin;
  }
  if (!options.kerf.empty()) {
    const auto kerf = parse_reading(options.kerf, scale.unit);
    if (!kerf) return bad_option("--kerf", kerf.error());
    if (*kerf < Length() || *kerf > inches(1)) return bad_option("--kerf", "expected 0 to 1 in");
    drawing.kerf = *kerf;
  }
  if (options.printer.empty()) return success;
  auto profile = read_printer(options.printer);
  if (!profile) return report(profile.error());
  drawing.printer = std::move(*profile);
  return success;
}

int make_template(Options options) {
  const bool dxf = ending_of(options.output) == "dxf";
  const auto format = dxf ? paper::Format::pdf : format_of(options.output);
  if (!format) return report_unknown_ending(options.output);
  const Result<Loaded> loaded = load(options.job);
  if (!loaded) return report(loaded.error());
  options.drawing.format = *format;
  if (const int wrong = complete(options, loaded->job.scale); wrong != success) return wrong;
  const int unwise = report(check_mat(loaded->job, loaded->layout, loaded->mat));
  if (unwise != success) return unwise;
  const Result<CutterProfile> cutter = cutter_for(options.cutter, loaded->job.scale.unit);
  if (!cutter) return report(cutter.error());
  const auto cutting = cut_options(options.under_mats, loaded->job.scale.unit);
  if (!cutting) return bad_option("--trim", cutting.error());
  const Cuts cuts = cuts_of(loaded->mat, *cutter, *cutting);
  const auto drawn =
      dxf ? render_dxf(cuts, options.drawing) : render_template(loaded->job, cuts, options.drawing);
  if (!drawn) {
    report(drawn.error());
    return bad_usage;
  }
  return write_output(options.output, *drawn);
}

}  // namespace

void add_template(CommandLine& program) {
  const Verb verb =
      program.verb("template", "Draw the full-scale template of the back of each layer, mirrored");
  auto options = std::make_shared<Options>();
  verb.argument("JOB", Takes::job_file, options->job, "The job file").required();
  verb.option("-o,--output", Takes::file, options->output,
              "The file to write: .pdf, .svg or .png; or .dxf, the cut lines alone")
      .required();
  verb.option("--layer", options->drawing.layer,
              "Only this layer, counted from 1 at the top; an SVG or PNG holds one")
      .between(1, 64);
  verb.option("--cutter", Takes::file, options->cutter,
              "The cutter whose over-cuts are drawn: bench, plain-bench, metric-bench or a cutter "
              "file; by the job's unit where not given")
      .known(cutter_names());
  add_under_mat_options(verb, options->under_mats);
  verb.option("--paper", Takes::word, options->paper,
              "board: a page of the board's size; or sheets to be joined: letter, legal, "
              "tabloid, ansi-c to ansi-e, a4 to a0, roll-17, roll-24, roll-36, roll-44, or a "
              "size such as \"13 x 19 in\"")
      .known(paper_names());
  verb.option("--unprintable", Takes::length, options->unprintable,
              "Edge of a sheet that the printer leaves white (1/4 in)");
  verb.flag("--butt", options->drawing.butted,
            "Sheets are cut on both sides of a join, not laid over one another");
  verb.flag("--corners", options->drawing.corners_only,
            "Small pieces for the corners alone, to be located from the board's edges");
  verb.flag("--overlaid", options->drawing.overlaid, "All layers in one drawing, a colour each");
  verb.flag("--plot", options->drawing.plot_only,
            "Hairlines of the cut lines and nothing else, for a plotter or laser cutter");
  verb.option("--kerf", Takes::length, options->kerf,
              "Width that the plotter's tool takes away, for --plot and .dxf");
  verb.option("--printer", Takes::file, options->printer,
              "A printer's profile, to undo its faults");
  add_language_option(verb, options->drawing.locale);
  verb.option("--dpi", options->drawing.png_dpi, "Dots per inch of a PNG").between(20, 1200);
  verb.runs([options] { return make_template(*options); });
}

}  // namespace mullion::cli
