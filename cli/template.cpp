#include "render/template/template.h"

#include <cstdio>
#include <memory>

#include "cli/load.h"
#include "cli/verb.h"

namespace mullion::cli {
namespace {

struct Options {
  std::string job, output;
  TemplateOptions drawing;
};

int make_template(Options options) {
  const auto format = format_of(options.output);
  if (!format) return report_unknown_ending(options.output);
  const Result<Loaded> loaded = load(options.job);
  if (!loaded) return report(loaded.error());
  if (options.drawing.layer > static_cast<int>(loaded->mat.layers.size())) {
    std::fprintf(stderr, "error: found --layer %d; the job has %zu layers\n", options.drawing.layer,
                 loaded->mat.layers.size());
    return bad_usage;
  }
  options.drawing.format = *format;
  const int unwise = report(check_mat(loaded->job, loaded->layout, loaded->mat));
  if (unwise != success) return unwise;
  return write_output(options.output, render_template(loaded->job, loaded->mat, options.drawing));
}

}  // namespace

void add_template(CLI::App& app, Action& action) {
  CLI::App* verb = app.add_subcommand(
      "template", "Draw the full-scale template of the back of each layer, mirrored");
  auto options = std::make_shared<Options>();
  verb->add_option("JOB", options->job, "The job file")->required();
  verb->add_option("-o,--output", options->output, "The file to write: .pdf, .svg or .png")
      ->required();
  verb->add_option("--layer", options->drawing.layer,
                   "Only this layer, counted from 1 at the top; an SVG or PNG holds one")
      ->check(CLI::Range(1, 64));
  verb->add_option("--dpi", options->drawing.png_dpi, "Dots per inch of a PNG")
      ->check(CLI::Range(20, 1200));
  verb->callback([&action, options] { action = [options] { return make_template(*options); }; });
}

}  // namespace mullion::cli
