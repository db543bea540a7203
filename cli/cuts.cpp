#include <cstdio>
#include <map>
#include <memory>

#include "cli/load.h"
#include "cli/verb.h"
#include "engine/cutting/cutter/profile_file.h"
#include "engine/cutting/sheet/json.h"
#include "engine/cutting/sheet/text.h"
#include "render/cutsheet/cutsheet.h"

namespace mullion::cli {
namespace {

struct Options {
  std::string job, output = "-", cutter, trim, way;
  int quantity = 0;
  bool separate = false;
};

const std::map<std::string, Way> ways = {
    {"pencil", Way::pencilled}, {"one-stop", Way::one_stop}, {"two-stops", Way::two_stops}};

Result<CutterProfile> cutter_for(const Options& options, const Job& job) {
  if (!options.cutter.empty()) return find_cutter(options.cutter);
  return job.scale.unit == Unit::inch ? default_cutter() : *generic_cutter("metric-bench");
}

int write_plan(const Options& options, const CuttingPlan& plan, const std::string& date) {
  const std::string ending = ending_of(options.output);
  if (ending == "json") return write_output(options.output, plan_to_json(plan));
  if (ending == "pdf") return write_output(options.output, render_cutsheet(plan, date));
  if (options.output == "-" || ending == "txt") {
    return write_output(options.output, plan_to_text(plan));
  }
  return bad_option("--output", "expected a file that ends in .pdf, .txt or .json");
}

int make_cuts(const Options& options) {
  const Result<Loaded> loaded = load(options.job);
  if (!loaded) return report(loaded.error());
  const int unwise = report(check_mat(loaded->job, loaded->layout, loaded->mat));
  if (unwise != success) return unwise;
  const Result<CutterProfile> cutter = cutter_for(options, loaded->job);
  if (!cutter) return report(cutter.error());

  PlanOptions wanted;
  wanted.quantity = options.quantity > 0 ? options.quantity : loaded->job.quantity;
  wanted.stacked = !options.separate;
  if (!options.way.empty()) wanted.way = ways.at(options.way);
  if (!options.trim.empty()) {
    const auto trim = parse_length(options.trim, loaded->job.scale.unit);
    if (!trim) return bad_option("--trim", trim.error());
    wanted.trim = *trim;
  } else if (loaded->job.scale.unit != Unit::inch) {
    wanted.trim = millimetres(3);
  }
  Result<CuttingPlan> plan = plan_cutting(loaded->mat, *cutter, wanted);
  if (!plan) return report(plan.error());
  plan->reference = loaded->job.reference;
  plan->title = loaded->job.title;
  return write_plan(options, *plan, loaded->job.date);
}

}  // namespace

void add_cuts(CLI::App& app, Action& action) {
  CLI::App* verb = app.add_subcommand(
      "cuts", "Plan the cuts: settings, stops, turns and order for a hand-operated cutter");
  auto options = std::make_shared<Options>();
  verb->add_option("JOB", options->job, "The job file")->required();
  verb->add_option("-o,--output", options->output,
                   "The file to write: .pdf, .txt or .json; text to the terminal where not given");
  verb->add_option("--cutter", options->cutter,
                   "bench, plain-bench, metric-bench or a cutter file; by the job's unit where not "
                   "given");
  verb->add_option("--quantity", options->quantity, "Mats alike; the job's where not given")
      ->check(CLI::Range(1, 100000));
  verb->add_option("--way", options->way, "pencil, one-stop or two-stops; the quickest else")
      ->check(CLI::IsMember({"pencil", "one-stop", "two-stops"}));
  verb->add_flag("--separate", options->separate,
                 "Cut each under-mat by itself, not taped behind the top mat");
  verb->add_option("--trim", options->trim,
                   "By how much a taped under-mat is smaller on each side (1/8 in or 3 mm)");
  verb->callback([&action, options] { action = [options] { return make_cuts(*options); }; });
}

}  // namespace mullion::cli
