#include "engine/suggest/suggest.h"

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <memory>

#include "cli/answer.h"
#include "cli/known_words.h"
#include "cli/language.h"
#include "cli/progress.h"
#include "cli/verb.h"
#include "engine/cuts/refusal.h"
#include "engine/job/read.h"
#include "engine/job/write.h"
#include "engine/shop/stock_sizes.h"
#include "engine/shop/wished_borders.h"
#include "render/contact/contact_sheet.h"

namespace mullion::cli {
namespace {

struct Options {
  std::string job, contact, jobs, gap, border, sizes, cutter;
  bool stock = false, progress = false;
  std::size_t count = 6;
  int threads = 2;
  Locale locale;  // of the contact sheet
  Answer answer{"suggest"};
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

int write_contact_sheet(const suggest::Suggestions& found, const Options& options) {
  const std::string& path = options.contact;
  const Answer& answer = options.answer;
  const auto format = format_of(path);
  if (!format) {
    return answer.fail_option("--contact",
                              "found \"" + path + "\"; expected an ending of .pdf, .svg or .png");
  };
  const auto photographs = proof::open_photographs(found.best.front().job);
  if (!photographs) return answer.fail(photographs.error());
  std::vector<Drawn> pieces;
  for (const suggest::Suggestion& suggestion : found.best) {
    Result<Drawn> piece = drawn(suggestion);
    if (!piece) return answer.fail(piece.error());
    pieces.push_back(std::move(*piece));
  }
  std::vector<ContactPicture> pictures;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    pictures.push_back({&pieces[i].job, &pieces[i].mat, &*photographs, found.best[i].composition});
  }
  const auto bytes = render_contact_sheet(pictures, *format, options.locale);
  if (!bytes) return answer.fail(bytes.error());
  return answer.save(path, *bytes);
}

// Job files name their images from their own folder.
void warn_of_images(const Job& job, const std::string& prefix) {
  namespace fs = std::filesystem;
  const bool has_images = std::any_of(job.pictures.begin(), job.pictures.end(),
                                      [](const Picture& p) { return !p.image.empty(); });
  const auto folder = [](const std::string& file) {
    std::error_code ignored;
    return fs::weakly_canonical(fs::absolute(file).parent_path(), ignored);
  };
  if (!has_images || folder(prefix) == folder(job.file)) return;
  report({{Severity::warning,
           "suggest-elsewhere",
           "the jobs are written to another folder than that of " + job.file +
               "; their images are not there",
           {},
           {}}});
}

int write_jobs(const suggest::Suggestions& found, const Options& options) {
  warn_of_images(found.best.front().job, options.jobs);
  for (std::size_t i = 0; i < found.best.size(); ++i) {
    const std::string path = options.jobs + "-" + std::to_string(i + 1) + ".xml";
    const int status = options.answer.save(path, write_job(found.best[i].job));
    if (status != success) return status;
  }
  return success;
}

Result<void> read_length(const std::string& text, const char* option, Unit unit, Length& length) {
  if (text.empty()) return {};
  const auto parsed = parse_length(text, unit);
  if (!parsed || *parsed < Length()) {
    const std::string why = parsed ? "less than nothing" : parsed.error();
    return tl::unexpected(Problems{option_problem(option, why)});
  }
  length = *parsed;
  return {};
}

Result<suggest::Wishes> wishes_of(const Options& options, const Job& job) {
  const Unit unit = job.scale.unit;
  suggest::Wishes wishes;
  wishes.count = options.count;
  wishes.threads = options.threads;
  wishes.gap = suggest::usual_gap(unit);
  wishes.border = least_of(wished_borders(job));
  if (auto read = read_length(options.gap, "--gap", unit, wishes.gap); !read) {
    return tl::unexpected(std::move(read.error()));
  }
  if (auto read = read_length(options.border, "--border", unit, wishes.border); !read) {
    return tl::unexpected(std::move(read.error()));
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

Result<suggest::Suggestions> search(const Job& job, suggest::Wishes& wishes, bool tells_lines) {
  suggest::Progress progress;
  wishes.progress = &progress;
  if (tells_lines) {
    const ProgressLine lines([&progress] {
      return "looked at " + std::to_string(progress.done) + " of " + std::to_string(progress.whole);
    });
    return suggest::suggest_collages(job, wishes);
  }
  const ProgressLine line("arrangements", [&progress] {
    const auto whole = static_cast<double>(progress.whole);
    return whole > 0 ? static_cast<double>(progress.done) / whole : 0;
  });
  return suggest::suggest_collages(job, wishes);
}

// Takes out what the cutter cannot cut, and says why; nothing where it can cut none of them.
Problems keep_what_is_cut(suggest::Suggestions& found, const CutterProfile& cutter,
                          std::size_t count) {
  Problems told;
  std::vector<suggest::Suggestion> kept;
  for (const suggest::Suggestion& suggestion : found.best) {
    const Result<Drawn> piece = drawn(suggestion);
    const Problem* why = nullptr;
    Problems problems;
    if (piece) {
      const Cuts cuts = cuts_of(piece->mat, cutter);
      for (const Refusal& refusal : cuts.refusals) {
        if (refusal.is_of_the_cutter()) problems.push_back(problem_of(refusal, cuts));
      }
      if (!problems.empty()) why = &problems.front();
    }
    if (why == nullptr) {
      if (kept.size() < count) kept.push_back(suggestion);
      continue;
    }
    const Scale& scale = suggestion.job.scale;
    told.push_back({Severity::warning,
                    "suggest-cutter",
                    "an arrangement of " + describe(suggestion.ranked.board.width, scale) + " x " +
                        describe(suggestion.ranked.board.height, scale) +
                        " cannot be cut: " + why->message,
                    {},
                    {}});
  }
  if (!kept.empty()) found.best = std::move(kept);
  return told;
}

std::string percent(double share) {
  return std::to_string(std::lround(share * 100));
}

std::string gaps_of(const suggest::Suggestion& suggestion, const Scale& scale) {
  if (suggestion.widest_gap == Length()) return "";
  const std::string least = describe(suggestion.least_gap, scale);
  if (suggestion.least_gap == suggestion.widest_gap) return ", gaps of " + least;
  return ", gaps of " + least + " to " + describe(suggestion.widest_gap, scale);
}

std::string words_of(const suggest::Suggestions& found, const Scale& scale) {
  std::string out;
  for (std::size_t i = 0; i < found.best.size(); ++i) {
    const suggest::Ranked& ranked = found.best[i].ranked;
    out += std::to_string(i + 1) + ": " + describe(ranked.board.width, scale) + " x " +
           describe(ranked.board.height, scale) + ", " +
           suggest::name_of(found.best[i].composition) + gaps_of(found.best[i], scale) +
           "; score " + percent(ranked.score) + "\n";
  }
  return out + std::to_string(found.looked_at) + " arrangements looked at" +
         (found.every_one ? ", every one there is" : "") + "\n";
}

int suggest_jobs(const Options& options) {
  const Answer& answer = options.answer;
  const Result<Job> job = read_job(options.job, Need::pictures);
  if (!job) return answer.fail(job.error());
  auto wishes = wishes_of(options, *job);
  if (!wishes) return answer.fail(wishes.error());
  const Result<CutterProfile> cutter = cutter_for(options.cutter, job->scale.unit);
  if (!cutter) return answer.fail(cutter.error());
  auto found = search(*job, *wishes, options.progress);
  if (!found) return answer.fail(found.error());
  Problems told = suggest::left_aside(*job, *wishes);
  for (Problem& one : keep_what_is_cut(*found, *cutter, options.count)) {
    told.push_back(std::move(one));
  }
  if (!answer.is_json()) report(told);
  if (!options.jobs.empty()) {
    if (const int status = write_jobs(*found, options); status != success) return status;
  }
  if (!options.contact.empty()) {
    if (const int status = write_contact_sheet(*found, options); status != success) return status;
  }
  return answer.give([&] { return words_of(*found, job->scale); },
                     [&] {
                       return suggestions_json(*found, job->scale.unit, {success, told});
                     });
}

std::string criteria_text() {
  std::string out =
      "Suggestions are ordered by a score of 0 to 100, the sum of these criteria by their "
      "shares:\n";
  for (const suggest::Criterion& one : suggest::criteria_table()) {
    std::string name = one.name, share = percent(suggest::weights.*one.figure);
    out += "  " + name.append(11 - name.size(), ' ') + share.insert(0, 2 - share.size(), ' ') +
           "  " + one.meaning + "\n";
  }
  return out;
}

}  // namespace

void add_suggest(CommandLine& program) {
  const Verb verb = program.verb("suggest", "Find good arrangements for the pictures of a job");
  auto options = std::make_shared<Options>();
  verb.argument("JOB", Takes::job_file, options->job, "A job file; its pictures are enough")
      .required();
  verb.option("--contact", Takes::file, options->contact,
              "A contact sheet to choose from: .pdf, .svg or .png");
  add_language_option(verb, options->locale);
  verb.option("--jobs", Takes::file, options->jobs,
              "Write each as a job file: this name, a dash, its number and .xml");
  verb.option("-n,--count", options->count, "How many different ones").between(1, 24).shows_usual();
  verb.option("--gap", Takes::length, options->gap,
              "Between neighbours; where not given 1 in or 25 mm");
  verb.option("--border", Takes::length, options->border,
              "The least border; where not given the job's own, else 2 in or 5 cm");
  verb.flag("--stock", options->stock, "Only boards of common frame sizes");
  verb.option("--sizes", Takes::file, options->sizes, "Only boards of the sizes in this list");
  verb.option(
          "--cutter", Takes::file, options->cutter,
          "What it cannot cut is left out: bench, plain-bench, metric-bench or a cutter file; by "
          "the job's unit where not given")
      .known(cutter_names());
  verb.option("--threads", options->threads, "How many to work with").between(1, 8).shows_usual();
  verb.flag("--progress", options->progress,
            "Tell on standard error, line by line, how many arrangements were looked at");
  options->answer.add_option(verb);
  verb.ends_with(criteria_text());
  verb.runs([options] { return suggest_jobs(*options); });
}

}  // namespace mullion::cli
