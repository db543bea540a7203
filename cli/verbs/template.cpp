#include "render/template/template.h"

#include <array>
#include <cstdio>
#include <memory>
#include <sstream>

#include "cli/known_words.h"
#include "cli/language.h"
#include "cli/load.h"
#include "cli/under_mats.h"
#include "cli/verb.h"
#include "cli/verbs/paper_names.h"
#include "cli/verbs/print_command.h"
#include "engine/xml/words.h"

namespace mullion::cli {
namespace {

struct Options {
  std::string job, output, paper = "board", unprintable, printer, kerf, lead_in, lead_over, cutter;
  UnderMats under_mats;
  TemplateOptions drawing;
};

// "1/4", of every side; or "bottom=1/2, left=3 mm" of those that are named.
int read_margins(const std::string& text, Unit unit, Sides& margins) {
  constexpr std::array<std::string_view, 4> names{"left", "top", "right", "bottom"};
  std::istringstream parts(text);
  for (std::string part; std::getline(parts, part, ',');) {
    const std::size_t equals = part.find('=');
    const auto length =
        parse_length(equals == std::string::npos ? part : part.substr(equals + 1), unit);
    if (!length) return bad_option("--unprintable", length.error());
    if (*length < Length() || *length > inches(4)) {
      return bad_option("--unprintable", "expected 0 to 4 in");
    }
    const std::string name = equals == std::string::npos ? "" : tidy(part.substr(0, equals));
    bool known = false;
    for (std::size_t i = 0; i < names.size(); ++i) {
      if (!name.empty() && name != names[i]) continue;
      margins.*every_side[i] = *length;
      known = true;
    }
    if (!known) {
      return bad_option("--unprintable",
                        "found the side \"" + name + "\"; expected left, top, right or bottom");
    }
  }
  return success;
}

// The options that need the job's unit, or a file.
int complete(Options& options, const Scale& scale) {
  TemplateOptions& drawing = options.drawing;
  if (options.paper != "board") {
    const auto sheet = paper::parse_sheet_size(options.paper, scale.unit);
    if (!sheet) return bad_option("--paper", sheet.error());
    drawing.sheet = *sheet;
  }
  if (const int wrong = read_margins(options.unprintable, scale.unit, drawing.unprintable);
      wrong != success) {
    return wrong;
  }
  struct Measure {
    const char* option;
    const std::string& text;
    Length most;
    const char* expected;
    Length& length;
  };
  for (const Measure& measure :
       {Measure{"--kerf", options.kerf, inches(1), "0 to 1 in", drawing.kerf},
        {"--lead-in", options.lead_in, inches(2), "0 to 2 in", drawing.lead_in},
        {"--over-cut", options.lead_over, inches(2), "0 to 2 in", drawing.lead_over}}) {
    if (measure.text.empty()) continue;
    const auto length = parse_reading(measure.text, scale.unit);
    if (!length) return bad_option(measure.option, length.error());
    if (*length < Length() || *length > measure.most) {
      return bad_option(measure.option, std::string("expected ") + measure.expected);
    }
    measure.length = *length;
  }
  if (options.printer.empty()) return success;
  auto profile = read_printer(options.printer);
  if (!profile) return report(profile.error());
  drawing.printer = std::move(*profile);
  const std::string& measured = drawing.printer->paper;
  if (drawing.sheet && !measured.empty() && measured != drawing.sheet->name) {
    report(Problems{
        {Severity::note,
         "printer-other-paper",
         "the printer was measured on " + measured + ", and this is " + drawing.sheet->name,
         {},
         {}}});
  }
  return success;
}

// "mat.png" and layer 2: "mat-2.png".
std::string name_for(const std::string& output, int layer) {
  const std::size_t ending = output.rfind('.');
  return output.substr(0, ending) + "-" + std::to_string(layer) + output.substr(ending);
}

// What was written, and how a PDF is printed; nothing where the pages went to standard output.
void tell(const std::vector<std::string>& files, const std::vector<paper::Page>& pages,
          const Options& options) {
  if (options.output == "-") return;
  std::string told;
  for (const std::string& file : files) told += (told.empty() ? "" : ", ") + file;
  std::printf("wrote %s\n", told.c_str());
  if (pages.empty() || options.drawing.format != paper::Format::pdf) return;
  for (const std::string& command : print_commands(options.output, pages)) {
    std::printf("print: %s\n", command.c_str());
  }
}

int write_pages(const Options& options, const Job& job, const Cuts& cuts) {
  const auto pages = template_pages(job, cuts, options.drawing);
  if (!pages) {
    report(pages.error());
    return bad_usage;
  }
  const int written = write_output(options.output, write_template(job, *pages, options.drawing));
  if (written == success) tell({options.output}, *pages, options);
  return written;
}

// A PNG holds one layer: a file each.
int write_layers(Options options, const Job& job, const Cuts& cuts) {
  std::vector<std::string> files;
  for (const BoardCuts& board : cuts.layers) {
    options.drawing.layer = board.layer->number;
    const auto drawn = render_template(job, cuts, options.drawing);
    if (!drawn) {
      report(drawn.error());
      return bad_usage;
    }
    files.push_back(name_for(options.output, options.drawing.layer));
    const int written = write_output(files.back(), *drawn);
    if (written != success) return written;
  }
  tell(files, {}, options);
  return success;
}

int write_plot(const Options& options, const Job& job, const Cuts& cuts) {
  const auto drawn = render_dxf(job, cuts, options.drawing);
  if (!drawn) {
    report(drawn.error());
    return bad_usage;
  }
  const int written = write_output(options.output, *drawn);
  if (written == success) tell({options.output}, {}, options);
  return written;
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
  if (dxf) return write_plot(options, loaded->job, cuts);
  const bool one_each = *format == paper::Format::png && options.drawing.layer == 0 &&
                        !options.drawing.overlaid && cuts.layers.size() > 1;
  return one_each ? write_layers(std::move(options), loaded->job, cuts)
                  : write_pages(options, loaded->job, cuts);
}

}  // namespace

void add_template(CommandLine& program) {
  const Verb verb =
      program.verb("template", "Draw the full-scale template of the back of each layer, mirrored");
  auto options = std::make_shared<Options>();
  verb.argument("JOB", Takes::job_file, options->job, "The job file").required();
  verb.option("-o,--output", Takes::file, options->output,
              "The file to write: .pdf or .svg, with all layers; .png, a file for each layer; or "
              ".dxf, the cut lines alone")
      .required();
  verb.option("--layer", options->drawing.layer, "Only this layer, counted from 1 at the top")
      .between(1, 64);
  verb.option("--cutter", Takes::file, options->cutter,
              "The cutter whose over-cuts are drawn: bench, plain-bench, metric-bench or a cutter "
              "file; by the job's unit where not given")
      .known(cutter_names());
  add_under_mat_options(verb, options->under_mats);
  verb.option("--paper", Takes::word, options->paper,
              "board: a page of the board's size; or sheets to be joined: letter, legal, "
              "tabloid, ansi-c to ansi-e, arch-a to arch-e, a4 to a0, b4 to b1, a size such as "
              "\"13 x 19 in\", or a roll such as 24in")
      .known(paper_names());
  verb.option("--unprintable", Takes::length, options->unprintable,
              "Edge of a sheet that the printer leaves white (1/4 in), of all sides or by side: "
              "\"bottom=1/2, left=1/8\"");
  verb.flag("--fewest", options->drawing.fewest,
            "As few sheets as will do, though joins then run close by corners");
  verb.flag("--by-layer", options->drawing.by_layer,
            "Sheets for each layer, where one set would show all");
  verb.flag("--butt", options->drawing.butted,
            "Sheets are cut on both sides of a join, not laid over one another");
  verb.flag("--corners", options->drawing.corners_only,
            "Small pieces for the corners alone, to be located from the board's edges");
  verb.flag("--sticks", options->drawing.sticks,
            "Marking sticks: strips with every line, to be ticked off along the board's edges");
  verb.flag("--light", options->drawing.light,
            "For a projector: light lines on black, with a grid and a measured rectangle");
  verb.flag("--overlaid", options->drawing.overlaid, "All layers in one drawing, a colour each");
  verb.flag("--plot", options->drawing.plot_only,
            "Hairlines of the cut lines and nothing else, for a plotter or laser cutter");
  verb.option("--kerf", Takes::length, options->kerf,
              "Width that the plotter's tool takes away, for --plot and .dxf");
  verb.flag("--front", options->drawing.from_front,
            "For --plot and .dxf: seen from the front, with the lines of the face");
  verb.option("--lead-in", Takes::length, options->lead_in,
              "For --plot and .dxf: how far off in the waste the tool begins");
  verb.option("--over-cut", Takes::length, options->lead_over,
              "For --plot and .dxf: how far the tool runs over the place where it began");
  verb.option("--printer", Takes::file, options->printer,
              "A printer's profile, to undo its faults");
  add_language_option(verb, options->drawing.locale);
  verb.option("--dpi", options->drawing.png_dpi, "Dots per inch of a PNG").between(20, 1200);
  verb.runs([options] { return make_template(*options); });
}

}  // namespace mullion::cli
