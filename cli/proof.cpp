#include <cstdio>
#include <memory>
#include <vector>

#include "cli/load.h"
#include "cli/verb.h"
#include "render/proof/sheet.h"

namespace mullion::cli {
namespace {

struct Options {
  std::string job, output;
  double png_dpi = 150, photo_dpi = 0;
  bool glare = false;
};

int make_proof(const Options& options) {
  const auto format = format_of(options.output);
  if (!format) return report_unknown_ending(options.output);
  const Result<Loaded> loaded = load(options.job);
  if (!loaded) return report(loaded.error());
  const auto photographs = proof::open_photographs(loaded->job);
  if (!photographs) return report(photographs.error());
  const int unwise = report(check_mat(loaded->job, loaded->layout, loaded->mat));
  if (unwise != success) return unwise;
  proof::Sheet sheet;
  sheet.choices.push_back({{&loaded->job, &loaded->mat, &*photographs}, {}});
  sheet.style.glare = options.glare;
  if (options.photo_dpi > 0) sheet.style.resolution = {options.photo_dpi, false};
  const auto bytes = proof::render_sheet(sheet, *format, options.png_dpi);
  if (!bytes) return report(bytes.error());
  return write_output(options.output, *bytes);
}

}  // namespace

void add_proof(CLI::App& app, Action& action) {
  CLI::App* verb =
      app.add_subcommand("proof", "Draw the page that the customer looks at and signs");
  auto options = std::make_shared<Options>();
  verb->add_option("JOB", options->job, "The job file")->required();
  verb->add_option("-o,--output", options->output, "The file to write: .pdf, .svg or .png")
      ->required();
  verb->add_option("--dpi", options->png_dpi, "Dots per inch of a PNG")
      ->check(CLI::Range(20, 1200));
  verb->add_option("--photo-dpi", options->photo_dpi,
                   "Sample photographs down to this many dots per inch of the page; without it, "
                   "JPEG data goes into PDF and SVG files as it is")
      ->check(CLI::Range(36, 1200));
  verb->add_flag("--glare", options->glare, "Show the light on the glass");
  verb->callback([&action, options] { action = [options] { return make_proof(*options); }; });
}

}  // namespace mullion::cli
