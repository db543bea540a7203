#include <cstdio>
#include <memory>

#include "cli/answer.h"
#include "cli/job_argument.h"
#include "cli/known_words.h"
#include "cli/language.h"
#include "cli/under_mats.h"
#include "cli/verb.h"
#include "engine/cuts/cutter/profile_file.h"
#include "engine/cuts/sheet/json.h"
#include "engine/cuts/sheet/run_json.h"
#include "engine/cuts/sheet/run_text.h"
#include "engine/cuts/sheet/text.h"
#include "render/bench/bench.h"
#include "render/cutsheet/cutsheet.h"

namespace mullion::cli {
namespace {

struct Options {
  std::vector<std::string> jobs;
  std::string output = "-", cutter, way;
  int quantity = 0;
  bool marks = false;  // the lines to draw alone
  UnderMats under_mats;
  Locale locale;  // of a PDF or page
  Answer answer{"cuts"};
};

std::vector<std::string> way_words() {
  std::vector<std::string> out;
  for (const Way way : all_ways) out.push_back(word_of(way));
  return out;
}

Problems checks_of(const std::vector<OrderedJob>& jobs) {
  Problems out;
  for (const OrderedJob& job : jobs) {
    const Loaded& loaded = job.loaded;
    const Problems found = check_mat(loaded.job, loaded.layout, loaded.mat);
    out.insert(out.end(), found.begin(), found.end());
  }
  return out;
}

tl::expected<PlanOptions, std::string> plan_options(const Options& options, Unit unit) {
  PlanOptions out;
  const auto under_mats = cut_options(options.under_mats, unit);
  if (!under_mats) return tl::unexpected(under_mats.error());
  static_cast<CutOptions&>(out) = *under_mats;
  for (const Way way : all_ways) {
    if (options.way == word_of(way)) out.way = way;
  }
  if (options.marks) out.way = Way::pencilled;
  return out;
}

// A plan in its forms; `answer` is that of --json.
struct Forms {
  std::function<std::string()> json, pdf, page, text, answer;
};

int write_by_ending(const Options& options, const Forms& forms) {
  const std::string& path = options.output;
  const std::string ending = ending_of(path);
  const Answer& answer = options.answer;
  if (path != "-" && ending != "json" && ending != "pdf" && ending != "html" && ending != "txt") {
    return answer.fail_option("--output",
                              "expected a file that ends in .pdf, .html, .txt or .json");
  }
  if (ending == "html" && options.marks) {
    return answer.fail_option("--marks", "expected a file that ends in .pdf, .txt or .json");
  }
  if (path != "-") {
    const int status = answer.save(path, ending == "json"   ? forms.json()
                                         : ending == "pdf"  ? forms.pdf()
                                         : ending == "html" ? forms.page()
                                                            : forms.text());
    if (status != success || !answer.is_json()) return status;
  }
  return answer.give(forms.text, forms.answer);
}

int write_plan(const Options& options, const OrderedJob& order, const Problems& checks,
               const CutterProfile& cutter, PlanOptions wanted) {
  const Job& job = order.loaded.job;
  wanted.quantity = order.quantity;
  Result<CuttingPlan> plan = plan_cutting(order.loaded.mat, cutter, wanted);
  if (!plan) return options.answer.fail(plan.error());
  plan->reference = job.reference;
  plan->title = job.title;
  return write_by_ending(
      options, {[&] { return plan_to_json(*plan); },
                [&] {
                  return options.marks ? render_marking_sheet(*plan, job.date, options.locale)
                                       : render_cutsheet(*plan, job.date, options.locale);
                },
                [&] { return render_bench_page(*plan, options.locale); },
                [&] { return options.marks ? marks_to_text(*plan) : plan_to_text(*plan); },
                [&] {
                  return cuts_json(*plan, {success, checks});
                }});
}

int write_run(const Options& options, std::vector<OrderedJob> orders, const Problems& checks,
              const CutterProfile& cutter, const PlanOptions& wanted) {
  const std::string date = orders.front().loaded.job.date;
  std::vector<RunJob> jobs;
  jobs.reserve(orders.size());
  for (OrderedJob& order : orders) {
    jobs.push_back(
        {order.order, order.loaded.job.title, std::move(order.loaded.mat), order.quantity});
  }
  const Result<CuttingRun> run = plan_run(jobs, cutter, wanted);
  if (!run) return options.answer.fail(run.error());
  return write_by_ending(options, {[&] { return run_to_json(*run); },
                                   [&] { return render_run_sheet(*run, date, options.locale); },
                                   [&] { return render_bench_page(*run, options.locale); },
                                   [&] { return run_to_text(*run); },
                                   [&] {
                                     return cuts_json(*run, {success, checks});
                                   }});
}

int make_cuts(const Options& options) {
  const Answer& answer = options.answer;
  std::vector<JobArgument> arguments;
  for (const std::string& text : options.jobs) {
    const auto argument = job_argument(text);
    if (!argument) return answer.fail_option("JOB", argument.error());
    arguments.push_back(*argument);
  }
  if (options.quantity > 0 && arguments.size() > 1) {
    return answer.fail_option("--quantity", "expected one job; for several write job.xml*40");
  }
  if (options.quantity > 0) arguments.front().quantity = options.quantity;
  Result<std::vector<OrderedJob>> orders = load_orders(arguments);
  if (!orders) return answer.fail(orders.error());
  const Problems checks = checks_of(*orders);
  if (status_of(checks) != success) return answer.fail(checks);
  if (!answer.is_json()) report(checks);
  const Job& first = orders->front().loaded.job;
  const Result<CutterProfile> cutter = cutter_for(options.cutter, first.scale.unit);
  if (!cutter) return answer.fail(cutter.error());
  const auto wanted = plan_options(options, first.scale.unit);
  if (!wanted) return answer.fail_option("--trim", wanted.error());
  if (options.marks && orders->size() > 1) {
    return answer.fail_option("--marks", "expected one job");
  }
  if (orders->size() == 1) return write_plan(options, orders->front(), checks, *cutter, *wanted);
  return write_run(options, std::move(*orders), checks, *cutter, *wanted);
}

}  // namespace

void add_cuts(CommandLine& program) {
  const Verb verb = program.verb(
      "cuts", "Plan the cuts: settings, stops, turns and order for a hand-operated cutter");
  auto options = std::make_shared<Options>();
  verb.argument("JOB", Takes::job_file, options->jobs,
                "The job file; several are cut as one run. job.xml*40 is forty mats of a job")
      .required();
  verb.option(
      "-o,--output", Takes::file, options->output,
      "The file to write: .pdf, .html (a page for a tablet at the bench), .txt or .json; text to "
      "the terminal where not given");
  verb.option("--cutter", Takes::file, options->cutter,
              "bench, plain-bench, metric-bench or a cutter file; by the job's unit where not "
              "given")
      .known(cutter_names());
  verb.option("--quantity", options->quantity,
              "Mats alike of the one job; the job's where not given")
      .between(1, most_mats);
  verb.option("--way", Takes::word, options->way,
              "How to work: pencil, guide-lines, template, one-stop, two-stops, stop-blocks or "
              "gauges; what the cutter's file prefers else, or what costs least in time and error")
      .among(way_words());
  verb.flag("--marks", options->marks,
            "Only the lines to pencil on the backs, each as its distance from an edge");
  add_language_option(verb, options->locale);
  add_under_mat_options(verb, options->under_mats);
  options->answer.add_option(verb);
  verb.runs([options] { return make_cuts(*options); });
}

}  // namespace mullion::cli
