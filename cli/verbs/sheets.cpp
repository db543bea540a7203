#include <unistd.h>

#include <algorithm>
#include <atomic>
#include <csignal>
#include <cstdio>
#include <memory>
#include <optional>

#include "cli/answer.h"
#include "cli/file_kind.h"
#include "cli/job_argument.h"
#include "cli/known_words.h"
#include "cli/language.h"
#include "cli/under_mats.h"
#include "cli/verb.h"
#include "cli/verbs/label_sheet.h"
#include "cli/verbs/undo_stock.h"
#include "engine/cuts/cutter/profile_file.h"
#include "engine/cuts/refusal.h"
#include "engine/report/report.h"
#include "engine/sheets/inventory/stock_file.h"
#include "engine/sheets/plan/whole_mats.h"
#include "engine/sheets/report/report.h"
#include "render/cutsheet/cutsheet.h"
#include "render/sheetplan/labels.h"
#include "render/sheetplan/sheet_pages.h"

namespace mullion::cli {
namespace {

struct Options {
  std::vector<std::string> jobs, outputs;
  std::string stock, run_sheet, labels, rack_labels;
  LabelSheetWords label_sheet;
  bool commit = false, incomplete = false, again = false, spoiled = false, undo = false;
  bool no_fallouts = false;
  UnderMats under_mats;
  std::string cutter, kerf, longest_cut, widest_board, farthest_stop, keep_shorter, keep_longer;
  int effort = 1;
  Locale locale;  // of what is a PDF
  Answer answer{"sheets"};
};

// Set by an interrupt (Ctrl-C): the best plan so far is then finished and written.
std::atomic<bool> interrupted{false};

Result<std::vector<BatchJob>> load_jobs(const std::vector<JobArgument>& arguments) {
  Result<std::vector<OrderedJob>> orders = load_orders(arguments);
  if (!orders) return tl::unexpected(std::move(orders.error()));
  std::vector<BatchJob> jobs;
  for (OrderedJob& order : *orders) {
    jobs.push_back({order.order, order.loaded.job.title, order.quantity, order.loaded.job.scale,
                    std::move(order.loaded.mat)});
  }
  return jobs;
}

class LengthOptions {
 public:
  explicit LengthOptions(Unit unit) : unit_(unit) {}

  std::optional<Length> read(const char* name, const std::string& text) {
    if (text.empty()) return std::nullopt;
    const auto length = parse_length(text, unit_);
    const std::string fault = !length              ? length.error()
                              : *length < Length() ? "expected zero or more"
                                                   : "";
    if (fault.empty()) return *length;
    problems.push_back(option_problem(name, fault));
    return std::nullopt;
  }

  Problems problems;

 private:
  Unit unit_;
};

// One line that is written over again and again, and wiped when it is no longer of use.
class ProgressLine {
 public:
  void show(const SheetPlanProgress& progress) {
    const int percent = static_cast<int>(100 * progress.nesting.done);
    const auto now = std::pair(progress.board_number, percent);
    if (now == shown_) return;
    shown_ = now;
    constexpr int longest_name = 24;
    std::fprintf(
        stderr, "\r\33[Kboard %zu of %zu, %.*s: %d %%  (Ctrl-C: take the best plan so far)",
        progress.board_number, progress.boards, longest_name, progress.board.c_str(), percent);
  }
  void wipe() {
    if (shown_) std::fputs("\r\33[K", stderr);
    shown_.reset();
  }

