#include "engine/suggest/suggest.h"

#include <cstdio>
#include <memory>

#include "cli/load.h"
#include "cli/verb.h"
#include "engine/frames/stock_sizes.h"
#include "engine/job/read.h"
#include "engine/job/write.h"
#include "render/contact/contact_sheet.h"

namespace mullion::cli {
namespace {

struct Options {
  std::string job, contact, jobs, gap, border, sizes;
  bool stock = false;
  std::size_t count = 6;
  int threads = 2;
};

struct Drawn {
  Job job;
  Mat mat;
};

Result<Drawn> drawn(const suggest::Suggestion& suggestion) {
  Result<Layout> layout = lay_out(suggestion.job);
  if (!layout) return tl::unexpected(std::move(layout.error()));
  Result<Mat> mat = build_mat(suggestion.job, *layout);
  if (!mat) return tl::unexpected(std::move(mat.error()));
  return Drawn{suggestion.job, std::move(*mat)};
}

int write_contact_sheet(const suggest::Suggestions& found, const std::string& path) {
  const auto format = format_of(path);
  if (!format) return report_unknown_ending(path);
  const auto photographs = proof::open_photographs(found.best.front().job);
  if (!photographs) return report(photographs.error());
  std::vector<Drawn> pieces;
  for (const suggest::Suggestion& suggestion : found.best) {
    Result<Drawn> piece = drawn(suggestion);
    if (!piece) return report(piece.error());
    pieces.push_back(std::move(*piece));
  }
  std::vector<ContactPicture> pictures;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    pictures.push_back({&pieces[i].job, &pieces[i].mat, &*photographs, found.best[i].criteria});
  }
  const auto bytes = render_contact_sheet(pictures, *format);
  if (!bytes) return report(bytes.error());
  return write_output(path, *bytes);
}

int write_jobs(const suggest::Suggestions& found, const std::string& prefix) {
  for (std::size_t i = 0; i < found.best.size(); ++i) {
    const std::string path = prefix + "-" + std::to_string(i + 1) + ".xml";
    const int status = write_output(path, write_job(found.best[i].job));
    if (status != success) return status;
  }
  return success;
}

Result<suggest::Wishes> wishes_of(const Options& options, const Job& job) {
  suggest::Wishes wishes;
  wishes.count = options.count;
  wishes.threads = options.threads;
  for (const auto& [text, length, name] :
       {std::tuple{&options.gap, &wishes.gap, "--gap"},
        std::tuple{&options.border, &wishes.border, "--border"}}) {
    const auto parsed = parse_length(*text, job.scale.unit);
    if (!parsed || *parsed < Length()) {
      const std::string why = parsed ? "less than nothing" : parsed.error();
      return tl::unexpected(
          Problems{{Severity::error, "usage", std::string(name) + ": " + why, {}, ""}});
    }
    *length = *parsed;
  }
  std::vector<StockSize> sizes;
  if (options.stock) sizes = common_frame_sizes(job.scale.unit);
  if (!options.sizes.empty()) {
    auto own = read_frame_sizes(options.sizes);
    if (!own) return tl::unexpected(std::move(own.error()));
    sizes = std::move(*own);
  }
  for (const StockSize& size : sizes) wishes.stock.push_back({size.width, size.height});
  return wishes;
}

int suggest_jobs(const Options& options) {
  const Result<Job> job = read_job(options.job, Need::pictures);
  if (!job) return report(job.error());
  const auto wishes = wishes_of(options, *job);
  if (!wishes) return report(wishes.error());
  const auto found = suggest::suggest_collages(*job, *wishes);
  if (!found) return report(found.error());
  for (std::size_t i = 0; i < found->best.size(); ++i) {
    const suggest::Suggestion& s = found->best[i];
    std::printf("%zu: %s x %s, score %.0f\n", i + 1, describe(s.board.width, job->scale).c_str(),
                describe(s.board.height, job->scale).c_str(), s.score * 100);
  }
  std::printf("%llu arrangements looked at%s\n", static_cast<unsigned long long>(found->looked_at),
              found->every_one ? ", every one there is" : "");
  if (!options.jobs.empty()) {
    if (const int status = write_jobs(*found, options.jobs); status != success) return status;
  }
  return options.contact.empty() ? success : write_contact_sheet(*found, options.contact);
}

}  // namespace

void add_suggest(CLI::App& app, Action& action) {
  CLI::App* verb =
      app.add_subcommand("suggest", "Find good arrangements for the pictures of a job");
  auto options = std::make_shared<Options>();
  options->gap = "1 in";
  options->border = "2 in";
  verb->add_option("JOB", options->job, "A job file; its pictures are enough")->required();
  verb->add_option("--contact", options->contact,
                   "A contact sheet to choose from: .pdf, .svg or .png");
  verb->add_option("--jobs", options->jobs,
                   "Write each as a job file: this name, a dash, its number and .xml");
  verb->add_option("-n,--count", options->count, "How many")
      ->check(CLI::Range(1, 24))
      ->capture_default_str();
  verb->add_option("--gap", options->gap, "Between neighbours")->capture_default_str();
  verb->add_option("--border", options->border, "The least border")->capture_default_str();
  verb->add_flag("--stock", options->stock, "Only boards of common frame sizes");
  verb->add_option("--sizes", options->sizes, "Only boards of the sizes in this list");
  verb->add_option("--threads", options->threads, "How many to work with")
      ->check(CLI::Range(1, 8))
      ->capture_default_str();
  verb->callback([&action, options] { action = [options] { return suggest_jobs(*options); }; });
}

}  // namespace mullion::cli
