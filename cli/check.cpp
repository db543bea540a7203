#include <algorithm>
#include <memory>

#include "cli/answer.h"
#include "cli/verb.h"
#include "engine/job/source_text.h"

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
  return out;
}

int check(const std::string& path, const Answer& answer) {
  const Result<Loaded> loaded = load(path);
  if (!loaded) return answer.fail(loaded.error());
  Problems problems = loaded->layout.notes;
  for (Problem& found : check_mat(loaded->job, loaded->layout, loaded->mat)) {
    problems.push_back(std::move(found));
  }
  const int status = status_of(problems);
  const int written =
      answer.give([&] { return summary(*loaded); },
                  [&] {
                    return check_json(loaded->job, loaded->layout, {status, problems});
                  });
  if (!answer.is_json()) report(problems);
  return written == success ? status : written;
}

}  // namespace

void add_check(CLI::App& app, Action& action) {
  CLI::App* verb = app.add_subcommand(
      "check", "Read a job, lay it out, and say what is wrong or unwise about it");
  auto path = std::make_shared<std::string>();
  auto answer = std::make_shared<Answer>("check");
  verb->add_option("JOB", *path, "The job file")->required();
  answer->add_option(*verb);
  verb->callback(
      [&action, path, answer] { action = [path, answer] { return check(*path, *answer); }; });
}

}  // namespace mullion::cli
