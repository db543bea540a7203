#include <cstdio>
#include <memory>

#include "cli/load.h"
#include "cli/verb.h"
#include "engine/frames/stock_sizes.h"
#include "engine/job/read.h"

namespace mullion::cli {
namespace {

struct Options {
  std::string job, sizes, border;
  std::size_t most = 6;
};

int list_frames(const Options& options) {
  const Result<Job> job = read_job(options.job);
  if (!job) return report(job.error());
  std::vector<StockSize> sizes = common_frame_sizes(job->scale.unit);
  if (!options.sizes.empty()) {
    auto own = read_frame_sizes(options.sizes);
    if (!own) return report(own.error());
    sizes = std::move(*own);
  }
  const auto border = parse_length(options.border, job->scale.unit);
  if (!border) return bad_option("--border", border.error());
  const std::vector<FrameFit> fits = fitting_frames(*job, sizes, *border);
  if (fits.empty()) {
    return refuse(bad_job, "no size in the list takes this job with borders of " +
                               describe(*border, job->scale));
  }
  for (std::size_t i = 0; i < fits.size() && i < options.most; ++i) {
    const FrameFit& fit = fits[i];
    std::printf("%s x %s: borders left %s, top %s, right %s, bottom %s\n",
                describe(fit.width, job->scale).c_str(), describe(fit.height, job->scale).c_str(),
                describe(fit.borders.left, job->scale).c_str(),
                describe(fit.borders.top, job->scale).c_str(),
                describe(fit.borders.right, job->scale).c_str(),
                describe(fit.borders.bottom, job->scale).c_str());
  }
  return success;
}

}  // namespace

void add_frames(CLI::App& app, Action& action) {
  CLI::App* verb = app.add_subcommand(
      "frames",
      "List the smallest frame sizes on the shelf that a job fits, and its borders there");
  auto options = std::make_shared<Options>();
  options->border = "2 in";
  verb->add_option("JOB", options->job, "The job file")->required();
  verb->add_option("--sizes", options->sizes, "The shop's own list of frame sizes");
  verb->add_option("--border", options->border, "The least border")->capture_default_str();
  verb->add_option("--most", options->most, "How many sizes to list")
      ->check(CLI::Range(1, 100))
      ->capture_default_str();
  verb->callback([&action, options] { action = [options] { return list_frames(*options); }; });
}

}  // namespace mullion::cli