 private:
  std::optional<std::pair<std::size_t, int>> shown_;
};

// The first Ctrl-C ends the search for better plans, the next one the program.
void end_early(int) {
  interrupted = true;
  std::signal(SIGINT, SIG_DFL);
}

std::vector<Board> boards_of(const std::vector<BlankOrder>& blanks) {
  std::vector<Board> boards;
  for (const BlankOrder& blank : blanks) {
    if (std::find(boards.begin(), boards.end(), blank.board) == boards.end()) {
      boards.push_back(blank.board);
    }
  }
  return boards;
}

std::string joined_orders(const std::vector<BatchJob>& jobs) {
  std::string text;
  for (const BatchJob& job : jobs) text += (text.empty() ? "" : ", ") + job.order;
  return text;
}

int write_one(const std::string& path, const SheetReport& report, const std::vector<BatchJob>& jobs,
              const Locale& locale) {
  const std::string ending = ending_of(path);
  if (ending == "json") return write_output(path, json_of(report));
  if (ending == "txt" || path == "-") return write_output(path, text_of(report));
  SheetPageOptions pages;
  pages.title = joined_orders(jobs);
  pages.page = paper::usual_page(report.plan.scale.unit, locale);
  pages.locale = locale;
  return write_output(path, render_sheet_pages(report, pages));
}

int write_run_sheet(const std::string& path, const std::vector<WorkPart>& work, const Scale& scale,
                    const Locale& locale) {
  const std::string ending = ending_of(path);
  if (ending == "json") return write_output(path, work_to_json(work));
  if (ending == "txt" || path == "-") return write_output(path, work_to_text(work));
  return write_output(path, render_work_sheet(work, scale, {}, locale));
}

// A pattern such as *.xml names the shop's own files too.
Problem not_a_job(const std::string& path, const std::string& kind) {
  const std::string hint = kind == "stock" ? "; --stock " + path + " plans from it" : "";
  return {Severity::note,
          "sheets-not-a-job",
          path + " is a " + kind + " file, not a job: left out" + hint,
          {},
          {}};
}

int check_usage(const Options& options) {
  std::vector<std::string> paths = options.outputs;
  if (!options.run_sheet.empty()) paths.push_back(options.run_sheet);
  for (const std::string& path : paths) {
    const std::string ending = ending_of(path);
    if (path == "-" && options.answer.is_json()) {
      return options.answer.fail_option("--output", "found - and --json; expected a file");
    }
    if (path == "-" || ending == "pdf" || ending == "json" || ending == "txt") continue;
    return options.answer.fail_option(
        "--output", "found \"" + path + "\"; expected an ending of .pdf, .json or .txt");
  }
  if (options.undo && options.stock.empty()) {
    return options.answer.fail_option("--undo", "expected --stock, the file to change");
  }
  if (options.undo && (options.commit || !options.jobs.empty())) {
    return options.answer.fail_option("--undo", "expected neither a job nor --commit beside it");
  }
  if (options.jobs.empty() && !options.undo) {
    return options.answer.fail_option("JOB", "expected at least one job file");
  }
  if (options.commit && options.stock.empty()) {
    return options.answer.fail_option("--commit", "expected --stock, the file to change");
  }
  for (const auto& [name, given] :
       {std::pair("--incomplete", options.incomplete), std::pair("--again", options.again),
        std::pair("--spoiled", options.spoiled)}) {
    if (given && !options.commit) {
      return options.answer.fail_option(name, "expected --commit beside it");
    }
  }
  return success;
}

Result<Stock> stock_for(const Options& options, const std::optional<StockFile>& file,
                        const std::vector<BlankOrder>& blanks, Unit unit) {
  if (file) return file->stock();
  if (!options.stock.empty()) return look_at_stock(options.stock);
  return common_stock(boards_of(blanks), unit);
}

// Orders that would be cut a second time.
Problems cut_before(const StockFile& file, const std::vector<BatchJob>& jobs,
                    const Options& options) {
  Problems problems;
  if (options.again || options.spoiled) return problems;
  for (const BatchJob& job : jobs) {
    const LedgerLine* before = cut_before(file.ledger(), job.order, job.quantity);
    if (before == nullptr) continue;
    const auto mats = std::find_if(before->orders.begin(), before->orders.end(),
                                   [&](const CutMats& cut) { return cut.order == job.order; });
    problems.push_back({Severity::error,
                        "stock-cut-before",
                        "order " + job.order + " was cut before: " + std::to_string(mats->mats) +
                            " of " + std::to_string(mats->of) + " on " +
                            before->time.substr(0, before->time.find('T')) + " (line " +
                            std::to_string(before->number) +
                            " of the ledger); --again cuts more of it, --spoiled cuts it anew",
                        {},
                        {}});
  }
  return problems;
}

Deed deed_of(const SheetPlan& plan, const Stock& stock, const std::vector<BatchJob>& jobs,
             const Options& options) {
  Deed deed;
  deed.act = options.spoiled ? Act::spoiled : Act::cut;
  deed.bought = bought_for(plan, stock);
  for (const BatchJob& job : jobs) {
    const auto left = std::find_if(plan.left_out.begin(), plan.left_out.end(),
                                   [&](const LeftOut& one) { return one.order == job.order; });
    const int mats = job.quantity - (left == plan.left_out.end() ? 0 : left->mats);
    if (mats > 0) deed.orders.push_back({job.order, mats, job.quantity});
  }
  return deed;
}

// Each order that is not made whole.
Problems left_out_problems(const SheetPlan& plan) {
  Problems problems;
  for (const LeftOut& left : plan.left_out) {
    problems.push_back({Severity::error,
                        "sheets-incomplete",
                        "not made: " + left_out_text(left, plan.scale),
                        {},
                        {}});
  }
  return problems;
}

// The cutter's profile, and what was stated beside it.
SheetCutter cutter_of(const CutterProfile& profile, const Options& options,
                      LengthOptions& lengths) {
  SheetCutter cutter = sheet_cutter(profile);
  const auto read = [&](const char* name, const std::string& text, auto& to) {
    if (const auto length = lengths.read(name, text)) to = *length;
  };
  read("--kerf", options.kerf, cutter.limits.kerf);
  read("--longest-cut", options.longest_cut, cutter.limits.longest_cut);
  read("--widest-board", options.widest_board, cutter.limits.widest_board);
  read("--farthest-stop", options.farthest_stop, cutter.farthest_stop);
  return cutter;
}

// Blanks that the trim leaves too small for their windows.
Problems impossible_blanks(const std::vector<BatchJob>& jobs, const CutOptions& cutting) {
  Problems problems;
  for (const BatchJob& job : jobs) {
    const Cuts cuts = cuts_of(job.mat, cutting);
    for (const Refusal& refusal : cuts.refusals) {
      if (refusal.why != Refusal::Why::trim) continue;
      problems.push_back(problem_of(refusal, cuts));
      problems.back().message = job.order + ": " + problems.back().message;
    }
  }
  return problems;
}

// A mat that the cutter cannot bevel may still have its blank cut there: the run sheet alone needs
// every mat to be possible.
void warn_of(const Problems& problems, Problems& notes) {
  for (Problem note : problems) {
    note.severity = Severity::warning;
    notes.push_back(std::move(note));
  }
}

int write_labels(const SheetReport& report, const Options& options) {
  const LabelSheet& sheet = label_sheet(options.label_sheet, report.plan.scale.unit);
  LabelOptions label_options;
  label_options.skip = options.label_sheet.skip;
  label_options.scale = report.plan.scale;
  label_options.locale = options.locale;
  if (!options.labels.empty()) {
    const int status =
        write_output(options.labels, render_labels(labels_of(report.plan), sheet, label_options));
    if (status != success) return status;
  }
  if (options.rack_labels.empty()) return success;
  const auto labels = rack_labels(kept_offcuts(report.plan, report.stock, report.keep), report.plan,
                                  options.locale);
  return write_output(options.rack_labels, render_rack_labels(labels, sheet, label_options));
}

int plan_and_write(const Options& options, const std::vector<BatchJob>& jobs, Problems notes) {
  const Answer& answer = options.answer;
  const Scale& scale = jobs.front().scale;
  const Result<CutterProfile> profile = cutter_for(options.cutter, scale.unit);
  if (!profile) return answer.fail(profile.error());
  LengthOptions lengths(scale.unit);
  const SheetCutter cutter = cutter_of(*profile, options, lengths);
  KeepRule keep;
  keep.shorter = lengths.read("--keep-shorter", options.keep_shorter).value_or(keep.shorter);
  keep.longer = lengths.read("--keep-longer", options.keep_longer).value_or(keep.longer);
  const auto under_mats = cut_options(options.under_mats, scale.unit);
  PlanOptions cutting;
  if (under_mats) {
    static_cast<CutOptions&>(cutting) = *under_mats;
  } else {
    lengths.problems.push_back(option_problem("--trim", under_mats.error()));
  }
  if (!lengths.problems.empty()) return answer.fail(lengths.problems);
  if (const Problems lacking = impossible_blanks(jobs, cutting); !lacking.empty()) {
    return answer.fail(lacking);
  }
  std::optional<StockFile> file;
  if (options.commit) {
    Result<StockFile> opened = StockFile::open(options.stock);
    if (!opened) return answer.fail(opened.error());
    file = std::move(*opened);
  }
  const std::vector<BlankOrder> blanks = blanks_of(jobs, cutting);
  const Result<Stock> given = stock_for(options, file, blanks, scale.unit);
  if (!given) return answer.fail(given.error());
  if (file) {
    const Problems before = cut_before(*file, jobs, options);
    if (!before.empty()) return answer.fail(before);
  }
  const Stock stock = with_offcut_values(with_known_prices(*given), keep);
  notes.insert(notes.end(), stock.remarks.begin(), stock.remarks.end());

  SheetPlanOptions plan_options;
  plan_options.reuse_fallouts = !options.no_fallouts;
  plan_options.keep = keep;
  plan_options.effort *= options.effort;
  plan_options.stop = &interrupted;
  ProgressLine progress;
  if (::isatty(STDERR_FILENO)) {
    plan_options.report = [&progress](const SheetPlanProgress& now) { progress.show(now); };
  }
  std::signal(SIGINT, end_early);
  const Result<SheetPlan> plan = plan_whole_mats(blanks, stock, cutter, scale, plan_options);
  std::signal(SIGINT, SIG_DFL);
  progress.wipe();
  if (!plan) return answer.fail(plan.error());
  const Result<std::vector<WorkPart>> work = order_of_work(jobs, *plan, *profile, cutting);
  if (!work && !options.run_sheet.empty()) return answer.fail(work.error());
  if (!work) warn_of(work.error(), notes);
  notes.insert(notes.end(), plan->notes.begin(), plan->notes.end());
  const Problems left_out = left_out_problems(*plan);
  notes.insert(notes.end(), left_out.begin(), left_out.end());
  const bool takes = file && (left_out.empty() || options.incomplete);
  if (file && !takes) {
    notes.push_back({Severity::note,
                     "sheets-incomplete",
                     "nothing was taken from " + options.stock +
                         "; --incomplete takes what is cut for the mats that are made",
                     {},
                     {}});
  }
  if (!answer.is_json()) report(notes);
  const int outcome = left_out.empty() ? success : bad_job;

  plan_options.report = {};
  const std::optional<SheetPlan> rest =
      left_out.empty() ? std::nullopt : plan_missing(*plan, stock, cutter, plan_options);
  const SheetReport sheet_report{
      *plan, stock, cutter, keep, work ? &*work : nullptr, rest ? &*rest : nullptr};
  for (const std::string& path : options.outputs) {
    if (const int status = write_one(path, sheet_report, jobs, options.locale); status != success)
      return status;
  }
  if (!options.run_sheet.empty()) {
    const int status = write_run_sheet(options.run_sheet, *work, scale, options.locale);
    if (status != success) return status;
  }
  if (const int status = write_labels(sheet_report, options); status != success) return status;
  if (takes) {
    const Result<void> committed =
        file->commit(stock_after(*plan, file->stock(), keep), deed_of(*plan, stock, jobs, options));
    if (!committed) return answer.fail(committed.error());
  }
  if (!answer.is_json()) return outcome;
  const int written = write_output("-", sheets_json(sheet_report, {outcome, notes}));
  return written == success ? outcome : written;
}

int make_sheets(Options options) {
  if (const int status = check_usage(options); status != success) return status;
  if (options.undo) return undo_last(options.stock, "sheets", options.answer);
  if (options.outputs.empty() && !options.answer.is_json()) options.outputs.emplace_back("-");
  std::vector<JobArgument> arguments;
  Problems notes;
  for (const std::string& text : options.jobs) {
    const auto argument = job_argument(text);
    if (!argument) return options.answer.fail_option("JOB", argument.error());
    if (const std::string kind = kind_of_file(argument->path); !kind.empty() && kind != "job") {
      if (argument->path != options.stock && argument->path != options.cutter) {
        notes.push_back(not_a_job(argument->path, kind));
      }
      continue;
    }
    arguments.push_back(*argument);
  }
  if (arguments.empty()) {
    notes.push_back(option_problem("JOB", "found no job file; expected at least one"));
    return options.answer.fail(notes);
  }
  const Result<std::vector<BatchJob>> jobs = load_jobs(arguments);
  if (!jobs) return options.answer.fail(jobs.error());
  return plan_and_write(options, *jobs, std::move(notes));
}

}  // namespace

void add_sheets(CommandLine& program) {
  const Verb verb = program.verb(
      "sheets", "Plan how the blanks of one or many jobs are cut out of sheets of board");
  auto options = std::make_shared<Options>();
  verb.argument("JOB", Takes::job_file, options->jobs,
                "The job files; job.xml*40 is forty mats of a job. The shop's own files among "
                "them are left out");
  verb.option("-o,--output", Takes::file, options->outputs,
              "What to write: .pdf (a page for each sheet), .json or .txt; may be given more "
              "than once; the text goes to standard output where nothing is given");
  verb.option("--stock", Takes::file, options->stock,
              "The stock file: sheets and off-cuts with sizes, prices and how many there are; "
              "without it, the common sizes of every board and the least area");
  verb.flag("--commit", options->commit,
            "Take what is cut from the stock file, and add the off-cuts and fallouts that are "
            "kept; the ledger beside it (STOCK.ledger) tells what was done");
  verb.flag("--undo", options->undo,
            "Undo what was last done to the stock file, by its ledger; without a job");
  verb.flag("--again", options->again,
            "With --commit: cut more mats of an order that was cut before");
  verb.flag("--spoiled", options->spoiled,
            "With --commit: these mats were spoiled and are cut anew");
  verb.flag("--incomplete", options->incomplete,
            "With --commit: take what is cut although the boards on hand do not suffice for every "
            "mat; the run ends with status 1 all the same");
  verb.flag("--no-fallouts", options->no_fallouts, "Do not cut blanks from fallouts");
  verb.option(
      "--run-sheet", Takes::file, options->run_sheet,
      "A .pdf, .txt or .json to write: the order of work from sheets to finished mats; which "
      "are cut together, at which settings, and which fallouts are set aside");
  add_language_option(verb, options->locale);
  add_under_mat_options(verb, options->under_mats);
  verb.option("--labels", Takes::file, options->labels,
              "A PDF of labels to write, one for each blank");
  verb.option("--rack-labels", Takes::file, options->rack_labels,
              "A PDF of labels to write, one for each off-cut and fallout that is kept");
  add_label_sheet_options(verb, options->label_sheet);
  verb.option("--cutter", Takes::file, options->cutter,
              "bench, plain-bench, metric-bench or a cutter file; by the job's unit where not "
              "given. The options below replace what it says")
      .known(cutter_names());
  verb.option("--kerf", Takes::length, options->kerf,
              "Width that each cut takes; a knife takes none");
  verb.option("--longest-cut", Takes::length, options->longest_cut,
              "The longest cut of the cutter");
  verb.option("--widest-board", Takes::length, options->widest_board,
              "The widest board that can be laid across the rail");
  verb.option("--farthest-stop", Takes::length, options->farthest_stop,
              "The longest part that the squaring arm's stop measures off");
  verb.option("--keep-shorter", Takes::length, options->keep_shorter,
              "The shorter side of the smallest off-cut to keep (8 in)");
  verb.option("--keep-longer", Takes::length, options->keep_longer,
              "The longer side of the smallest off-cut to keep (10 in)");
  verb.option("--effort", options->effort, "How many times the usual effort to spend")
      .between(1, 1000);
  options->answer.add_option(verb);
  verb.runs([options] { return make_sheets(*options); });
}

}  // namespace mullion::cli
