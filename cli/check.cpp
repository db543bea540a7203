#include <cstdio>
#include <memory>

#include "cli/load.h"
#include "cli/verb.h"

namespace mullion::cli {
namespace {

void print_rect(const char* what, const Rect& rect, const Scale& scale) {
  std::printf("  %-12s %s x %s, %s from the left and %s from the top\n", what,
              describe(rect.width(), scale).c_str(), describe(rect.height(), scale).c_str(),
              describe(rect.left, scale).c_str(), describe(rect.top, scale).c_str());
}

void print_summary(const Loaded& loaded) {
  const Scale& scale = loaded.job.scale;
  const Sides& borders = loaded.layout.borders;
  std::printf("%s: mat %s x %s\n", loaded.job.file.c_str(),
              describe(loaded.layout.width, scale).c_str(),
              describe(loaded.layout.height, scale).c_str());
  std::printf("  borders      left %s, top %s, right %s, bottom %s\n",
              describe(borders.left, scale).c_str(), describe(borders.top, scale).c_str(),
              describe(borders.right, scale).c_str(), describe(borders.bottom, scale).c_str());
  for (const PlacedOpening& opening : loaded.layout.openings) {
    const std::string label = std::to_string(opening.number) + " " + opening.id;
    print_rect(label.c_str(), opening.rect, scale);
  }
}

int check(const std::string& path) {
  const Result<Loaded> loaded = load(path);
  if (!loaded) return report(loaded.error());
  print_summary(*loaded);
  report(loaded->layout.notes);
  return report(check_mat(loaded->job, loaded->layout, loaded->mat));
}

}  // namespace

void add_check(CLI::App& app, Action& action) {
  CLI::App* verb = app.add_subcommand(
      "check", "Read a job, lay it out, and say what is wrong or unwise about it");
  auto path = std::make_shared<std::string>();
  verb->add_option("JOB", *path, "The job file")->required();
  verb->callback([&action, path] { action = [path] { return check(*path); }; });
}

}  // namespace mullion::cli
