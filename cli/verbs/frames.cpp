#include <memory>

#include "cli/answer.h"
#include "cli/verb.h"
#include "engine/edit/frame.h"
#include "engine/job/read.h"
#include "engine/shop/stock_sizes.h"
#include "engine/shop/wished_borders.h"

namespace mullion::cli {
namespace {

struct Options {
  std::string job, sizes, border;
  std::size_t most = 6;
  Answer answer{"frames"};
};

std::string frames_text(const std::vector<FrameFit>& fits, const Job& job) {
  const Scale& scale = job.scale;
  std::string out;
  for (const FrameFit& fit : fits) {
    const edit::Rabbet rabbet = edit::rabbet_of(fit, job);
    out += "mat " + describe(fit.width, scale) + " x " + describe(fit.height, scale) + ", rabbet " +
           describe(rabbet.width, scale) + " x " + describe(rabbet.height, scale) +
           ": borders left " + describe(fit.borders.left, scale) + ", top " +
           describe(fit.borders.top, scale) + ", right " + describe(fit.borders.right, scale) +
           ", bottom " + describe(fit.borders.bottom, scale) + "\n";
  }
  return out;
}

Result<Sides> wished(const Options& options, const Job& job) {
  if (options.border.empty()) return wished_borders(job);
  const auto border = parse_length(options.border, job.scale.unit);
  if (border && *border >= Length()) return Sides{*border, *border, *border, *border};
  const std::string why = border ? "less than nothing" : border.error();
  return tl::unexpected(Problems{option_problem("--border", why)});
}

int list_frames(const Options& options) {
  const Answer& answer = options.answer;
  const Result<Job> job = read_job(options.job, Need::pictures);
  if (!job) return answer.fail(job.error());
  std::vector<StockSize> sizes = common_frame_sizes(job->scale.unit);
  if (!options.sizes.empty()) {
    auto own = read_frame_sizes(options.sizes);
    if (!own) return answer.fail(own.error());
    sizes = std::move(*own);
  }
  const Result<Sides> least = wished(options, *job);
  if (!least) return answer.fail(least.error());
  const auto fits = fitting_frames(*job, sizes, *least, options.most);
  if (!fits) return answer.fail(fits.error());
  return answer.give([&] { return frames_text(*fits, *job); },
                     [&] { return frames_json(*fits, *least, *job); });
}

}  // namespace

void add_frames(CommandLine& program) {
  const Verb verb = program.verb(
      "frames",
      "List the smallest frames on the shelf that a job fits: the mat's size, the rabbet's, and "
      "the borders there");
  auto options = std::make_shared<Options>();
  verb.argument("JOB", Takes::job_file, options->job, "The job file").required();
  verb.option("--sizes", Takes::file, options->sizes, "The shop's own list of frame sizes");
  verb.option("--border", Takes::length, options->border,
              "The least border; where not given the job's own, else 2 in or 5 cm");
  verb.option("--most", options->most, "How many sizes to list").between(1, 100).shows_usual();
  options->answer.add_option(verb);
  verb.runs([options] { return list_frames(*options); });
}

}  // namespace mullion::cli
