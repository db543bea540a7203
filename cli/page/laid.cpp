#include "cli/page/laid.h"

#include "engine/cuts/refusal.h"
#include "engine/edit/text_change.h"
#include "engine/job/read.h"
#include "engine/mat/checks.h"

namespace mullion::cli::page {
namespace {

// Problems of a text, so that those that were just made are among them.
constexpr std::size_t most_shown = 200;

void add(Problems& to, Problems from) {
  for (Problem& one : from) to.push_back(std::move(one));
}

void list_outlines(const Node& node, std::vector<std::string>& out) {
  if (const auto* opening = std::get_if<Opening>(&node.what)) {
    if (!opening->shape.file.empty()) out.push_back(opening->shape.file);
    return;
  }
  for (const Node& child : std::get<Group>(node.what).children) list_outlines(child, out);
}

// What may not be read is not drawn either.
bool leads_out(Laid& out, const Surroundings& around) {
  if (!around.may_read) return false;
  for (const std::string& outline : outlines_of(*out.job)) {
    if (around.may_read(outline)) continue;
    out.problems.push_back({Severity::error,
                            "page-outside",
                            around.locale.say("%1 leads out of the opened folder", outline),
                            {},
                            out.job->file});
  }
  return !out.problems.empty();
}

void lay_out_and_check(Laid& out, OpenJob& open, const Surroundings& around) {
  const Locale& locale = around.locale;
  if (leads_out(out, around)) return;
  Result<Layout> layout = open.lay_out(*out.job, locale);
  if (!layout) return add(out.problems, std::move(layout.error()));
  out.layout = std::move(*layout);
  add(out.problems, told_notes(*out.layout, *out.job, locale));
  Result<Mat> mat = build_mat(*out.job, *out.layout, locale);
  if (!mat) return add(out.problems, std::move(mat.error()));
  out.mat = std::move(*mat);
  add(out.problems, check_mat(*out.job, *out.layout, *out.mat, locale));
  out.cuts = around.cutter != nullptr ? cuts_of(*out.mat, *around.cutter) : cuts_of(*out.mat);
  add(out.problems, check_on_cutter(*out.job, *out.layout, *out.cuts, locale));
}

}  // namespace

std::shared_ptr<Laid> lay(std::string text, const std::string& file, OpenJob& open,
                          const Surroundings& around) {
  auto out = std::make_shared<Laid>();
  out->fingerprint = edit::fingerprint(text);
  Result<Job> job = parse_job(text, file, Need::arrangement, most_shown);
  const bool is_arranged_job = job.has_value();
  if (!job) {  // pictures alone are a job to begin with, if that is all that is missing
    Result<Job> begun = parse_job(text, file, Need::pictures, most_shown);
    if (begun && !is_arranged(*begun)) {
      out->problems.push_back({Severity::note,
                               "page-not-arranged",
                               around.locale.say("the pictures have no arrangement yet"),
                               {},
                               file});
      out->job = std::move(*begun);
    } else {
      out->problems = std::move(job.error());
      if (begun) out->job = std::move(*begun);
    }
  } else {
    out->job = std::move(*job);
  }
  out->text = std::move(text);
  if (is_arranged_job) lay_out_and_check(*out, open, around);
  return out;
}

std::vector<std::string> outlines_of(const Job& job) {
  std::vector<std::string> out;
  list_outlines(job.arrangement, out);
  return out;
}

void find_remedies(Laid& laid, const Locale& locale) {
  if (laid.problems.empty() || laid.problems.front().code != "layout-conflict") return;
  const auto conflicts = conflicts_of(*laid.job, locale);
  for (const layout::ToldConflict& conflict : conflicts) {
    laid.concerns.push_back(concern_of(*laid.job, conflict.parts));
  }
  laid.remedies = remedies_for(laid.text, *laid.job, conflicts, locale);
}

}  // namespace mullion::cli::page
