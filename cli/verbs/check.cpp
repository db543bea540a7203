#include <algorithm>
#include <memory>

#include "cli/answer.h"
#include "cli/known_words.h"
#include "cli/verb.h"
#include "engine/cuts/refusal.h"
#include "engine/xml/source_text.h"

namespace mullion::cli {
namespace {

std::string rect_text(const Rect& rect, const Scale& scale) {
  return describe(rect.width(), scale) + " x " + describe(rect.height(), scale) + ", " +
         describe(rect.left, scale) + " from the left and " + describe(rect.top, scale) +
         " from the top";
}

// A name and what belongs to it, in two columns.
std::string line_text(std::string name, const std::string& text) {
  constexpr std::size_t column = 12;
  name.append(column - std::min(column, count_characters(name)), ' ');
  return "  " + name + " " + text + "\n";
}

// Nothing where no size had to move.
std::string increment_text(const Layout& layout, const Scale& scale) {
  if (layout.on_increment == OnIncrement::as_it_was) return {};
  const bool proved = layout.on_increment == OnIncrement::nearest;
  return line_text("steps", "of " + format_exact(scale.increment, scale.unit) +
                                (proved ? ": the nearest sizes that there are, proved"
                                        : ": sizes near by; nearer ones may exist"));
}

std::string summary(const Loaded& loaded) {
  const Scale& scale = loaded.job.scale;
  const Layout& layout = loaded.layout;
  const Sides& borders = layout.borders;
  std::string out = loaded.job.file + ": mat " + describe(layout.width, scale) + " x " +
                    describe(layout.height, scale) + "\n";
  out += line_text("borders", "left " + describe(borders.left, scale) + ", top " +
                                  describe(borders.top, scale) + ", right " +
                                  describe(borders.right, scale) + ", bottom " +
                                  describe(borders.bottom, scale));
  for (const PlacedOpening& opening : layout.openings) {
    out += line_text(std::to_string(opening.number) + " " + opening.id,
                     rect_text(opening.rect, scale));
  }
  return out + increment_text(layout, scale);
}

struct Options {
  std::string job, cutter;
  Answer answer{"check"};
};

int check(const Options& options) {
  const Answer& answer = options.answer;
  const Result<Loaded> loaded = load(options.job);
  if (!loaded) return answer.fail(loaded.error());
  const Result<CutterProfile> cutter = cutter_for(options.cutter, loaded->job.scale.unit);
  if (!cutter) return answer.fail(cutter.error());
  Problems problems = told_notes(loaded->layout, loaded->job);
  for (Problem& found : check_mat(loaded->job, loaded->layout, loaded->mat)) {
    problems.push_back(std::move(found));
  }
  for (Problem& found :
       check_on_cutter(loaded->job, loaded->layout, cuts_of(loaded->mat, *cutter))) {
    problems.push_back(std::move(found));
  }
  const int status = status_of(problems);
  const int written =
      answer.give([&] { return summary(*loaded); },
                  [&] {
                    return check_json(loaded->job, loaded->layout, {status, problems});
                  });
  if (!answer.is_json()) {
    report(problems);
    advise(problems);
  }
  return written == success ? status : written;
}

}  // namespace

void add_check(CommandLine& program) {
  const Verb verb =
      program.verb("check", "Read a job, lay it out, and say what is wrong or unwise about it");
  auto options = std::make_shared<Options>();
  verb.argument("JOB", Takes::job_file, options->job, "The job file").required();
  verb.option("--cutter", Takes::file, options->cutter,
              "bench, plain-bench, metric-bench or a cutter file; by the job's unit where not "
              "given")
      .known(cutter_names());
  options->answer.add_option(verb);
  verb.runs([options] { return check(*options); });
}

}  // namespace mullion::cli
